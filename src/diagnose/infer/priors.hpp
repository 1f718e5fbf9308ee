#pragma once
#include "diagnose/infer/parameter.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"

/// What is believed of each thing before any reading. All figures are common practice unless they come from
/// the netlist; they are the ones that the simulated systems of the tests are drawn from.
namespace ohmtrail::diagnose::inference {

/// ln of the resistance of a wire, termination, joint, switch or fuse, with its fault.
[[nodiscard]] Parameter element_prior(const netlist::System& system, const network::Element& element);

/// ln of a battery's resistance, and its open-circuit voltage; each has a fault of its own: raised
/// resistance, one cell's voltage missing. Together their chance is 15 %.
[[nodiscard]] Parameter battery_resistance_prior(const netlist::Battery& battery,
                                                 const network::Element& element);
[[nodiscard]] Parameter emf_prior(const netlist::Battery& battery, const network::Element& element);

/// ln of a load's size over what the netlist says: 0.1 for a constant current, else 0.3.
[[nodiscard]] Normal load_prior(const netlist::Takes& takes);

/// The battery's own tests gave its resistance (a load test or a tester, not `resistance`): one more reading
/// of it.
[[nodiscard]] bool resistance_was_tested(const netlist::Battery& battery);

inline constexpr double tested_resistance_ln_sd = 0.15;
inline constexpr double set_point_sd = 0.005;    ///< of the set point
inline constexpr double isolator_drop_sd = 0.1;  ///< of the drop
/// Battery drift between readings: sd relative to its voltage after one minute, growing with the root of the
/// time.
inline constexpr double drift_sd_per_root_minute = 0.0005;
/// Chance that a number in the file is simply wrong (misread, mistyped, probes swapped), and that a
/// `resistance` given with an element is. With 1 % a fault that one lone reading shows stays at 92 % however
/// large it is; with 0.5 % at 96 %, and blunders of 8 standard deviations are still named.
inline constexpr double wrong_reading_chance = 0.005;
inline constexpr double wrong_resistance_chance = 0.001;

[[nodiscard]] double log_odds(double chance);

}  // namespace ohmtrail::diagnose::inference
