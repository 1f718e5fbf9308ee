#pragma once
#include <string_view>

/// What a finding is and what can come of it, by its kind; see text.hpp.
namespace ohmtrail::render::text {

inline constexpr std::string_view kind_overloaded = "cable carries more than it may";
inline constexpr std::string_view kind_hot_cable = "cable too hot";
inline constexpr std::string_view kind_hot_connection = "hot connection";
inline constexpr std::string_view kind_unfused = "cable without a fuse in reach";
inline constexpr std::string_view kind_large_fuse = "fuse too large for its cable";
inline constexpr std::string_view kind_fuse_voltage = "fuse made for less voltage";
inline constexpr std::string_view kind_cannot_break = "fuse or breaker too weak for a short circuit";
inline constexpr std::string_view kind_break_unknown = "strength against a short circuit not known";
inline constexpr std::string_view kind_wing_nut = "wing nut";
inline constexpr std::string_view kind_crowded = "too many lugs on one stud";
inline constexpr std::string_view kind_unlike_gauge = "plus and minus cable of unlike size";
inline constexpr std::string_view kind_unlike_links = "unlike cable between batteries side by side";
inline constexpr std::string_view kind_unlike_batteries = "unlike batteries together";
inline constexpr std::string_view kind_reversed = "description cannot be right";
inline constexpr std::string_view risk_reversed =
    "None in itself: what this report says of the load rests on a mistake in the description.";
inline constexpr std::string_view kind_undervoltage = "too much voltage lost";
inline constexpr std::string_view kind_stopped = "equipment stopped";
inline constexpr std::string_view kind_stops_early = "equipment stops at half charge";
inline constexpr std::string_view kind_hunting = "equipment stops and starts again";
inline constexpr std::string_view kind_collapse = "more asked than can be delivered";
inline constexpr std::string_view kind_charging_drop = "voltage lost while charging";
inline constexpr std::string_view kind_undercharge = "battery never full";
inline constexpr std::string_view kind_no_supply = "no supply";
inline constexpr std::string_view kind_live_end = "live open end";
inline constexpr std::string_view kind_other = "finding";

inline constexpr std::string_view risk_hot_cable =
    "Fire: the cable can get hotter than its insulation stands, which then ages, melts and lets go.";
inline constexpr std::string_view risk_hot_connection =
    "Burns and fire: heat loosens and corrodes a connection further, so it gets worse by itself.";
inline constexpr std::string_view risk_unfused =
    "Fire: in a short circuit nothing stops the current, and the cable glows until the battery is empty.";
inline constexpr std::string_view risk_cannot_break =
    "Fire: in a short circuit the fuse or breaker may burst or arc on instead of breaking the current.";
inline constexpr std::string_view risk_works_loose =
    "Heat: what works loose makes poor contact, and poor contact gets hot.";
inline constexpr std::string_view risk_weaker_cable =
    "Heat: the thinner of the two cables carries the same current and gets hot first.";
inline constexpr std::string_view risk_unlike_links =
    "Heat, and batteries that age unevenly: the string with the thicker cable works most.";
inline constexpr std::string_view risk_unlike_batteries =
    "Worn batteries: the better one is dragged down by the other, and in charging one of them can gas.";
inline constexpr std::string_view risk_undervoltage =
    "Too little voltage: the equipment runs weakly, draws more current to make up for it, or stops.";
inline constexpr std::string_view risk_stops =
    "Sudden stop: the equipment switches itself off when it is needed.";
inline constexpr std::string_view risk_collapse =
    "Sudden stop: more is asked than battery and cables can give, and all that hangs on them can fail at "
    "once.";
inline constexpr std::string_view risk_undercharge =
    "Worn battery: one that never gets full loses capacity for good and has to be replaced early.";
inline constexpr std::string_view risk_no_supply = "No function: no current reaches it.";
inline constexpr std::string_view risk_live_end =
    "Sparks and fire: a live end that touches metal makes a short circuit.";

// Where the kind is not known
inline constexpr std::string_view risk_urgent = "Fire, burns or sudden loss of power are possible.";
inline constexpr std::string_view risk_soon =
    "It gets worse with time; equipment may stop or wear out early.";
inline constexpr std::string_view risk_improvement = "No danger is expected; comfort or margin is lost.";

}  // namespace ohmtrail::render::text
