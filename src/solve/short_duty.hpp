#pragma once
#include "ohmtrail/solve/case_solution.hpp"

/// Loads that run for a minute and rest for ten do not bring their wires to the steady temperature.
namespace ohmtrail::solve {

/// Whether a load of short duty runs in `solved`.
[[nodiscard]] bool has_short_duty(const network::Network& network, const Solution& solved);

/// Share of its steady rise that a wire has at the end of each turn, once turns have repeated for long:
/// (1 − e^(−on/τ)) / (1 − e^(−(on + rest)/τ)); without a rest (1 − e^(−on/τ)), once from cold. Times in s.
[[nodiscard]] double duty_share(double on, double rest, double time_constant);

/// From solutions with and without the loads of short duty.
[[nodiscard]] Turns turns_of(const network::Network& network, const Solution& all_on,
                             const Solution& lasting);

/// Lowers the rise of every wire to what it reaches: what lasts in full, the rest by `duty_share` of the load
/// that rests least.
void lower_rises(network::Network& network, const Turns& turns);

}  // namespace ohmtrail::solve
