#include <algorithm>
#include <cmath>
#include <limits>

#include "plan/flow_case.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// The elements of one conductor of a run in scope: in series, from its first point to its last.
struct Conductor {
  int run = -1;
  std::vector<int> elements;
  int from = -1, to = -1;
};

std::vector<Conductor> conductors(const FlowCase& flow) {
  const auto& network = flow.network();
  const std::vector<int> place = places_in_scope(flow.space);
  std::vector<Conductor> found;
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    const auto& element = network.elements[e];
    if (element.origin.section != network::Section::runs || !element.active) continue;
    const int run = place[element.origin.index];
    if (run < 0) continue;
    if (found.empty() || found.back().run != run || found.back().to != element.from)
      found.push_back({run, {}, element.from, element.to});
    found.back().elements.push_back(static_cast<int>(e));
    found.back().to = element.to;
  }
  return found;
}

/// What a candidate makes of a conductor, and the current that is too much for it whatever the duty.
struct Choice {
  Curve curve;
  double most = 0;
};

Choice choice_of(const FlowCase& flow, const Conductor& conductor, std::size_t candidate) {
  Choice choice;
  double duty = 1;
  for (const ElementValue& value : flow.in_case.values[at(conductor.run)][candidate])
    if (std::find(conductor.elements.begin(), conductor.elements.end(), value.element) !=
        conductor.elements.end()) {
      choice.curve.add(value);
      duty = std::min(duty, value.duty);
    }
  choice.most = flow.space.runs[at(conductor.run)].candidates[candidate].ampacity / std::sqrt(duty);
  return choice;
}

/// The current of a candidate is zero unless it is taken; adds it to the conductor's current and drop.
void add_candidate(FlowCase& flow, FlowTangents& tangents, const Conductor& conductor, std::size_t candidate,
                   std::vector<Term>& sum, std::vector<Term>& drop) {
  const int taken = flow.taken[at(conductor.run)][candidate];
  const Choice choice = choice_of(flow, conductor, candidate);
  const Interval& range = flow.ranges.amperes[at(conductor.elements.front())];
  const Interval allowed{std::max(range.low, -choice.most), std::min(range.high, choice.most)};
  if (allowed.low > allowed.high) {
    flow.mip.fix(taken, 0);  // its ampacity is below what any design makes it carry
    return;
  }
  const int amperes = flow.mip.add_continuous(std::min(allowed.low, 0.0), std::max(allowed.high, 0.0));
  flow.mip.add_row({{amperes, 1}, {taken, -allowed.high}}, -kInfinity, 0);
  flow.mip.add_row({{amperes, 1}, {taken, -allowed.low}}, 0, kInfinity);
  sum.push_back({amperes, 1});
  drop.push_back({amperes, -choice.curve.cold});
  if (choice.curve.most > 0)
    drop.push_back({tangents.add_warmth(flow.mip, conductor.elements.front(), amperes, taken, choice.curve,
                                        allowed.low, allowed.high),
                    -1});
}

}  // namespace

void add_run_rows(FlowCase& flow, FlowTangents& tangents) {
  for (const Conductor& conductor : conductors(flow)) {
    const Interval& range = flow.ranges.amperes[at(conductor.elements.front())];
    const int whole = flow.mip.add_continuous(range.low, range.high);
    for (const int e : conductor.elements) flow.amperes[at(e)] = whole;
    flow.flow(whole, conductor.from, conductor.to);
    auto sum = std::vector<Term>{{whole, -1}};
    auto drop = flow.across(conductor.from, conductor.to);
    for (std::size_t c = 0; c < flow.taken[at(conductor.run)].size(); ++c)
      add_candidate(flow, tangents, conductor, c, sum, drop);
    flow.mip.add_row(sum, 0, 0);
    flow.mip.add_row(drop, 0, 0);
  }
}

}  // namespace ohmtrail::plan
