#include "plan/radial.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>

namespace ohmtrail::plan {

namespace {

using network::Role;

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

/// The forest of active passive elements, hung from one root per tree.
class Forest {
 public:
  explicit Forest(const network::Network& network) : network_(network), edges_(network.points.size()) {
    std::vector<int> label(network.points.size());
    std::iota(label.begin(), label.end(), 0);
    const auto root = [&](int p) {
      while (label[at(p)] != p) p = label[at(p)] = label[at(label[at(p)])];
      return p;
    };
    for (std::size_t e = 0; e < network.elements.size(); ++e) {
      const auto& element = network.elements[e];
      if (!element.active || !is_wiring(element)) continue;
      if (root(element.from) == root(element.to)) ring_ = true;
      label[at(root(element.from))] = root(element.to);
      edges_[at(element.from)].push_back(static_cast<int>(e));
      edges_[at(element.to)].push_back(static_cast<int>(e));
    }
    for (std::size_t p = 0; p < label.size(); ++p) tree_.push_back(root(static_cast<int>(p)));
  }

  static bool is_wiring(const network::Element& element) {
    return element.role != Role::battery && element.role != Role::charger && element.role != Role::load &&
           element.role != Role::isolator;
  }

  [[nodiscard]] bool has_ring() const { return ring_; }
  [[nodiscard]] int tree(int point) const { return tree_[at(point)]; }

  /// Elements between two points of one tree.
  [[nodiscard]] std::vector<int> path(int from, int to) const {
    std::vector<int> came_by(network_.points.size(), -2);
    std::vector<int> queue{from};
    came_by[at(from)] = -1;
    for (std::size_t k = 0; k < queue.size() && came_by[at(to)] == -2; ++k)
      for (const int e : edges_[at(queue[k])]) {
        const int next = other(e, queue[k]);
        if (came_by[at(next)] == -2) came_by[at(next)] = e, queue.push_back(next);
      }
    std::vector<int> elements;
    for (int p = to; came_by[at(p)] >= 0; p = other(elements.back(), p)) elements.push_back(came_by[at(p)]);
    return elements;
  }

 private:
  [[nodiscard]] int other(int e, int point) const {
    const auto& element = network_.elements[at(e)];
    return element.from == point ? element.to : element.from;
  }

  const network::Network& network_;
  std::vector<std::vector<int>> edges_;
  std::vector<int> tree_;
  bool ring_ = false;
};

/// The one string of batteries, from its top to its bottom.
struct String {
  std::vector<int> batteries;
  int top = -1, bottom = -1;  ///< points
};

std::optional<String> find_string(const network::Network& network, const Forest& forest) {
  std::map<int, int> by_plus_tree, by_minus_tree;
  int count = 0;
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    const auto& element = network.elements[e];
    if (element.role != Role::battery || !element.active) continue;
    ++count;
    const bool fresh = by_plus_tree.emplace(forest.tree(element.from), static_cast<int>(e)).second &&
                       by_minus_tree.emplace(forest.tree(element.to), static_cast<int>(e)).second;
    if (!fresh) return std::nullopt;
  }
  String string;
  for (const auto& [tree, battery] : by_plus_tree)
    if (!by_minus_tree.contains(tree)) string.batteries.push_back(battery);
  if (string.batteries.size() != 1) return std::nullopt;
  for (auto below = by_plus_tree.find(forest.tree(network.elements[at(string.batteries.back())].to));
       below != by_plus_tree.end();
       below = by_plus_tree.find(forest.tree(network.elements[at(string.batteries.back())].to)))
    string.batteries.push_back(below->second);
  if (static_cast<int>(string.batteries.size()) != count) return std::nullopt;
  string.top = network.elements[at(string.batteries.front())].from;
  string.bottom = network.elements[at(string.batteries.back())].to;
  return string;
}

RadialLoad load_of(const network::Network& network, int index) {
  const auto& element = network.elements[at(index)];
  RadialLoad load;
  load.element = index;
  load.limit = element.drop_limit && element.nominal ? element.drop_limit->of_one() * element.nominal->si()
                                                     : std::numeric_limits<double>::infinity();
  if (const auto* watts = std::get_if<units::Power>(&*element.takes)) {
    load.draw = Draw::power;
    load.size = watts->si() / element.efficiency + element.idle.si();
  } else if (const auto* amperes = std::get_if<units::Current>(&*element.takes)) {
    load.size = amperes->si();
  } else {
    load.draw = Draw::resistance;
    load.size = std::get<units::Resistance>(*element.takes).si();
  }
  return load;
}

bool is_plain(const network::Element& element) {
  if (!element.active) return true;
  if (element.role == Role::charger || element.role == Role::isolator || element.partner >= 0) return false;
  const bool plain_draw = element.efficiency == 1 && element.idle.si() == 0;
  return element.role != Role::load || plain_draw || std::holds_alternative<units::Power>(*element.takes);
}

void add_element(const DesignSpace& space, const CaseSpace& in_case, int element, Arm& arm) {
  if (arm.run < 0) return arm.choices.front().add(value_of(in_case.network, element));
  for (std::size_t c = 0; c < arm.choices.size(); ++c)
    for (const ElementValue& value : in_case.values[at(arm.run)][c]) {
      if (value.element != element) continue;
      arm.choices[c].add(value);
      const double ampacity = space.runs[at(arm.run)].candidates[c].ampacity;
      // Ends have no duty of their own: the wire's stands.
      if (value.rated > 0)
        arm.most_amperes[c] = std::min(arm.most_amperes[c], ampacity / std::sqrt(value.duty));
    }
}

Arm empty_arm(const DesignSpace& space, int run, std::vector<int> loads) {
  const std::size_t count = run < 0 ? 1 : space.runs[at(run)].candidates.size();
  return {run, std::vector<Curve>(count), std::vector<double>(count, std::numeric_limits<double>::infinity()),
          std::move(loads)};
}

/// Gathers elements into arms: those of one conductor of one run, or fixed ones, that feed the same loads.
void gather_arms(const DesignSpace& space, const CaseSpace& in_case, const std::vector<std::vector<int>>& fed,
                 RadialCase& radial, std::vector<int>& arm_of) {
  const auto& network = in_case.network;
  const std::vector<int> place = places_in_scope(space);
  std::map<std::pair<int, std::vector<int>>, int> arms;
  arm_of.assign(network.elements.size(), -1);
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    if (fed[e].empty()) continue;
    const auto& origin = network.elements[e].origin;
    const int run = origin.section == network::Section::runs ? place[origin.index] : -1;
    const auto [entry, fresh] = arms.try_emplace({run, fed[e]}, static_cast<int>(radial.arms.size()));
    if (fresh) radial.arms.push_back(empty_arm(space, run, fed[e]));
    arm_of[e] = entry->second;
    add_element(space, in_case, static_cast<int>(e), radial.arms[at(entry->second)]);
  }
}

