#include "plan/bank_strings.hpp"

#include <algorithm>
#include <map>

#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

using network::Role;
using String = BankWiring::String;

/// Batteries by the tree that holds their plus or their minus.
struct Posts {
  std::map<int, std::vector<int>> plus, minus;
  int count = 0;

  Posts(const network::Network& network, const WiringForest& forest) {
    for (std::size_t e = 0; e < network.elements.size(); ++e) {
      const auto& element = network.elements[e];
      if (element.role != Role::battery || !element.active) continue;
      plus[forest.tree(element.from)].push_back(static_cast<int>(e));
      minus[forest.tree(element.to)].push_back(static_cast<int>(e));
      ++count;
    }
  }
};

/// From the top down; empty where a link joins more than two posts.
std::optional<String> string_below(const network::Network& network, const WiringForest& forest,
                                   const Posts& posts, int first, int bottom) {
  String string{{first}, network.elements[at(first)].from, network.elements[at(first)].to};
  while (forest.tree(string.bottom) != bottom) {
    const int link = forest.tree(string.bottom);
    const auto next = posts.plus.find(link);
    if (next == posts.plus.end() || next->second.size() != 1 || posts.minus.at(link).size() != 1)
      return std::nullopt;
    string.batteries.push_back(next->second.front());
    string.bottom = network.elements[at(string.batteries.back())].to;
    if (string.batteries.size() > network.elements.size()) return std::nullopt;
  }
  return string;
}

/// The trees in which every string begins and ends: those of the loads, else the only ones that can be.
struct Ends {
  int top = -1, bottom = -1;
};

std::optional<Ends> ends_of(const network::Network& network, const WiringForest& forest, const Posts& posts,
                            const std::vector<int>& loads) {
  Ends ends;
  for (const auto& [tree, batteries] : posts.plus)
    if (!posts.minus.contains(tree)) {
      if (ends.top >= 0) return std::nullopt;
      ends.top = tree;
    }
  for (const auto& [tree, batteries] : posts.minus)
    if (!posts.plus.contains(tree)) {
      if (ends.bottom >= 0) return std::nullopt;
      ends.bottom = tree;
    }
  if (ends.top < 0 || ends.bottom < 0) return std::nullopt;
  const bool all_across = std::all_of(loads.begin(), loads.end(), [&](int load) {
    return forest.tree(network.elements[at(load)].from) == ends.top &&
           forest.tree(network.elements[at(load)].to) == ends.bottom;
  });
  return all_across ? std::optional(ends) : std::nullopt;
}

/// What hangs beyond an element, seen from the first string's post.
struct Beyond {
  std::vector<int> strings, loads;
};

/// Marks the elements of one end's tree; false where one carries loads less a string's part.
bool mark_tree(const WiringForest& forest, const std::vector<int>& posts, const std::vector<int>& load_points,
               BankWiring& bank) {
  const auto steps = forest.outwards(posts.front());
  std::map<int, Beyond> beyond;  // by point
  for (std::size_t s = 0; s < posts.size(); ++s) beyond[posts[s]].strings.push_back(static_cast<int>(s));
  for (std::size_t l = 0; l < load_points.size(); ++l)
    beyond[load_points[l]].loads.push_back(static_cast<int>(l));
  for (std::size_t k = steps.size(); k-- > 1;) {
    Beyond here = beyond[steps[k].point];
    std::sort(here.loads.begin(), here.loads.end());
    Beyond& above = beyond[steps[k].before];
    above.strings.insert(above.strings.end(), here.strings.begin(), here.strings.end());
    above.loads.insert(above.loads.end(), here.loads.begin(), here.loads.end());
    const std::size_t e = at(steps[k].by);
    if (here.strings.empty())
      bank.fed[e] = std::move(here.loads);
    else if (here.strings.size() == 1 && here.loads.empty())
      bank.string_of[e] = here.strings.front();
    else if (here.strings.size() + 1 == posts.size() && here.loads.size() == load_points.size())
      bank.string_of[e] = 0;
    else
      return false;
  }
  return true;
}

/// Links between the batteries of a string carry what it carries.
void mark_links(const network::Network& network, const WiringForest& forest, std::size_t index,
                BankWiring& bank) {
  const auto& batteries = bank.strings[index].batteries;
  for (std::size_t k = 0; k + 1 < batteries.size(); ++k)
    for (const int e :
         forest.path(network.elements[at(batteries[k])].to, network.elements[at(batteries[k + 1])].from))
      bank.string_of[at(e)] = static_cast<int>(index);
}

}  // namespace

std::optional<BankWiring> bank_wiring(const network::Network& network, const WiringForest& forest,
                                      const std::vector<int>& loads) {
  const Posts posts(network, forest);
  const auto ends = ends_of(network, forest, posts, loads);
  if (!ends) return std::nullopt;
  BankWiring bank;
  bank.fed.resize(network.elements.size());
  bank.string_of.assign(network.elements.size(), -1);
  std::size_t used = 0;
  for (const int first : posts.plus.at(ends->top)) {
    auto string = string_below(network, forest, posts, first, ends->bottom);
    if (!string) return std::nullopt;
    used += string->batteries.size();
    bank.strings.push_back(std::move(*string));
  }
  if (used != static_cast<std::size_t>(posts.count)) return std::nullopt;
  std::vector<int> tops, bottoms, froms, tos;
  for (const String& string : bank.strings) tops.push_back(string.top), bottoms.push_back(string.bottom);
  for (const int load : loads)
    froms.push_back(network.elements[at(load)].from), tos.push_back(network.elements[at(load)].to);
  if (!mark_tree(forest, tops, froms, bank) || !mark_tree(forest, bottoms, tos, bank)) return std::nullopt;
  for (std::size_t s = 0; s < bank.strings.size(); ++s) mark_links(network, forest, s, bank);
  return bank;
}

}  // namespace ohmtrail::plan
