#include "plan/wiring_forest.hpp"

#include <numeric>

#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

using network::Role;

bool is_wiring(const network::Element& element) {
  return element.role != Role::battery && element.role != Role::charger && element.role != Role::load &&
         element.role != Role::isolator;
}

}  // namespace

WiringForest::WiringForest(const network::Network& network)
    : network_(network), edges_(network.points.size()) {
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

int WiringForest::other(int element, int point) const {
  const auto& one = network_.elements[at(element)];
  return one.from == point ? one.to : one.from;
}

std::vector<WiringForest::Step> WiringForest::outwards(int root) const {
  std::vector<Step> steps{{root, -1, -1}};
  for (std::size_t k = 0; k < steps.size(); ++k) {
    const Step here = steps[k];
    for (const int e : edges_[at(here.point)])
      if (e != here.by) steps.push_back({other(e, here.point), e, here.point});
  }
  return steps;
}

std::vector<int> WiringForest::path(int from, int to) const {
  std::vector<Step> to_point(network_.points.size(), {-1, -1, -1});
  for (const Step& step : outwards(from)) to_point[at(step.point)] = step;
  std::vector<int> elements;
  for (int p = to; to_point[at(p)].by >= 0; p = to_point[at(p)].before)
    elements.push_back(to_point[at(p)].by);
  return elements;
}

}  // namespace ohmtrail::plan