void add_devices(const DesignSpace& space, const network::Network& network, const Guards& guards,
                 const std::vector<std::vector<int>>& fed, RadialCase& radial) {
  const std::vector<int> place = places_in_scope(space);
  for (const Guard& guard : guards.devices) {
    if (fed[at(guard.element)].empty()) continue;
    Device device{
        fed[at(guard.element)], {}, device_ladder(space.system, network.elements[at(guard.element)])};
    for (const int e : guard.elements) {
      const auto& origin = network.elements[at(e)].origin;
      if (origin.section != network::Section::runs || place[origin.index] < 0) continue;
      if (device.runs.empty() || device.runs.back() != place[origin.index])
        device.runs.push_back(place[origin.index]);
    }
    if (!device.runs.empty()) radial.devices.push_back(std::move(device));
  }
}

}  // namespace

std::optional<RadialCase> radial_case(const DesignSpace& space, const CaseSpace& in_case,
                                      const Guards& guards) {
  const auto& network = in_case.network;
  if (!std::all_of(network.elements.begin(), network.elements.end(), is_plain)) return std::nullopt;
  const Forest forest(network);
  if (forest.has_ring()) return std::nullopt;
  const auto string = find_string(network, forest);
  if (!string) return std::nullopt;

  RadialCase radial;
  std::vector<int> links;
  for (std::size_t k = 0; k < string->batteries.size(); ++k) {
    const auto& battery = network.elements[at(string->batteries[k])];
    radial.emf += battery.voltage.si();
    radial.battery += battery.resistance.si();
    if (k + 1 == string->batteries.size()) break;
    const auto link = forest.path(battery.to, network.elements[at(string->batteries[k + 1])].from);
    links.insert(links.end(), link.begin(), link.end());
  }

  std::vector<std::vector<int>> fed(network.elements.size()), paths;
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    const auto& element = network.elements[e];
    if (element.role != Role::load || !element.active) continue;
    if (forest.tree(element.from) != forest.tree(string->top) ||
        forest.tree(element.to) != forest.tree(string->bottom))
      return std::nullopt;
    auto path = forest.path(string->top, element.from);
    const auto back = forest.path(element.to, string->bottom);
    path.insert(path.end(), back.begin(), back.end());
    path.insert(path.end(), links.begin(), links.end());
    for (const int p : path) fed[at(p)].push_back(static_cast<int>(radial.loads.size()));
    radial.loads.push_back(load_of(network, static_cast<int>(e)));
    paths.push_back(std::move(path));
  }

  std::vector<int> arm_of;
  gather_arms(space, in_case, fed, radial, arm_of);
  for (std::size_t l = 0; l < paths.size(); ++l) {
    auto& arms = radial.loads[l].path;
    for (const int e : paths[l]) arms.push_back(arm_of[at(e)]);
    std::sort(arms.begin(), arms.end());
    arms.erase(std::unique(arms.begin(), arms.end()), arms.end());
  }
  add_devices(space, network, guards, fed, radial);
  return radial;
}

}  // namespace ohmtrail::plan
