#include "plan/front.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmtrail::plan {

namespace {

/// Before sorting: one label for each of `most` equal steps of cost, the step's least cost and most
/// tolerance.
void thin(Front& labels, std::size_t most) {
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (const Label& label : labels) low = std::min(low, label.cost), high = std::max(high, label.cost);
  if (!(high > low)) return;
  constexpr double nothing = -1;
  std::vector<Label> steps(most, {nothing, 0, -1, -1});
  const double per_cost = static_cast<double>(most - 1) / (high - low);
  for (const Label& label : labels) {
    Label& step = steps[static_cast<std::size_t>((label.cost - low) * per_cost)];
    const double cost = step.tolerance == nothing ? label.cost : std::min(step.cost, label.cost);
    if (label.tolerance > step.tolerance) step = label;
    step.cost = cost;
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
  double best = -1;
  std::erase_if(labels, [&](const Label& label) {
    if (label.tolerance <= best) return true;
    best = label.tolerance;
    return false;
  });
  if (labels.size() > most) thin(labels, most);
}

Front sum_of(const std::vector<const Front*>& fronts) {
  Front sum;
  std::vector<std::size_t> next(fronts.size(), 0);
  while (true) {
    Label label{std::numeric_limits<double>::infinity(), 0, -1, -1};
    for (std::size_t f = 0; f < fronts.size(); ++f) {
      if (next[f] == fronts[f]->size()) return sum;
      label.tolerance = std::min(label.tolerance, (*fronts[f])[next[f]].tolerance);
      label.cost += (*fronts[f])[next[f]].cost;
    }
    sum.push_back(label);
    if (std::isinf(label.tolerance)) return sum;
    for (std::size_t f = 0; f < fronts.size(); ++f)
      if ((*fronts[f])[next[f]].tolerance <= label.tolerance) ++next[f];
  }
}

int cheapest(const Front& front, double drop) {
  const auto found = std::lower_bound(front.begin(), front.end(), drop,
                                      [](const Label& label, double v) { return label.tolerance < v; });
  return found == front.end() ? -1 : static_cast<int>(found - front.begin());
}

}  // namespace ohmtrail::plan
