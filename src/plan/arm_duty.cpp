#include "plan/arm_duty.hpp"

#include <algorithm>

#include "plan/bank_state.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

/// A, at any voltage that a load of a design within its limits can have.
Interval any_current(const RadialLoad& load, double emf) {
  const double lowest = std::max(emf / 2 - load.limit, 1e-3 * emf);
  switch (load.draw) {
    case Draw::current:
      return {load.size, load.size};
    case Draw::power:
      return {load.size / emf, load.size / lowest};
    case Draw::resistance:
      return {lowest / load.size, emf / load.size};
  }
  return {};
}

/// The part of the heat that lasts: 1 where a wire carries no load of short duty and the rest takes the same
/// with and without them.
Interval kept(const RadialCase& radial, const std::vector<bool>& is_short, const Arm& arm) {
  Interval lasting, all;
  for (const int l : arm.loads) {
    const Interval amperes = any_current(radial.loads[at(l)], radial.highest_emf());
    all.low += amperes.low, all.high += amperes.high;
    if (!is_short[at(l)]) lasting.low += amperes.low, lasting.high += amperes.high;
  }
  if (all.low <= 0) return {0, 1};
  const double low = lasting.low / all.high, high = std::min(1.0, lasting.high / all.low);
  return {low * low, high * high};
}

}  // namespace

void narrow_by_duty(const network::Network& network, RadialCase& radial) {
  std::vector<bool> is_short;
  std::vector<const network::ShortDuty*> duties;
  for (const RadialLoad& load : radial.loads) {
    const auto& duty = network.elements[at(load.element)].short_duty;
    is_short.push_back(duty.has_value());
    if (duty) duties.push_back(&*duty);
  }
  const bool alike = std::all_of(duties.begin(), duties.end(), [&](const network::ShortDuty* duty) {
    return duty->on.si() == duties.front()->on.si() &&
           duty->rest.has_value() == duties.front()->rest.has_value() &&
           (!duty->rest || duty->rest->si() == duties.front()->rest->si());
  });
  if (duties.empty() || !alike) return;
  for (Arm& arm : radial.arms) {
    if (arm.string >= 0) continue;
    const Interval part = kept(radial, is_short, arm);
    for (Curve& curve : arm.choices) {
      const double share = curve.least, full = curve.most;
      curve.least = part.low * full + (1 - part.low) * share;
      curve.most = part.high * full + (1 - part.high) * share;
    }
  }
}

}  // namespace ohmtrail::plan
