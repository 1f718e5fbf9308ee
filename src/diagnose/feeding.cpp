#include "ohmtrail/diagnose/feeding.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <queue>

#include "index.hpp"

// Current falls from point to point like water, so the points can be passed in an order in which all that
// arrives at a point is known before it is left. A battery that gives is a spring at its plus; one that takes
// is a taker through which the rest of its string is reached.

namespace ohmtrail::diagnose {
namespace {

using network::Role;

/// Below this share of the largest current a current is rounding.
constexpr double no_current = 1e-12;

struct Flow {
  int from = 0, to = 0;
  double amperes = 0;
};

/// By position among the supplies; few of many reach one point.
using Mixture = std::map<std::size_t, double>;

/// The currents of one case as flows from point to point and springs.
class Streams {
 public:
  explicit Streams(const solve::CaseSolution& solved)
      : solved_(solved), leaving_(solved.network.points.size()), waiting_(solved.network.points.size()) {
    mixture_.resize(solved.network.points.size());
    for (const double current : solved.solution.current)
      if (std::isfinite(current)) largest_ = std::max(largest_, std::abs(current));
    for (int k = 0; k < static_cast<int>(solved.network.elements.size()); ++k) add(k);
    trace();
  }

  /// Per supply: what it gives of the current that leaves this point; empty where nothing is known to arrive.
  [[nodiscard]] Mixture shares(int point) const {
    auto shares = at(mixture_, point);
    double sum = 0;
    for (const auto& [supply, amperes] : shares) sum += amperes;
    if (!(sum > 0)) return {};
    for (auto& [supply, share] : shares) share /= sum;
    return shares;
  }

  [[nodiscard]] bool flows(double amperes) const { return amperes > no_current * largest_; }

 private:
  [[nodiscard]] std::optional<std::size_t> supply_of(int element) const {
    for (std::size_t s = 0; s < solved_.supplies.size(); ++s) {
      const auto& elements = solved_.supplies[s].elements;
      if (std::find(elements.begin(), elements.end(), element) != elements.end()) return s;
    }
    return std::nullopt;
  }

  void add(int k) {
    const auto& element = at(solved_.network.elements, k);
    const double current = at(solved_.solution.current, k);
    if (!element.active || !std::isfinite(current) || !flows(std::abs(current))) return;
    const bool source = element.role == Role::battery || element.role == Role::charger;
    if (source && current < 0) {
      if (const auto supply = supply_of(k)) at(mixture_, element.from)[*supply] -= current;
      return;
    }
    const Flow flow =
        current > 0 ? Flow{element.from, element.to, current} : Flow{element.to, element.from, -current};
    at(leaving_, flow.from).push_back(flow);
    ++at(waiting_, flow.to);
  }

  void trace() {
    std::queue<int> ready;
    for (int point = 0; point < static_cast<int>(waiting_.size()); ++point)
      if (at(waiting_, point) == 0) ready.push(point);
    for (; !ready.empty(); ready.pop()) {
      const auto mixed = shares(ready.front());
      for (const Flow& flow : at(leaving_, ready.front())) {
        for (const auto& [supply, share] : mixed) at(mixture_, flow.to)[supply] += share * flow.amperes;
        if (--at(waiting_, flow.to) == 0) ready.push(flow.to);
      }
    }
  }

  const solve::CaseSolution& solved_;
  double largest_ = 0;
  std::vector<Mixture> mixture_;            ///< per point: A that arrives
  std::vector<std::vector<Flow>> leaving_;  ///< per point
  std::vector<int> waiting_;                ///< per point: flows that have not arrived yet
};

const std::string& name_of(const solve::CaseSolution& solved, const solve::Supply& supply) {
  return at(solved.network.elements, supply.elements.front()).id;
}

Fed fed(const solve::CaseSolution& solved, const Streams& streams, int point, double amperes) {
  Fed row;
  row.current = amperes;
  for (const auto& [supply, share] : streams.shares(point))
    row.from.push_back({name_of(solved, solved.supplies[supply]), share * amperes, share});
  std::stable_sort(row.from.begin(), row.from.end(),
                   [](const FedFrom& a, const FedFrom& b) { return a.current > b.current; });
  return row;
}

/// The battery at the plus end of a string.
int top_of(const solve::CaseSolution& solved, const solve::Supply& supply) {
  for (const int k : supply.elements)
    if (at(solved.network.elements, k).from == supply.plus) return k;
  return supply.elements.front();
}

}  // namespace

std::vector<Fed> feeding(const solve::CaseSolution& solved) {
  const Streams streams(solved);
  std::vector<Fed> rows;
  for (const auto& load : solved.loads) {
    if (!load.running || !streams.flows(load.current)) continue;
    const auto& element = at(solved.network.elements, load.element);
    rows.push_back(fed(solved, streams, element.from, load.current));
    rows.back().taker = element.id;
  }
  for (const auto& supply : solved.supplies) {
    const int top = top_of(solved, supply);
    const double amperes = at(solved.solution.current, top);
    if (at(solved.network.elements, top).role != Role::battery || !streams.flows(amperes)) continue;
    rows.push_back(fed(solved, streams, supply.plus, amperes));
    rows.back().taker = name_of(solved, supply);
    rows.back().role = Role::battery;
  }
  return rows;
}

std::vector<Circulation> circulating(const solve::CaseSolution& solved, const std::vector<Fed>& fed) {
  std::vector<Circulation> found;
  for (const auto& row : fed) {
    if (row.role != Role::battery) continue;
    for (const auto& one : row.from) {
      const auto source = solved.network.element(one.source);
      if (source && at(solved.network.elements, *source).role == Role::battery)
        found.push_back({one.source, row.taker, one.current});
    }
  }
  return found;
}

}  // namespace ohmtrail::diagnose
