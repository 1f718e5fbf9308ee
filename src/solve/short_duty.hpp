#pragma once
#include "ohmtrail/solve/case_solution.hpp"

/// Loads that run for a minute and rest for ten do not bring their wires to the steady temperature.
namespace ohmtrail::solve {

/// Whether a load of short duty runs in `solved`.
[[nodiscard]] bool has_short_duty(const network::Network& network, const Solution& solved);

/// From solutions with and without the loads of short duty.
[[nodiscard]] Turns turns_of(const network::Network& network, const Solution& all_on,
                             const Solution& lasting);

/// Lowers the rise of every wire to what it reaches: what lasts in full, the rest by `trade::duty_share` of
/// the load that rests least.
void lower_rises(network::Network& network, const Turns& turns);

}  // namespace ohmtrail::solve
