#include "solve/short_duty.hpp"

#include <algorithm>
#include <cmath>

#include "ohmtrail/trade/ampacity.hpp"

namespace ohmtrail::solve {

namespace {

/// Largest share over the loads of short duty that run.
double share_of(const std::vector<network::ShortDuty>& duties, units::Time time_constant) {
  double share = 0;
  for (const network::ShortDuty& duty : duties)
    share = std::max(share, trade::duty_share(duty.on, duty.rest, time_constant));
  return share;
}

}  // namespace

bool has_short_duty(const network::Network& network, const Solution& solved) {
  for (std::size_t k = 0; k < network.elements.size(); ++k)
    if (network.elements[k].short_duty && solved.running[k]) return true;
  return false;
}

Turns turns_of(const network::Network& network, const Solution& all_on, const Solution& lasting) {
  Turns turns;
  turns.lasting.assign(network.elements.size(), 1);
  for (std::size_t k = 0; k < network.elements.size(); ++k) {
    const auto& duty = network.elements[k].short_duty;
    if (duty && all_on.running[k]) turns.duties.push_back(*duty);
    if (all_on.current[k] != 0)
      turns.lasting[k] = std::min(1.0, std::pow(lasting.current[k] / all_on.current[k], 2));
  }
  return turns;
}

void lower_rises(network::Network& network, const Turns& turns) {
  for (std::size_t k = 0; k < network.elements.size(); ++k) {
    auto& heating = network.elements[k].heating;
    if (!heating) continue;
    const double kept = turns.lasting[k];
    heating->share = kept + (1 - kept) * share_of(turns.duties, heating->time_constant);
  }
}

}  // namespace ohmtrail::solve
