#include "plan/current_ranges.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

using network::Role;

/// Room for what the bound on battery sag leaves out, as a share of nominal.
constexpr double kMargin = 0.01;

bool is_source(const network::Element& element) {
  return element.role == Role::battery || element.role == Role::charger;
}

/// What the sources of one island can do.
struct Sources {
  double lowest = std::numeric_limits<double>::infinity();  ///< V open-circuit, batteries alone
  double highest = 0;                                       ///< V open-circuit or set point
  double ohms = 0;                                          ///< largest internal resistance
};

Sources sources_of(const solve::CaseSolution& probe, int island) {
  Sources sources;
  for (const auto& supply : probe.supplies) {
    if (supply.island != island) continue;
    double volts = 0, ohms = 0;
    bool battery = true;
    for (const int e : supply.elements) {
      const auto& element = probe.network.elements[at(e)];
      volts += element.voltage.si();
      ohms += element.resistance.si();
      battery = battery && element.role == Role::battery;
    }
    sources.highest = std::max(sources.highest, volts);
    if (!battery) continue;
    sources.lowest = std::min(sources.lowest, volts);
    sources.ohms = std::max(sources.ohms, ohms);
  }
  return sources;
}

int island_of(const solve::CaseSolution& probe, int first_element) {
  for (const auto& supply : probe.supplies)
    if (supply.elements.front() == first_element) return supply.island;
  return -1;
}

Interval amperes_of(const network::Element& load, const Interval& volts) {
  if (load.partner >= 0) return {0, std::numeric_limits<double>::infinity()};
  if (const auto* amperes = std::get_if<units::Current>(&*load.takes)) return {amperes->si(), amperes->si()};
  if (const auto* ohms = std::get_if<units::Resistance>(&*load.takes))
    return {volts.low / ohms->si(), volts.high / ohms->si()};
  const double watts = std::get<units::Power>(*load.takes).si() / load.efficiency + load.idle.si();
  return {watts / volts.high, watts / volts.low};
}

class Ranges {
 public:
  Ranges(const network::Network& network, const solve::CaseSolution& probe)
      : probe_(probe), network_(network) {
    const std::size_t count = network_.elements.size();
    result_.load_volts.resize(count);
    result_.amperes.resize(count);
    result_.known.assign(count, false);
  }

  CurrentRanges run() {
    range_loads();
    for (const auto& element : network_.elements)
      if (element.active && is_source(element)) result_.most_volts += std::abs(element.voltage.si());
    result_.most_amperes += circulating();
    for (std::size_t e = 0; e < network_.elements.size(); ++e)
      if (network_.elements[e].role != Role::load)
        result_.amperes[e] = {-result_.most_amperes, result_.most_amperes};
    link();
    for (std::size_t p = 0; p < network_.points.size(); ++p)
      if (order_[p] < 0) walk(static_cast<int>(p));
    return std::move(result_);
  }

 private:
  void range_loads() {
    for (const auto& load : probe_.loads) {
      const auto& element = network_.elements[at(load.element)];
      if (!element.active || std::isnan(load.volts)) continue;
      running_.push_back(load.element);
      const double nominal = element.nominal ? element.nominal->si() : 0;
      const auto sources = sources_of(probe_, island_of(probe_, load.supply));
      result_.load_volts[at(load.element)] = {nominal / 2, std::max(sources.highest, nominal)};
    }
    for (int round = 0; round < 30; ++round) raise_loads();
    for (const auto& supply : probe_.supplies) {
      const auto sources = sources_of(probe_, supply.island);
      const double lowest =
          std::isinf(sources.lowest) ? sources.highest / 2 : sources.lowest - sources.ohms * total_;
      result_.terminal.push_back({std::max(lowest, 0.0), sources.highest});
    }
    for (const int e : running_) {
      result_.amperes[at(e)] = amperes_of(network_.elements[at(e)], result_.load_volts[at(e)]);
      if (network_.elements[at(e)].partner >= 0)
        result_.amperes[at(e)] = converter_input(network_.elements[at(e)]);
      result_.known[at(e)] = true;
      result_.most_amperes += result_.amperes[at(e)].high;
    }
  }

  void raise_loads() {
    total_ = 0;
    for (const int e : running_) {
      const auto& element = network_.elements[at(e)];
      total_ += element.partner >= 0 ? converter_input(element).high
                                     : amperes_of(element, result_.load_volts[at(e)]).high;
    }
    for (const auto& load : probe_.loads) {
      const auto& element = network_.elements[at(load.element)];
      if (!element.active || std::isnan(load.volts) || !element.drop_limit || !element.nominal) continue;
      const auto sources = sources_of(probe_, island_of(probe_, load.supply));
      if (std::isinf(sources.lowest)) continue;
      Interval& volts = result_.load_volts[at(load.element)];
      volts.low = std::max(volts.low, sources.lowest - sources.ohms * total_ -
                                          (element.drop_limit->of_one() + kMargin) * element.nominal->si());
      volts.low = std::min(volts.low, volts.high);
    }
  }

