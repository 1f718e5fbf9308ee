#include "render/shade.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

/// Points joined by anything at all: what one supply feeds.
std::vector<int> islands(const network::Network& network) {
  std::vector<int> parent(network.points.size());
  std::iota(parent.begin(), parent.end(), 0);
  const auto find = [&](int p) {
    while (parent[at(p)] != p) p = parent[at(p)] = parent[at(parent[at(p)])];
    return p;
  };
  for (const network::Element& e : network.elements) parent[at(find(e.from))] = find(e.to);
  for (int p = 0; p < static_cast<int>(parent.size()); ++p) parent[at(p)] = find(p);
  return parent;
}

}  // namespace

Shade::Shade(const netlist::System& system, const solve::CaseSolution& solved) : solved_(solved) {
  const auto& elements = solved.network.elements;
  const std::vector<int> island = islands(solved.network);
  constexpr double none = std::numeric_limits<double>::infinity();
  std::vector<double> strictest(solved.network.points.size(), none);
  for (const network::Element& e : elements) {
    if (e.role != network::Role::load || !e.drop_limit) continue;
    const double nominal = e.nominal.value_or(system.info.nominal).si();
    double& least = strictest[at(island[at(e.from)])];
    least = std::min(least, e.drop_limit->of_one() * nominal);
  }
  const double otherwise = system.info.limits.other_drop.of_one() * system.info.nominal.si();
  least_ = none;
  for (const network::Element& e : elements) {
    const double allowed = strictest[at(island[at(e.from)])];
    allowed_.push_back(allowed < none && allowed > 0 ? allowed : otherwise);
    least_ = std::min(least_, allowed_.back());
    most_ = std::max(most_, allowed_.back());
  }
}

double Shade::allowed(int element) const {
  return allowed_[at(element)];
}

bool Shade::idle(int element) const {
  const double current = solved_.solution.current[at(element)];
  return !solved_.network.elements[at(element)].active || !std::isfinite(current) ||
         std::fabs(current) < 1e-9;
}

Colour Shade::colour(int element) const {
  if (idle(element)) return palette::idle;
  return loss_colour(std::fabs(solved_.solution.drop[at(element)]) / allowed_[at(element)]);
}

double line_width(double area) {
  return 1.0 + 0.42 * std::sqrt(std::max(area, 0.0) * 1e6);
}

}  // namespace ohmtrail::render
