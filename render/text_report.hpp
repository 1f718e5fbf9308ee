#pragma once
#include <string_view>

/// Words of the report: first page, findings, limits; see text.hpp.
namespace ohmtrail::render::text {

// Report: first page
inline constexpr std::string_view report_title = "Report on the electrical system";
inline constexpr std::string_view report_number = "Report {}";
inline constexpr std::string_view report_without_number = "Report";
inline constexpr std::string_view label_customer = "For";
inline constexpr std::string_view label_technician = "By";
inline constexpr std::string_view label_date = "Date";
inline constexpr std::string_view label_examined = "Examined";
inline constexpr std::string_view label_complaint = "Complaint";
inline constexpr std::string_view not_told = "not stated";
inline constexpr std::string_view examined = "{} at {}, in {}";
inline constexpr std::string_view case_singular = "one operating condition";
inline constexpr std::string_view case_plural = "{} operating conditions";
inline constexpr std::string_view count_batteries = "{} batteries";
inline constexpr std::string_view count_runs = "{} cable runs";
inline constexpr std::string_view count_joints = "{} joints";
inline constexpr std::string_view count_switches = "{} switches and fuses";
inline constexpr std::string_view count_loads = "{} loads";
inline constexpr std::string_view one_battery = "1 battery";
inline constexpr std::string_view one_run = "1 cable run";
inline constexpr std::string_view one_joint = "1 joint";
inline constexpr std::string_view one_switch = "1 switch or fuse";
inline constexpr std::string_view one_load = "1 load";
inline constexpr std::string_view heading_answer = "The answer";
inline constexpr std::string_view answer_lost =
    "With {} on (“{}”), {} of the {} {} is lost on the way, so {} is left for it.";
inline constexpr std::string_view in_the_battery = "in the battery";
inline constexpr std::string_view in_the_charger = "that the charger is set to";
inline constexpr std::string_view in_the_converter = "that the converter is set to";
inline constexpr std::string_view answer_part = "The largest share of that, {}, is lost in {}.";
inline constexpr std::string_view answer_cure = "The first thing to put right is {}: it gives {} back to {}.";
inline constexpr std::string_view answer_first = "The first thing to put right is {}.";
inline constexpr std::string_view answer_in_doubt =
    "The readings do not yet settle what is at fault; most suspect is {}. More readings come first.";
inline constexpr std::string_view answer_sure = "Sure already is {}: put right, it gives {} back to {}.";
inline constexpr std::string_view answer_nothing_likely =
    "No part is more likely at fault than sound, as far as the readings tell; nothing has to be repaired for "
    "the voltage’s sake.";
inline constexpr std::string_view answer_sound =
    "Nothing was found that is worse than a sound part of its kind; nothing has to be repaired for the "
    "voltage’s sake.";
inline constexpr std::string_view answer_nothing_ran =
    "No load was running in the conditions examined, so nothing can be said about lost voltage.";
inline constexpr std::string_view urgent =
    "Before the system is used again: {} of the findings on the following pages must be dealt with first.";
inline constexpr std::string_view urgent_one =
    "Before the system is used again: one of the findings on the following pages must be dealt with first.";
inline constexpr std::string_view heading_split = "Where the voltage goes on its way to {}";
inline constexpr std::string_view heading_to_do = "What to do, in this order";
inline constexpr std::string_view read_parts_first =
    "Read across each end and across the cable itself first, to see which it is. {}";
inline constexpr std::string_view read_on =
    "The readings do not bear it out. Take more readings before anything is undone.";
inline constexpr std::string_view read_on_among =
    "Take more readings before anything is undone. It may as well be: {}.";
inline constexpr std::string_view would_give_back = "if it is this, its repair gives {} back to {}";
inline constexpr std::string_view gives_back = "gives {} back to {}";
inline constexpr std::string_view each_gives_back = "each of its conductors gives {} back to {}";
inline constexpr std::string_view number_in_diagram = " (no. {} in the diagram)";
inline constexpr std::string_view saves_a_day = "saves {} a day";
inline constexpr std::string_view nothing_to_do =
    "No cable or contact needs to be repaired for the voltage’s sake.";
inline constexpr std::string_view if_it_is_this = "if it is this part that is at fault: {}";
inline constexpr std::string_view findings_remain = "What was found below still has to be attended to.";

// Report: findings
inline constexpr std::string_view heading_findings = "What was found";
inline constexpr std::string_view rank_urgent = "Before further use";
inline constexpr std::string_view rank_soon = "Soon";
inline constexpr std::string_view rank_improvement = "Improvement";
inline constexpr std::string_view several_places = "at {} places";
inline constexpr std::string_view more_places =
    "And {} more, less far beyond the limit or further down the list.";
inline constexpr std::string_view finding_risk = "Risk";
inline constexpr std::string_view finding_remedy = "Do";
inline constexpr std::string_view finding_rule = "Rests on";
inline constexpr std::string_view further_findings = "Further findings, in brief";
inline constexpr std::string_view rests_on = "Rests on {}";
inline constexpr std::string_view no_findings = "No rule was found broken.";
inline constexpr std::string_view heading_limits = "Limits of voltage loss";
inline constexpr std::string_view limits_rule =
    "A limit counts as met or broken only where the whole 90 % interval of the loss lies on one side of it; "
    "where the interval straddles the limit, these readings cannot decide.";
inline constexpr std::string_view limits_rule_computed =
    "No readings were given: the loss is worked out from the description of the system and compared as it "
    "stands.";
inline constexpr std::string_view limits_more =
    "{} more loads are left out; each is further inside its limit.";
inline constexpr std::string_view between = "{} to {}";
inline constexpr std::string_view limit_met = "met";
inline constexpr std::string_view limit_broken = "broken";
inline constexpr std::string_view limit_undecided = "not decidable";
inline constexpr std::string_view limit_stopped = "stopped: voltage too low";
inline constexpr std::string_view column_load = "Load";
inline constexpr std::string_view column_case = "Worst condition";
inline constexpr std::string_view column_volts = "Voltage";
inline constexpr std::string_view column_loss = "Loss";
inline constexpr std::string_view column_limit = "Limit";
inline constexpr std::string_view column_verdict = "Verdict";
inline constexpr std::string_view heading_not_examined = "Not examined or not reached";
inline constexpr std::string_view not_reached = "{}: not reached";
inline constexpr std::string_view point_out_of_reach = "{}: out of reach of a probe";
inline constexpr std::string_view load_never_on = "{}: not switched on in any condition examined";
inline constexpr std::string_view all_examined = "Everything in the description was reached.";

}  // namespace ohmtrail::render::text
