#include "plan/flow_model.hpp"

#include "plan/flow_case.hpp"

namespace ohmtrail::plan {

namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

}  // namespace

std::vector<Term> FlowCase::across(int from, int to, double factor) const {
  return {{volts[at(from)], factor}, {volts[at(to)], -factor}};
}

void FlowCase::flow(int column, int from, int to) {
  current_law[at(from)].push_back({column, 1});
  current_law[at(to)].push_back({column, -1});
}

FlowModel::FlowModel(Mip& mip, const DesignSpace& space, const CaseSpace& in_case, const Guards& guards,
                     const solve::CaseSolution& probe, const std::vector<std::vector<int>>& taken,
                     double share) {
  const auto& network = in_case.network;
  FlowCase flow{mip, space, in_case, guards, probe, taken, share, current_ranges(network, probe), {}, {}, {}};
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
