#pragma once
#include "ohmtrail/trade/words.hpp"
#include "ohmtrail/units/quantity.hpp"

/// Limits by which a battery's checks are judged. Volts of lead-acid are per cell: six of them make 12 V.
namespace ohmtrail::trade {

/// Below this at rest a battery is charged first and its load test proves nothing: 12.4 V for 12 V.
/// Sources: passenger-car service manuals 2003 (open-circuit voltage test); US Army TM 5-3805-262-20.
inline constexpr units::Voltage least_cell_before_load_test{12.4 / 6};

/// The same by hydrometer, at 26.7 °C.
/// Sources: US Army TM 5-3805-281-24-2; outboard-motor service manual 1994 (public).
inline constexpr double least_gravity_before_load_test = 1.225;

/// Cells of a charged battery that differ by more are uneven. Source: US Army TM 9-6140-200-14, para 4-7.
inline constexpr double gravity_spread_uneven = 0.025;

/// Cells that still differ by more after a charge: replace. Source: US Army TM 5-3805-281-24-2, hydrometer
/// test.
inline constexpr double gravity_spread_bad = 0.050;

/// One cell below this while others are charged: replace. Source: US Army TM 5-3740-214-14.
inline constexpr double gravity_cell_bad = 1.150;

/// Rested cells whose volts differ by more are uneven; derived from the gravity limit by volts = gravity +
/// 0.845.
inline constexpr units::Voltage cell_volts_spread_uneven{0.05};

/// … and by more: equalise or reject. Source: public photovoltaic battery page.
inline constexpr units::Voltage cell_volts_spread_bad{0.2};

/// Gravities that a hydrometer in a battery's acid can show at all; from memory: water is 1.000, the
/// strongest battery acid sold 1.400.
inline constexpr double gravity_least_possible = 1.0, gravity_most_possible = 1.4;

/// A rest voltage and a mean gravity that call for cells further apart contradict each other. Common
/// practice.
inline constexpr units::Voltage cell_volts_contradiction{0.2 / 6};

/// Post to the top of the case: more means a film of acid that drains the battery. Common practice.
inline constexpr units::Voltage top_leak_limit{0.5};

/// A case warmer than this is neither tested nor charged: 125 °F. Common practice.
inline constexpr units::Temperature too_hot_to_test{51.7};

/// No lead-acid cell rests above this; it was on charge or hardly off it. From memory: lead-acid textbooks.
inline constexpr units::Voltage most_at_any_rest{2.20};

/// Resistance over the sound value: suspect above the first, failed above the second. Common practice.
inline constexpr double resistance_suspect = 1.5, resistance_failed = 2.0;

}  // namespace ohmtrail::trade
