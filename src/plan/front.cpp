#include "plan/front.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmtrail::plan {

namespace {

void absorb(const Label& label, Label& into) {
  into.cost = std::min(into.cost, label.cost);
  into.sag = std::min(into.sag, label.sag);
  into.lag = std::max(into.lag, label.lag);
}

/// One label for each of `most` equal steps of cost.
void thin(Front& labels, std::size_t most) {
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (const Label& label : labels) low = std::min(low, label.cost), high = std::max(high, label.cost);
  if (!(high > low)) return;
  constexpr double nothing = -1;
  std::vector<Label> steps(most, Label{nothing});
  const double per_cost = static_cast<double>(most - 1) / (high - low);
  for (Label label : labels) {
    Label& step = steps[static_cast<std::size_t>((label.cost - low) * per_cost)];
    if (label.tolerance > step.tolerance) std::swap(step, label);
    if (label.tolerance != nothing) absorb(label, step);
  }
  std::erase_if(steps, [](const Label& label) { return label.tolerance == nothing; });
  labels = std::move(steps);
}

}  // namespace

void keep_unbeaten(Front& labels, std::size_t most) {
  if (labels.size() > 4 * most) thin(labels, 4 * most);
  std::sort(labels.begin(), labels.end(), [](const Label& a, const Label& b) {
    return a.cost != b.cost ? a.cost < b.cost : a.tolerance > b.tolerance;
  });
  Front kept;
  for (const Label& label : labels) {
    if (kept.empty() || label.tolerance > kept.back().tolerance)
      kept.push_back(label);
    else
      absorb(label, kept[static_cast<std::size_t>(cheapest(kept, label.tolerance))]);
  }
  labels = std::move(kept);
  if (labels.size() > most) thin(labels, most);
}

Front certain(const Front& front) {
  Front rest = front;
  for (std::size_t i = rest.size(); i-- > 1;) {
    rest[i - 1].sag = std::min(rest[i - 1].sag, rest[i].sag);
    rest[i - 1].lag = std::max(rest[i - 1].lag, rest[i].lag);
  }
  return rest;
}

Front sum_of(const std::vector<const Front*>& fronts) {
  std::vector<Front> rest;
  rest.reserve(fronts.size());
  for (const Front* front : fronts) rest.push_back(certain(*front));
  Front sum;
  std::vector<std::size_t> next(fronts.size(), 0);
  while (true) {
    Label label{std::numeric_limits<double>::infinity()};
    for (std::size_t f = 0; f < fronts.size(); ++f) {
      if (next[f] == rest[f].size()) return sum;
      label.tolerance = std::min(label.tolerance, rest[f][next[f]].tolerance);
    }
    if (std::isinf(label.tolerance)) return {label};
    int least = 0;
    for (std::size_t f = 0; f < fronts.size(); ++f)
      if (rest[f][next[f]].tolerance <= label.tolerance) ++least;
    for (std::size_t f = 0; f < fronts.size(); ++f) {
      const bool decides = rest[f][next[f]].tolerance <= label.tolerance;
      const Label& part = least == 1 && decides ? (*fronts[f])[next[f]] : rest[f][next[f]];
      label.cost += part.cost, label.sag += part.sag, label.lag += part.lag;
      if (decides) ++next[f];
    }
    sum.push_back(label);
  }
}

int cheapest(const Front& front, double drop) {
  const auto found = std::lower_bound(front.begin(), front.end(), drop,
                                      [](const Label& label, double v) { return label.tolerance < v; });
  return found == front.end() ? -1 : static_cast<int>(found - front.begin());
}

}  // namespace ohmtrail::plan
