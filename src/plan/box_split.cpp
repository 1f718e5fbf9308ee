#include "plan/box_split.hpp"

#include <algorithm>
#include <limits>

#include "units/index.hpp"

namespace ohmtrail::plan {

std::vector<BoxNode> outside_of(BoxNode rest, const Box& refused,
                                const std::vector<std::vector<double>>& least, double wanted) {
  std::vector<std::pair<double, std::size_t>> runs;
  for (std::size_t k = 0; k < refused.size(); ++k) {
    double bound = std::numeric_limits<double>::infinity();
    for (std::size_t c = 0; c < refused[k].size(); ++c)
      if (rest.box[k][c] && !refused[k][c]) bound = std::min(bound, least[k][c]);
    if (bound < wanted) runs.emplace_back(bound, k);
  }
  std::sort(runs.rbegin(), runs.rend());
  std::vector<BoxNode> nodes;
  for (const auto& [bound, k] : runs) {
    BoxNode outside = rest;
    outside.bound = std::max(outside.bound, bound);
    for (std::size_t c = 0; c < refused[k].size(); ++c) {
      outside.box[k][c] = rest.box[k][c] && !refused[k][c];
      rest.box[k][c] = rest.box[k][c] && refused[k][c];
    }
    nodes.push_back(std::move(outside));
  }
  return nodes;
}

std::vector<BoxNode> split_at(const BoxNode& node, int run, int candidate) {
  std::vector<std::size_t> allowed;
  for (std::size_t c = 0; c < node.box[at(run)].size(); ++c)
    if (node.box[at(run)][c]) allowed.push_back(c);
  if (allowed.size() < 2) return {};
  std::size_t first = 1;  // of the upper part
  while (first + 1 < allowed.size() && allowed[first] <= at(candidate)) ++first;
  std::vector<BoxNode> halves{node, node};
  for (std::size_t k = 0; k < allowed.size(); ++k) halves[k < first ? 1 : 0].box[at(run)][allowed[k]] = false;
  return halves;
}

bool is_point(const Box& box) {
  return std::all_of(box.begin(), box.end(), [](const std::vector<bool>& allowed) {
    return std::count(allowed.begin(), allowed.end(), true) == 1;
  });
}

std::vector<int> off_path_first(const RadialCase& in_case, const Bounds& broken, std::size_t count) {
  std::vector<bool> on_path(count, false);
  if (broken.broken_load >= 0)
    for (const int a : in_case.loads[at(broken.broken_load)].path)
      if (const int run = in_case.arms[at(a)].run; run >= 0) on_path[at(run)] = true;
  std::vector<int> runs;
  for (const bool turn : {false, true})
    for (std::size_t k = 0; k < count; ++k)
      if (on_path[k] == turn) runs.push_back(static_cast<int>(k));
  return runs;
}

}  // namespace ohmtrail::plan
