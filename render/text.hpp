#pragma once
#include <string_view>

/// Every word that a picture or a report says, in one place, so that a translation is one more such table.
/// `{}` are filled in with names and numbers in the order given.
namespace ohmtrail::render::text {

inline constexpr std::string_view language = "en";

// Wiring diagram
inline constexpr std::string_view diagram_title = "Wiring diagram";
inline constexpr std::string_view open = "open";
inline constexpr std::string_view off = "off";
inline constexpr std::string_view stopped = "stopped";
inline constexpr std::string_view run_title = "Run {}, {}, {} long: {} lost at {}, {} of heat";
inline constexpr std::string_view return_name = "{} (return)";
inline constexpr std::string_view idle_title = "{}: no current in this case";
inline constexpr std::string_view device_title = "{}: {} lost at {}, {} of heat";
inline constexpr std::string_view load_title = "Load {}: {} at {}, takes {}";
inline constexpr std::string_view supply_title = "Battery {}: {} at its posts, delivers {}";
inline constexpr std::string_view charger_title = "Charger {}: {}, delivers {}";
inline constexpr std::string_view converter_title = "Converter {}";
inline constexpr std::string_view point_title = "{}: {}";
inline constexpr std::string_view hot_spot_title = "Hot spot {}: {}";
inline constexpr std::string_view legend_loss = "Voltage lost, as a share of what is allowed";
inline constexpr std::string_view legend_width = "Line width: copper area";
inline constexpr std::string_view legend_end = "end of a run";
inline constexpr std::string_view legend_disc = "hot spot, by rank";
inline constexpr std::string_view legend_open = "open";
inline constexpr std::string_view legend_idle = "no current";
inline constexpr std::string_view shows_volts =
    "Numbers: voltage lost in each part; voltage at posts, bars and loads";
inline constexpr std::string_view shows_amps = "Numbers: current, arrow in its direction";
inline constexpr std::string_view shows_heat = "Numbers: heat, and temperature where it is known";
inline constexpr std::string_view shows_gauge = "Numbers: conductor size and length, ratings";
inline constexpr std::string_view block_system = "System";
inline constexpr std::string_view block_case = "Case";
inline constexpr std::string_view block_date = "Date";
inline constexpr std::string_view block_reference = "Reference";
inline constexpr std::string_view block_customer = "Customer";
inline constexpr std::string_view block_technician = "Technician";
inline constexpr std::string_view hot_list = "Hot spots, worst first";
inline constexpr std::string_view lost_and_back = "{} lost, {} back";

// Voltage staircase
inline constexpr std::string_view staircase_title = "Where the voltage goes: {}, {}";
inline constexpr std::string_view stair_left = "{} left";
inline constexpr std::string_view stair_load = "{} is left for {}";
inline constexpr std::string_view stair_found = "lost, as found";
inline constexpr std::string_view stair_rated = "with every part sound";
inline constexpr std::string_view stair_column_both = "as found / if sound";
inline constexpr std::string_view stair_column_found = "as found";
inline constexpr std::string_view stair_limit = "more than is allowed between the battery and the load";
inline constexpr std::string_view stair_supply = "inside battery {}";
inline constexpr std::string_view stair_charger = "charger {}, below its set point";
inline constexpr std::string_view stair_way_there = "From the battery to the load";
inline constexpr std::string_view stair_way_back = "From the load back to the battery";

// Bank picture
inline constexpr std::string_view bank_title = "Batteries";
inline constexpr std::string_view bank_at_rest = "at rest";
inline constexpr std::string_view bank_loaded = "at {}";
inline constexpr std::string_view bank_cells = "specific gravity of each cell, at 26.7 °C";
inline constexpr std::string_view bank_band = "healthy, fully charged";
inline constexpr std::string_view bank_no_checks = "no test was made";

// Parts of a sag, in words for someone who knows nothing of volts
inline constexpr std::string_view part_battery = "the battery itself";
inline constexpr std::string_view part_charger = "the charger, which gives all it can";
inline constexpr std::string_view part_wires = "the cables";
inline constexpr std::string_view part_terminations = "the ends of the cables";
inline constexpr std::string_view part_joints = "joints and bars";
inline constexpr std::string_view part_switchgear = "switches and fuses";
inline constexpr std::string_view part_isolators = "charging diodes";

// What a hot spot is
inline constexpr std::string_view cause_corroded_conductor = "damaged or corroded cable";
inline constexpr std::string_view cause_bad_termination = "bad cable end";
inline constexpr std::string_view cause_bad_joint = "bad joint";
inline constexpr std::string_view cause_worn_contact = "worn contact";
inline constexpr std::string_view cause_undersized = "cable too thin";
inline constexpr std::string_view cause_weak_battery = "worn battery";
inline constexpr std::string_view cause_discharged_battery = "discharged battery";

// Where a hot spot is
inline constexpr std::string_view where_wire = "cable {}";
inline constexpr std::string_view where_return_wire = "return cable of {}";
inline constexpr std::string_view where_end = "cable {}, its end at {}";
inline constexpr std::string_view where_return_end = "return cable of {}, its end at {}";
inline constexpr std::string_view where_both = "cable {}, both conductors";
inline constexpr std::string_view where_place = "{} ({})";

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
    "When {} runs (“{}”), {} of the {} {} is lost on the way, so {} is left for it.";
inline constexpr std::string_view in_the_battery = "in the battery";
inline constexpr std::string_view in_the_charger = "that the charger is set to";
inline constexpr std::string_view answer_part = "The largest share of that, {}, is lost in {}.";
inline constexpr std::string_view answer_cure = "The first thing to put right is {}: it gives {} back to {}.";
inline constexpr std::string_view answer_first = "The first thing to put right is {}.";
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
inline constexpr std::string_view gives_back = "gives {} back to {}";
inline constexpr std::string_view each_gives_back = "each of its conductors gives {} back to {}";
inline constexpr std::string_view number_in_diagram = " (no. {} in the diagram)";
inline constexpr std::string_view saves_a_day = "saves {} a day";
inline constexpr std::string_view nothing_to_do = "Nothing needs to be repaired or replaced.";

// Report: findings
inline constexpr std::string_view heading_findings = "What was found";
inline constexpr std::string_view rank_urgent = "Before further use";
inline constexpr std::string_view rank_soon = "Soon";
inline constexpr std::string_view rank_improvement = "Improvement";
inline constexpr std::string_view several_places = "the same at {} places";
inline constexpr std::string_view more_places =
    "And {} more, less far beyond the limit or further down the list.";
inline constexpr std::string_view finding_risk = "Risk";
inline constexpr std::string_view finding_remedy = "Do";
inline constexpr std::string_view finding_rule = "Rests on";
inline constexpr std::string_view risk_urgent = "Fire, burns or sudden loss of power are possible.";
inline constexpr std::string_view risk_soon =
    "It gets worse with time; equipment may stop or wear out early.";
inline constexpr std::string_view risk_improvement = "No danger is expected; comfort or margin is lost.";
inline constexpr std::string_view no_findings = "No rule was found broken.";
inline constexpr std::string_view heading_limits = "Limits of voltage loss";
inline constexpr std::string_view limits_rule =
    "A limit counts as met or broken only where the whole 90 % interval of the loss lies on one side of it; "
    "where the "
    "interval straddles the limit, these readings cannot decide. Without readings the loss is a computed "
    "value and is "
    "compared as it stands.";
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

// Report: pictures and tables
inline constexpr std::string_view heading_diagram = "Wiring diagram: {}";
inline constexpr std::string_view heading_staircase = "The voltage on its way to {} and back";
inline constexpr std::string_view heading_connections = "The worst connections";
inline constexpr std::string_view connections_more =
    "{} more are left out; each costs less than those above.";
inline constexpr std::string_view no_connections = "No connection is worse than a sound one of its kind.";
inline constexpr std::string_view column_number = "No.";
inline constexpr std::string_view column_where = "Where, and what it is";
inline constexpr std::string_view column_lost = "Lost";
inline constexpr std::string_view column_heat = "Heat";
inline constexpr std::string_view column_hot = "How hot";
inline constexpr std::string_view column_sure = "How sure";
inline constexpr std::string_view column_do = "What to do";
inline constexpr std::string_view column_back = "Comes back";
inline constexpr std::string_view each = " each";
inline constexpr std::string_view heading_batteries = "Batteries";
inline constexpr std::string_view column_battery = "Battery";
inline constexpr std::string_view column_rest = "At rest";
inline constexpr std::string_view column_charge = "Charge";
inline constexpr std::string_view column_per_100 = "Loss per 100 A";
inline constexpr std::string_view column_in_words = "In words";

// Report: small print
inline constexpr std::string_view heading_assumptions = "Assumed, not measured";
inline constexpr std::string_view assumed_wires =
    "What a sound conductor has: from its gauge, length and metal, for {}.";
inline constexpr std::string_view assumed_of = "{}: {}";
inline constexpr std::string_view and_more = "{} and {} more";
inline constexpr std::string_view no_assumptions = "Nothing had to be assumed.";
inline constexpr std::string_view heading_method = "How it was worked out";
inline constexpr std::string_view method_network =
    "The system was taken as a network of batteries, cables, cable ends, joints, switches, fuses and loads, "
    "and its "
    "currents and voltages were computed for each operating condition. Every result was checked against "
    "Kirchhoff’s "
    "laws: the currents at each point add up to zero and the power delivered equals the power used, both to "
    "one part "
    "in a thousand million.";
inline constexpr std::string_view method_values =
    "What a sound cable, cable end, joint, switch or fuse has comes from published tables; what each one "
    "here has was "
    "taken from the description of the system.";
inline constexpr std::string_view method_readings =
    "What each part has was worked out from the readings taken on the system, with the meter’s own error "
    "allowed for; "
    "“how sure” is the probability that the part is faulty, given all the readings.";
inline constexpr std::string_view method_back =
    "What a repair brings back was found by computing the whole system again with that one part made good. "
    "Repairs "
    "work on each other: two together may bring back a little more or less than the sum.";
inline constexpr std::string_view method_temperature =
    "Temperatures of cable ends, joints and contacts are estimates to 5 °C, from the heat that must leave "
    "along the cables.";
inline constexpr std::string_view sources =
    "Sources. Conductor areas and resistances: ASTM B258, IEC 60228, NBS Handbook 100. Allowable currents: "
    "33 CFR "
    "183.425, "
    "ISO 10133. Symbols: IEC 60617. Colour scale: equal steps in OKLab. Rules of the findings: named with "
    "each.";
inline constexpr std::string_view heading_cautions = "Cautions";
inline constexpr std::string_view cautions =
    "Batteries give off gas that explodes and hold acid that burns: air the space, no flames or sparks, eye "
    "protection. "
    "A battery can deliver thousands of amperes into a spanner: take off rings and watch straps, insulate "
    "tools, undo "
    "the negative post first and connect it last. Switch off chargers, solar and shore power before undoing "
    "anything, "
    "and prove it dead. Before a thruster, windlass or drive runs: swimmers clear, anchor secured, wheels "
    "chocked.";
inline constexpr std::string_view heading_limits_of_advice = "Limits of this advice";
inline constexpr std::string_view limits_of_advice =
    "This report rests on what was measured and described on its date; parts that were not examined may hold "
    "other "
    "faults. It does not replace the rules of the place, the makers’ instructions or a licensed electrician "
    "where one "
    "is required. Where they differ from this report, they count.";
inline constexpr std::string_view page_of = "Page {} of {}";

}  // namespace ohmtrail::render::text
