#pragma once
#include <string_view>

/// Words of the report: tables, further chapters, small print; see text.hpp.
namespace ohmtrail::render::text {

// Report: pictures and tables
inline constexpr std::string_view heading_diagram = "Wiring diagram: {}";
inline constexpr std::string_view heading_staircase = "The voltage on its way to {} and back";
inline constexpr std::string_view heading_connections = "The worst connections";
inline constexpr std::string_view connections_more =
    "{} more are left out; each costs less than those above.";
inline constexpr std::string_view nearly_sure = ">\u202F99\u202F%";
inline constexpr std::string_view hardly = "<\u202F1\u202F%";
inline constexpr std::string_view no_connections_likely =
    "No part is more likely at fault than sound, as far as the readings tell.";
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

// Report: charging
inline constexpr std::string_view heading_charging = "From the charger to the batteries";
inline constexpr std::string_view column_from = "From";
inline constexpr std::string_view column_to = "To battery";
inline constexpr std::string_view column_at_charger = "At the charger";
inline constexpr std::string_view column_at_posts = "At the battery";
inline constexpr std::string_view column_most_in = "Most of it in";
inline constexpr std::string_view column_share = "Share";
inline constexpr std::string_view charging_none = "not charged";
inline constexpr std::string_view charging_never_full =
    "{} never gets beyond {} of the {} that {} is set to (“{}”): {}. A battery that is never full wears out "
    "early.";
inline constexpr std::string_view charging_spent = "the charger gives all it can, {}";
inline constexpr std::string_view charging_way = "the rest is lost on the way";
inline constexpr std::string_view charging_more = "{} more ways from a charger to a battery lose less.";
inline constexpr std::string_view charging_rule =
    "On the way from a charger to a battery no more than {} of the rated voltage should be lost (common "
    "practice); what is lost there is missing when the battery should become full.";

// Report: small print
inline constexpr std::string_view heading_assumptions = "Taken as given or assumed";
inline constexpr std::string_view assumed_wires =
    "What a sound conductor has: from its gauge, length and metal, for {}.";
inline constexpr std::string_view assumed_ambient = "ambient temperature {}";
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
