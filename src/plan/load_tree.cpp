#include "plan/load_tree.hpp"

#include <algorithm>
#include <map>
#include <numeric>

#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

/// Arms by the loads that they feed, most loads first.
std::vector<std::pair<std::vector<int>, std::vector<int>>> grouped(const RadialCase& in_case) {
  std::map<std::vector<int>, std::vector<int>> arms;
  for (std::size_t a = 0; a < in_case.arms.size(); ++a)
    if (!in_case.arms[a].loads.empty()) arms[in_case.arms[a].loads].push_back(static_cast<int>(a));
  std::vector<std::pair<std::vector<int>, std::vector<int>>> groups(arms.begin(), arms.end());
  std::stable_sort(groups.begin(), groups.end(),
                   [](const auto& a, const auto& b) { return a.first.size() > b.first.size(); });
  return groups;
}

}  // namespace

std::optional<LoadTree> load_tree(const RadialCase& in_case) {
  LoadTree tree(1);
  tree[0].fed.resize(in_case.loads.size());
  std::iota(tree[0].fed.begin(), tree[0].fed.end(), 0);
  std::vector<int> node_of(in_case.loads.size(), 0);  // the lowest that feeds it so far
  for (auto& [loads, arms] : grouped(in_case)) {
    if (loads == tree[0].fed) {
      tree[0].arms = std::move(arms);
      continue;
    }
    const int parent = node_of[at(loads.front())];
    const int node = static_cast<int>(tree.size());
    for (const int l : loads) {
      if (node_of[at(l)] != parent) return std::nullopt;
      node_of[at(l)] = node;
    }
    tree[at(parent)].children.push_back(node);
    tree.push_back({parent, {}, std::move(arms), {}, loads});
  }
  for (std::size_t l = 0; l < node_of.size(); ++l) tree[at(node_of[l])].loads.push_back(static_cast<int>(l));
  return tree;
}

}  // namespace ohmtrail::plan
