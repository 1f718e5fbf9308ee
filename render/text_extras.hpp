#pragma once
#include <string_view>

/// Words of the chapters that are asked for: before and after, the rewire, the bench sheet; see text.hpp.
namespace ohmtrail::render::text {

// Before and after
inline constexpr std::string_view heading_before_after = "Before and after the work";
inline constexpr std::string_view compared_surveys = "The survey before the work ({}) beside this one ({}).";
inline constexpr std::string_view undated = "without a date";
inline constexpr std::string_view cured_all = "Every faulty part that was found before is cured.";
inline constexpr std::string_view cured_some = "Cured: {} of the {} faulty parts found before.";
inline constexpr std::string_view cured_none_before = "No faulty part was found before the work.";
inline constexpr std::string_view left_over = "Still to do: {}.";
inline constexpr std::string_view fresh_faults = "New since then: {}.";
inline constexpr std::string_view parts_gone = "No longer in the system: {}.";
inline constexpr std::string_view parts_added = "Added since then: {}.";
inline constexpr std::string_view column_condition = "Condition";
inline constexpr std::string_view column_before = "Before";
inline constexpr std::string_view column_after = "After";
inline constexpr std::string_view column_gained = "Gained";
inline constexpr std::string_view column_part = "Part";
inline constexpr std::string_view column_result = "Result";
inline constexpr std::string_view verdict_cured = "cured";
inline constexpr std::string_view verdict_left = "still faulty";
inline constexpr std::string_view verdict_fresh = "faulty now";
inline constexpr std::string_view verdict_better = "better";
inline constexpr std::string_view verdict_worse = "worse";
inline constexpr std::string_view parts_unchanged =
    "Other parts, unchanged as far as the readings can tell: {}.";
inline constexpr std::string_view same_day =
    "Voltages of both columns are worked out at the battery voltage and the loads of the first survey: a "
    "battery that is fuller today is not taken for a cure. A change that lies within the uncertainty of the "
    "readings is no change.";
inline constexpr std::string_view heading_staircase_before = "Before the work: the voltage on its way to {}";
inline constexpr std::string_view heading_staircase_after = "After the work: the same way";

// Rewire
inline constexpr std::string_view heading_rewire = "Cable and fuses for the rewire";
inline constexpr std::string_view rewire_nothing = "No cable has to change to keep every limit.";
inline constexpr std::string_view rewire_some =
    "New cable in {} of {} runs keeps every limit of loss and heat.";
inline constexpr std::string_view rewire_proved = "No cheaper choice from the list would do; that is proved.";
inline constexpr std::string_view rewire_open =
    "Not proved to be the cheapest: one that costs up to {} less may exist.";
inline constexpr std::string_view rewire_unproved =
    "Not proved to be the cheapest: the time allowed ended first.";
inline constexpr std::string_view rewire_price = "Price of all cable chosen: {}.";
inline constexpr std::string_view rewire_mass =
    "Conductor metal in all the cable: {}; in the cable that is there now: {}.";
inline constexpr std::string_view rewire_was_is = "{} / {}";
inline constexpr std::string_view rewire_none =
    "No choice from the list keeps every limit, not even the thickest cable everywhere:";
inline constexpr std::string_view rewire_unknown =
    "No choice that keeps every limit was found in the time allowed; whether there is one is not known.";
inline constexpr std::string_view rewire_shortfall = "{}: {}. Would help: {}.";
inline constexpr std::string_view column_run = "Cable";
inline constexpr std::string_view column_was = "Now";
inline constexpr std::string_view column_take = "Take";
inline constexpr std::string_view column_length = "Length";
inline constexpr std::string_view column_fuse = "Fuse";
inline constexpr std::string_view column_carries = "Carries";
inline constexpr std::string_view column_may_carry = "May carry";
inline constexpr std::string_view column_why = "Why not thinner";
inline constexpr std::string_view column_mass = "Metal now / new";
inline constexpr std::string_view column_price = "Price";
inline constexpr std::string_view rewire_both = "2 × {}";
inline constexpr std::string_view rewire_same_size = "{}, new";
inline constexpr std::string_view rewire_stays = "{} more runs stay as they are.";
inline constexpr std::string_view rewire_stays_one = "One more run stays as it is.";
inline constexpr std::string_view why_cheapest = "cheapest that does";
inline constexpr std::string_view why_drop = "voltage lost";
inline constexpr std::string_view why_ampacity = "heat of the cable";
inline constexpr std::string_view why_fuse = "what its fuse protects";
inline constexpr std::string_view why_kept = "stays";
inline constexpr std::string_view fuse_none = "none";
inline constexpr std::string_view fuse_changes = "{}: {} instead of {}.";
inline constexpr std::string_view fuse_opens =
    "{}: a start draws {}, at which it may open; fit a slower one of the same rating, never a larger one.";
inline constexpr std::string_view rewire_raised = "Before you buy: what the rules say of this cable";
inline constexpr std::string_view rewire_raised_one = "{}: {}. {}";
inline constexpr std::string_view rewire_loads = "What the loads get";
inline constexpr std::string_view load_after = "{} ({} lost)";

// Bench sheet
inline constexpr std::string_view heading_bench = "Bench sheet: readings to take";
inline constexpr std::string_view bench_head =
    "Meter no. ____________   Taken by ____________   Date ____________";
inline constexpr std::string_view bench_how =
    "“Sound” is what the meter shows when every part is good. Red probe and black probe go onto the metal of "
    "the lugs themselves, not onto the nut. Set the meter to millivolts for drops. If the current is not the "
    "one given here, write down what it is: drops follow it.";
inline constexpr std::string_view bench_rest =
    "Everything off, chargers and solar off, rested overnight: what a full battery shows";
inline constexpr std::string_view bench_case = "“{}”, switched on: {}";
inline constexpr std::string_view bench_clamp = "clamp round {}";
inline constexpr std::string_view bench_tools = "{} (open first)";
inline constexpr std::string_view column_reading = "Reading";
inline constexpr std::string_view column_red = "Red on";
inline constexpr std::string_view column_black = "Black on";
inline constexpr std::string_view column_sound = "Sound";
inline constexpr std::string_view column_found = "Found";
inline constexpr std::string_view bench_posts = "{}, posts under load";
inline constexpr std::string_view bench_at_rest = "{}, at rest";
inline constexpr std::string_view bench_load = "{}, at the load";
inline constexpr std::string_view bench_current = "current";
inline constexpr std::string_view bench_out_of_reach =
    "Not on this sheet, because no probe gets to them: {}.";
inline constexpr std::string_view bench_left_out = "{} more readings, with the smallest drops, are left out.";
inline constexpr std::string_view bench_shorts =
    "A slip of the probe across battery posts passes thousands of amperes: meter leads fused, probes "
    "insulated to the tip, one hand.";

}  // namespace ohmtrail::render::text
