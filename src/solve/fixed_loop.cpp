#include "solve/fixed_loop.hpp"

#include <queue>

#include "units/index.hpp"

namespace ohmtrail::solve {

namespace {

std::vector<std::vector<int>> neighbours(const Circuit& circuit, const std::vector<char>& fixes,
                                         int closing) {
  std::vector<std::vector<int>> at_point(at(circuit.points));
  for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
    if (!fixes[b] || static_cast<int>(b) == closing) continue;
    at_point[at(circuit.branches[b].from)].push_back(static_cast<int>(b));
    at_point[at(circuit.branches[b].to)].push_back(static_cast<int>(b));
  }
  return at_point;
}

}  // namespace

std::vector<int> fixed_loop(const Circuit& circuit, const std::vector<char>& fixes, int closing) {
  const auto at_point = neighbours(circuit, fixes, closing);
  const int goal = circuit.branches[at(closing)].from;
  std::vector<int> came_by(at(circuit.points), -1);
  std::queue<int> open;
  open.push(circuit.branches[at(closing)].to);
  came_by[at(open.front())] = closing;
  while (!open.empty() && came_by[at(goal)] < 0) {
    const int point = open.front();
    open.pop();
    for (const int b : at_point[at(point)]) {
      const Branch& branch = circuit.branches[at(b)];
      const int other = branch.from == point ? branch.to : branch.from;
      if (came_by[at(other)] >= 0) continue;
      came_by[at(other)] = b;
      open.push(other);
    }
  }
  std::vector<int> loop{closing};
  for (int point = goal; came_by[at(point)] >= 0 && came_by[at(point)] != closing;) {
    const Branch& branch = circuit.branches[at(came_by[at(point)])];
    loop.push_back(came_by[at(point)]);
    point = branch.from == point ? branch.to : branch.from;
  }
  return loop;
}

}  // namespace ohmtrail::solve
