#include "plan/node_current.hpp"

#include <algorithm>

namespace ohmtrail::plan {

namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

/// One load at a node: how much more drop there is on the way to it.
void add_load(const RadialLoad& load, const Interval& amperes, const Interval& more, NodeCurrent& node) {
  switch (load.draw) {
    case Draw::current:
      node.given += load.size;
      return;
    case Draw::power:
      node.least_power += amperes.low;
      node.watts += load.size;
      node.volts += load.size * more.low;
      return;
    case Draw::resistance:
      node.least_resistive += amperes.low;
      node.siemens += 1 / load.size;
      node.amperes -= more.high / load.size;
  }
}

}  // namespace

double NodeCurrent::power(double d) const {
  return watts > 0 ? std::max(least_power, watts / std::max(volts - d, lowest_volts)) : 0;
}

double NodeCurrent::resistive(double d) const {
  return std::max(least_resistive, amperes - siemens * d);
}

std::vector<NodeCurrent> node_currents(const RadialCase& in_case, const LoadTree& tree, const Bounds& known) {
  std::vector<NodeCurrent> nodes(tree.size());
  for (std::size_t n = 0; n < tree.size(); ++n)
    for (const int l : tree[n].loads) {
      Interval more;
      for (int up = static_cast<int>(n); up >= 0; up = tree[at(up)].parent) {
        add_load(in_case.loads[at(l)], known.load_amperes[at(l)], more, nodes[at(up)]);
        for (const int a : tree[at(up)].arms) {
          more.low += known.arm_volts[at(a)].low;
          more.high += known.arm_volts[at(a)].high;
        }
      }
    }
  for (NodeCurrent& node : nodes) {
    if (node.watts > 0) node.volts = known.terminal.high - node.volts / node.watts;
    node.amperes += node.siemens * known.terminal.low;
    node.lowest_volts = in_case.emf / 10;
  }
  return nodes;
}

}  // namespace ohmtrail::plan