  /// At least its idle power, at most what its output can pass.
  [[nodiscard]] Interval converter_input(const network::Element& input) const {
    const auto& output = network_.elements[at(input.partner)];
    const Interval& volts = result_.load_volts[at(static_cast<int>(&input - network_.elements.data()))];
    const double most = output.voltage.si() * output.limit.si() / input.efficiency + input.idle.si();
    return {input.idle.si() / volts.high, most / volts.low};
  }

  /// What chargers give, and what unlike batteries can drive through each other, however thick the wire.
  [[nodiscard]] double circulating() const {
    double amperes = 0;
    double lowest = std::numeric_limits<double>::infinity(), highest = 0, least_ohms = lowest;
    for (const auto& supply : probe_.supplies) {
      double volts = 0, ohms = 0;
      for (const int e : supply.elements) {
        const auto& element = network_.elements[at(e)];
        if (element.role == Role::charger) amperes += element.limit.si();
        volts += element.role == Role::battery ? element.voltage.si() : 0;
        ohms += element.resistance.si();
      }
      if (volts == 0) continue;
      lowest = std::min(lowest, volts);
      highest = std::max(highest, volts);
      least_ohms = std::min(least_ohms, ohms);
    }
    if (highest > lowest) amperes += least_ohms > 0 ? (highest - lowest) / least_ohms : 1e4;
    return amperes;
  }

  void link() {
    links_.resize(network_.points.size());
    order_.assign(network_.points.size(), -1);
    low_.assign(network_.points.size(), -1);
    for (std::size_t e = 0; e < network_.elements.size(); ++e) {
      const auto& element = network_.elements[e];
      if (!element.active || element.role == Role::load || element.role == Role::charger) continue;
      links_[at(element.from)].push_back(static_cast<int>(e));
      links_[at(element.to)].push_back(static_cast<int>(e));
    }
  }

  /// What loads and chargers draw out of one point. What flows through a battery comes back to its other end.
  [[nodiscard]] Interval drawn(int point) const {
    Interval sum;
    const auto add = [&](const network::Element& element, const Interval& amperes) {
      if (element.from == point) sum.low += amperes.low, sum.high += amperes.high;
      if (element.to == point) sum.low -= amperes.high, sum.high -= amperes.low;
    };
    for (const int e : running_) add(network_.elements[at(e)], result_.amperes[at(e)]);
    for (const auto& element : network_.elements)
      if (element.active && element.role == Role::charger) add(element, {-element.limit.si(), 0});
    return sum;
  }

  /// One component: points in depth-first order, then bridges from the leaves up.
  void walk(int root) {
    struct Visit {
      int point, by;
      std::size_t next = 0;
    };
    std::vector<Visit> stack{{root, -1}};
    std::vector<std::pair<int, int>> visited;  ///< point, element it was reached by
    order_[at(root)] = low_[at(root)] = counter_++;
    visited.emplace_back(root, -1);
    while (!stack.empty()) {
      Visit& top = stack.back();
      if (top.next == links_[at(top.point)].size()) {
        const Visit done = top;
        stack.pop_back();
        if (!stack.empty())
          low_[at(stack.back().point)] = std::min(low_[at(stack.back().point)], low_[at(done.point)]);
        continue;
      }
      const int e = links_[at(top.point)][top.next++];
      if (e == top.by) continue;
      const auto& element = network_.elements[at(e)];
      const int other = element.from == top.point ? element.to : element.from;
      if (order_[at(other)] >= 0) {
        low_[at(top.point)] = std::min(low_[at(top.point)], order_[at(other)]);
        continue;
      }
      order_[at(other)] = low_[at(other)] = counter_++;
      visited.emplace_back(other, e);
      stack.push_back({other, e});
    }
    sum_up(visited);
  }

  void sum_up(const std::vector<std::pair<int, int>>& visited) {
    std::vector<Interval> below(network_.points.size());
    for (const auto& [point, by] : visited) below[at(point)] = drawn(point);
    for (auto it = visited.rbegin(); it != visited.rend(); ++it) {
      const auto& [point, by] = *it;
      if (by < 0) continue;
      const auto& element = network_.elements[at(by)];
      const int above = element.from == point ? element.to : element.from;
      const Interval into = below[at(point)];
      if (low_[at(point)] > order_[at(above)]) {
        result_.amperes[at(by)] = element.to == point ? into : Interval{-into.high, -into.low};
        result_.known[at(by)] = true;
      }
      below[at(above)].low += into.low;
      below[at(above)].high += into.high;
    }
  }

  const solve::CaseSolution& probe_;
  const network::Network& network_;
  std::vector<int> running_;
  std::vector<std::vector<int>> links_;
  std::vector<int> order_, low_;
  int counter_ = 0;
  double total_ = 0;  ///< A, all loads at the most they can take
  CurrentRanges result_;
};

}  // namespace

CurrentRanges current_ranges(const network::Network& network, const solve::CaseSolution& probe) {
  return Ranges(network, probe).run();
}

}  // namespace ohmtrail::plan
