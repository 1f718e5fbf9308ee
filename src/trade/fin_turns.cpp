#include "ohmtrail/trade/fin_turns.hpp"

#include <cmath>
#include <limits>
#include <numbers>

namespace ohmtrail::trade {
namespace {

using units::HeatTransferCoefficient;
using units::Temperature;
using units::TemperatureDifference;
using units::ThermalConductance;
using units::Time;

/// Turns that are summed one by one; what older ones left behind is so even that its mean is as good.
constexpr int turns_summed = 64;

/// All cables of a joint at one rise.
struct Sink {
  ThermalConductance conductance;
  Time time_constant;
};

Sink sink_at(std::span<const Fin> fins, Temperature ambient, TemperatureDifference rise) {
  Sink sink{ThermalConductance{0}, Time{0}};
  double roots = 0;
  for (const Fin& fin : fins) {
    const auto h = convection(fin.diameter, ambient, rise) + radiation(jacket_emissivity, ambient, rise);
    const auto conductance = fin_conductance(fin, h);
    sink.conductance += conductance;
    roots += conductance.si() * std::sqrt(fin_time_constant(fin, h).si());
  }
  const double root = roots / sink.conductance.si();
  sink.time_constant = Time{root * root};
  return sink;
}

/// What the joint would rise by if its cables gave off heat as they do at `rise`.
double rise_given(const TurnHeat& heat, const Sink& sink) {
  const double share = fin_turn_share(heat.on, heat.rest, sink.time_constant);
  return (heat.lasting.si() + heat.in_turns.si() * share) / sink.conductance.si();
}

}  // namespace

Time fin_time_constant(const Fin& fin, HeatTransferCoefficient h) {
  return Time{fin.stored.si() / (h.si() * std::numbers::pi * fin.diameter.si())};
}

double fin_warming(Time time, Time time_constant) {
  return time_constant.si() <= 0 ? 1 : std::erf(std::sqrt(ratio(time, time_constant)));
}

double fin_turn_share(Time on, std::optional<Time> rest, Time time_constant) {
  if (!rest) return fin_warming(on, time_constant);
  const Time period = on + *rest;
  double share = 0;
  for (int k = 0; k < turns_summed; ++k)
    share += fin_warming(on + period * k, time_constant) - fin_warming(period * k, time_constant);
  return share + ratio(on, period) * (1 - fin_warming(period * turns_summed, time_constant));
}

TemperatureDifference joint_rise_in_turns(const TurnHeat& heat, std::span<const Fin> fins,
                                          Temperature ambient) {
  const auto total = heat.lasting + heat.in_turns;
  if (fins.empty() || !(total.si() > 0)) return joint_rise(total, fins, ambient);
  // A warmer joint gives off more for each kelvin, so `rise_given` falls as the rise grows: one root.
  double low = 0, high = rise_given(heat, sink_at(fins, ambient, TemperatureDifference{0}));
  while (high - low > 1e-9 * high) {
    const double middle = (low + high) / 2;
    (rise_given(heat, sink_at(fins, ambient, TemperatureDifference{middle})) > middle ? low : high) = middle;
  }
  return TemperatureDifference{(low + high) / 2};
}

}  // namespace ohmtrail::trade
