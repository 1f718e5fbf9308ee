#include <algorithm>
#include <limits>

#include "plan/flow_case.hpp"
#include "plan/rated_device.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

using network::Element;
using network::Role;
constexpr double kInfinity = std::numeric_limits<double>::infinity();

void add_resistor(FlowCase& flow, FlowTangents& tangents, int e, int amperes, const Interval& range) {
  const Element& element = flow.network().elements[at(e)];
  Curve curve;
  curve.add(value_of(flow.network(), e));
  auto row = flow.across(element.from, element.to);
  row.push_back({amperes, -curve.cold});
  if (curve.most > 0)
    row.push_back({tangents.add_warmth(flow.mip, e, amperes, -1, curve, range.low, range.high), -1});
  flow.mip.add_row(row, 0, 0);
}

/// A device that guards runs in scope: V = R i with R between what its ratings may have. Where the current
/// may flow back, by `back` at most, either row gives way by what that can make.
void add_device(FlowCase& flow, const Device& device, int amperes, const Interval& range) {
  Device here = device;
  const double back = std::max(0.0, -range.low);
  here.most = flow.most[at(device.element)];
  Interval allowed = Interval::none();
  for (const int run : device.runs)
    for (const Candidate& candidate : flow.space.runs[at(run)].candidates)
      allowed.include(candidate.fuse_limit);
  const Interval ohms = here.resistance(allowed);
  const double slack = (ohms.high - ohms.low) * back;
  const Element& element = flow.network().elements[at(device.element)];
  auto least = flow.across(element.from, element.to), most = least;
  least.push_back({amperes, -ohms.low});
  most.push_back({amperes, -ohms.high});
  flow.mip.add_row(least, -slack, kInfinity);
  flow.mip.add_row(most, -kInfinity, slack);
}

void add_battery(FlowCase& flow, const Element& element, int amperes) {
  auto row = flow.across(element.from, element.to);
  row.push_back({amperes, element.resistance.si()});
  flow.mip.add_row(row, element.voltage.si(), element.voltage.si());
}

/// Delivers nothing, or holds its set point, or delivers its limit.
void add_charger(FlowCase& flow, const Element& element, int amperes) {
  const double limit = element.limit.si(), volts = element.voltage.si(), far = 2 * flow.ranges.most_volts;
  const int on = flow.mip.add_binary(0), full = flow.mip.add_binary(0);
  flow.mip.add_row({{amperes, 1}, {on, -limit}}, -kInfinity, 0);
  flow.mip.add_row({{amperes, 1}, {full, -limit}}, 0, kInfinity);
  auto below = flow.across(element.from, element.to);
  below.push_back({on, far});
  flow.mip.add_row(below, -kInfinity, volts + far);
  auto above = flow.across(element.from, element.to);
  above.push_back({full, far});
  flow.mip.add_row(above, volts, kInfinity);
}

void add_isolator(FlowCase& flow, const Element& element, int amperes) {
  const double most = flow.ranges.most_amperes;
  const double far = 2 * flow.ranges.most_volts + most * element.resistance.si();
  const int conducts = flow.mip.add_binary(0);
  flow.mip.add_row({{amperes, 1}, {conducts, -most}}, -kInfinity, 0);
  auto row = flow.across(element.from, element.to);
  row.push_back({amperes, -element.resistance.si()});
  flow.mip.add_row(row, -kInfinity, element.voltage.si());
  row.push_back({conducts, -far});
  flow.mip.add_row(row, element.voltage.si() - far, kInfinity);
}

void add_load(FlowCase& flow, FlowTangents& tangents, int e, int amperes) {
  const Element& element = flow.network().elements[at(e)];
  if (element.partner >= 0 || !flow.ranges.known[at(e)]) return;  // its range is all that is known
  if (const auto* given = std::get_if<units::Current>(&*element.takes)) {
    flow.mip.fix(amperes, given->si());
  } else if (const auto* ohms = std::get_if<units::Resistance>(&*element.takes)) {
    auto row = flow.across(element.from, element.to);
    row.push_back({amperes, -ohms->si()});
    flow.mip.add_row(row, 0, 0);
  } else {
    const double watts = std::get<units::Power>(*element.takes).si() / element.efficiency + element.idle.si();
    const Interval& volts = flow.ranges.load_volts[at(e)];
    tangents.add_power(flow.mip, e, amperes, flow.volts[at(element.from)], flow.volts[at(element.to)], watts,
                       volts.low, volts.high);
  }
}

void add_element(FlowCase& flow, FlowTangents& tangents, int e) {
  const Element& element = flow.network().elements[at(e)];
  const bool one_way = element.role == Role::charger || element.role == Role::isolator;
  Interval range = flow.ranges.amperes[at(e)];  // along from → to
  if (one_way) range = {0, std::max(range.high, 0.0)};
  if (element.role == Role::battery) range = {-range.high, -range.low};  // delivered
  const int amperes = flow.amperes[at(e)] = flow.mip.add_continuous(range.low, range.high);
  const bool source = element.role == Role::battery || element.role == Role::charger;
  flow.flow(amperes, source ? element.to : element.from, source ? element.from : element.to);
  switch (element.role) {
    case Role::battery:
      return add_battery(flow, element, amperes);
    case Role::charger:
      return add_charger(flow, element, amperes);
    case Role::isolator:
      return add_isolator(flow, element, amperes);
    case Role::load:
      return add_load(flow, tangents, e, amperes);
    default:
      for (const Device& device : devices_of(flow.space, flow.network(), flow.guards))
        if (device.element == e) return add_device(flow, device, amperes, range);
      add_resistor(flow, tangents, e, amperes, range);
  }
}

}  // namespace

void add_element_rows(FlowCase& flow, FlowTangents& tangents) {
  for (std::size_t e = 0; e < flow.network().elements.size(); ++e)
    if (flow.network().elements[e].active && flow.amperes[e] < 0)
      add_element(flow, tangents, static_cast<int>(e));
}

}  // namespace ohmtrail::plan
