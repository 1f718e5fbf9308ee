#include "plan/flow_model.hpp"

#include <algorithm>

#include "plan/flow_case.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {

std::vector<Term> FlowCase::across(int from, int to, double factor) const {
  return {{volts[at(from)], factor}, {volts[at(to)], -factor}};
}

void FlowCase::flow(int column, int from, int to) {
  current_law[at(from)].push_back({column, 1});
  current_law[at(to)].push_back({column, -1});
}

std::vector<Interval> most_amperes(const DesignSpace& space, const std::vector<solve::CaseSolution>& probes) {
  std::vector<Interval> most;
  for (std::size_t c = 0; c < probes.size(); ++c) {
    const CurrentRanges ranges = current_ranges(space.cases[c].network, probes[c]);
    most.resize(ranges.amperes.size());
    for (std::size_t e = 0; e < most.size(); ++e) {
      if (!space.cases[c].network.elements[e].active) continue;
      const Interval& amperes = ranges.amperes[e];
      most[e].low = std::max({most[e].low, amperes.low, -amperes.high});
      most[e].high = std::max({most[e].high, amperes.high, -amperes.low});
    }
  }
  return most;
}

FlowModel::FlowModel(Mip& mip, const DesignSpace& space, const CaseSpace& in_case, const Guards& guards,
                     const solve::CaseSolution& probe, const std::vector<Interval>& most_of,
                     const std::vector<std::vector<int>>& taken, double share) {
  const auto& network = in_case.network;
  FlowCase flow{mip, space, in_case, guards, probe, most_of, taken, share, current_ranges(network, probe),
                {},  {},    {}};
  const double most = flow.ranges.most_volts;
  for (std::size_t p = 0; p < network.points.size(); ++p)
    flow.volts.push_back(mip.add_continuous(-most, most));
  if (!network.points.empty()) mip.fix(flow.volts[at(network.reference.value_or(0))], 0);
  flow.current_law.resize(network.points.size());
  flow.amperes.assign(network.elements.size(), -1);
  add_run_rows(flow, tangents_);
  add_element_rows(flow, tangents_);
  for (const auto& terms : flow.current_law)
    if (!terms.empty()) mip.add_row(terms, 0, 0);
  add_limit_rows(flow);
  add_device_rows(flow);
}

}  // namespace ohmtrail::plan
