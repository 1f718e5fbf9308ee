#include "plan/node_current.hpp"

#include <algorithm>

#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

/// One load at a node: how much more drop there is on the way to it.
void add_load(const RadialLoad& load, const Interval& amperes, const Interval& more, NodeCurrent& node) {
  node.most_amperes += amperes.high;
  switch (load.draw) {
    case Draw::current:
      node.given += load.size;
      return;
    case Draw::power:
      node.least_power += amperes.low;
      node.watts += load.size;
      node.least_sag += load.size * more.low;
      return;
    case Draw::resistance:
      node.least_resistive += amperes.low;
      node.siemens += 1 / load.size;
      node.most_lag += more.high / load.size;
  }
}

/// From a load's node up to the root.
void add_along(const RadialCase& in_case, const LoadTree& tree, const Bounds& known, std::size_t load,
               int node, std::vector<NodeCurrent>& nodes) {
  Interval more;
  for (; node >= 0; node = tree[at(node)].parent) {
    add_load(in_case.loads[load], known.load_amperes[load], more, nodes[at(node)]);
    for (const int a : tree[at(node)].arms) {
      more.low += known.arm_volts[at(a)].low;
      more.high += known.arm_volts[at(a)].high;
    }
  }
}

}  // namespace

double NodeCurrent::volts(double d, double sag) const {
  return std::max(terminal.high - d - std::max(sag, least_sag) / watts, lowest_volts);
}

double NodeCurrent::power(double d, double sag) const {
  return watts > 0 ? std::max(least_power, watts / volts(d, sag)) : 0;
}

double NodeCurrent::resistive(double d, double lag) const {
  return std::max(least_resistive, siemens * (terminal.low - d) - std::min(lag, most_lag));
}

double NodeCurrent::slope(double d, const Label& label) const {
  if (watts <= 0) return 0;
  const double v = volts(d, label.sag);
  return watts / (v * v);
}

std::vector<NodeCurrent> node_currents(const RadialCase& in_case, const LoadTree& tree, const Bounds& known) {
  std::vector<NodeCurrent> nodes(tree.size());
  for (std::size_t n = 0; n < tree.size(); ++n) {
    nodes[n].terminal = known.terminal;
    nodes[n].least_drop = known.lead_volts.low;
    nodes[n].lowest_volts = in_case.highest_emf() / 10;
    for (int up = tree[n].parent; up >= 0; up = tree[at(up)].parent)
      for (const int a : tree[at(up)].arms) nodes[n].least_drop += known.arm_volts[at(a)].low;
    for (const int l : tree[n].loads) add_along(in_case, tree, known, at(l), static_cast<int>(n), nodes);
  }
  return nodes;
}

}  // namespace ohmtrail::plan
