#include "solve/merge_points.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "solve/disjoint_sets.hpp"
#include "solve/fixed_loop.hpp"
#include "solve/partition.hpp"
#include "units/index.hpp"

namespace ohmtrail::solve {

namespace {

/// Voltages whose difference is rounding only.
bool same_volts(double a, double b) {
  return std::abs(a - b) <= 1e-12 * std::max({std::abs(a), std::abs(b), 1e-3});
}

class Merger {
 public:
  Merger(const Circuit& circuit, const Islands& islands, const Partition& fed, Modes& modes)
      : circuit_(circuit), islands_(islands), fed_(fed), modes_(modes), sets_(circuit.points) {
    merged_.fixes.assign(circuit.branches.size(), 0);
    merged_.ties.assign(circuit.branches.size(), 0);
  }

  /// A mode had to change that merged points already depended on: what `merge` gave is void.
  [[nodiscard]] bool again() const { return again_; }

  tl::expected<Merged, Failure> merge() {
    survey();
    for (const int b : in_order_of_strength()) {
      if (auto failure = join(b)) return tl::unexpected(*failure);
      if (again_) return std::move(merged_);
    }
    if (auto failure = shorted_source()) return tl::unexpected(*failure);
    tie_what_hangs();
    number_clusters();
    return std::move(merged_);
  }

 private:
  /// One look at every branch: most are of no interest here.
  void survey() {
    for (std::size_t b = 0; b < circuit_.branches.size(); ++b) {
      const Branch& branch = circuit_.branches[b];
      const bool fixes = fixes_voltage(branch, modes_[b]);
      if (fixes) fixers_.push_back(static_cast<int>(b));
      if (branch.law == Law::source && branch.resistance > 0) sources_.push_back(static_cast<int>(b));
      if (branch.law != Law::open && (fixes || !conducts(b))) may_tie_.push_back(static_cast<int>(b));
      as_fed_ = as_fed_ && (modes_[b] == Mode::active || branch.law == Law::open || is_takes(branch.law));
    }
  }

  /// Wires first, then sources; of regulators the highest set point first, of diodes the lowest drop first:
  /// the one that comes first is the one that wins.
  std::vector<int> in_order_of_strength() const {
    std::vector<int> order = fixers_;
    const auto rank = [&](int b) {
      const Branch& branch = circuit_.branches[at(b)];
      switch (branch.law) {
        case Law::resistor:
          return std::pair{0, 0.0};
        case Law::source:
          return std::pair{1, 0.0};
        case Law::regulator:
          return std::pair{2, -branch.size};
        default:
          return std::pair{3, branch.size};
      }
    };
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return rank(a) < rank(b); });
    return order;
  }

  std::optional<Failure> join(int b) {
    const Branch& branch = circuit_.branches[at(b)];
    const auto from = sets_.find(branch.from);
    const auto to = sets_.find(branch.to);
    if (from.root != to.root) {
      sets_.join(branch.from, branch.to, fixed_volts(branch));
      merged_.fixes[at(b)] = 1;
      return std::nullopt;
    }
    const double volts = difference(from.above, to.above);
    if (same_volts(volts, fixed_volts(branch))) {
      merged_.fixes[at(b)] = 1;
      merged_.looped.push_back(b);
      return std::nullopt;
    }
    return resolve_conflict(b, volts);
  }

  /// The points of branch b are held at `volts` already, which is not what it wants.
  std::optional<Failure> resolve_conflict(int b, double volts) {
    const Branch& branch = circuit_.branches[at(b)];
    const bool too_high = volts > fixed_volts(branch);
    if (branch.law == Law::regulator) {
      modes_[at(b)] = too_high ? Mode::idle : Mode::limiting;
      return std::nullopt;
    }
    if (branch.law == Law::diode && !too_high) {
      modes_[at(b)] = Mode::idle;
      return std::nullopt;
    }
    std::vector<int> loop = fixed_loop(circuit_, merged_.fixes, b);
    if (branch.law == Law::diode && let_one_yield(loop)) {
      again_ = true;
      return std::nullopt;
    }
    const bool alone = std::count_if(loop.begin(), loop.end(), [&](int k) {
                         return circuit_.branches[at(k)].law != Law::resistor;
                       }) == 1;
    Failure failure{alone ? Failure::Kind::shorted_source : Failure::Kind::opposed_sources, std::move(loop),
                    0};
    if (alone) failure.amperes = std::numeric_limits<double>::infinity();
    return failure;
  }

  /// A conducting diode would drive current without limit round a loop of fixed voltages. One that this
  /// current runs against goes off; failing that, a regulator that would have to deliver it goes to its
  /// limit.
  bool let_one_yield(const std::vector<int>& loop) {
    int limiting = -1;
    int point = circuit_.branches[at(loop.front())].from;
    for (std::size_t k = 1; k < loop.size(); ++k) {
      const Branch& branch = circuit_.branches[at(loop[k])];
      const bool backward = branch.from == point;  // the current comes the other way round the loop
      point = backward ? branch.to : branch.from;
      const bool runs_against =
          branch.law == Law::diode ? backward : branch.law == Law::regulator && !backward;
      if (runs_against) {
        modes_[at(loop[k])] = Mode::idle;
        return true;
      }
      if (branch.law == Law::regulator && limiting < 0) limiting = loop[k];
    }
    if (limiting >= 0) modes_[at(limiting)] = Mode::limiting;
    return limiting >= 0;
  }

  /// A source with resistance whose posts are one point.
  std::optional<Failure> shorted_source() const {
    for (const int b : sources_) {
      const Branch& branch = circuit_.branches[at(b)];
      if (branch.size == 0) continue;
      const auto from = sets_.find(branch.from);
      const auto to = sets_.find(branch.to);
      if (from.root != to.root || difference(from.above, to.above) != 0) continue;
      return Failure{Failure::Kind::shorted_source, fixed_loop(circuit_, merged_.fixes, b),
                     std::abs(branch.size) / branch.resistance};
    }
    return std::nullopt;
  }

  bool conducts(std::size_t b) const {
    const Law law = circuit_.branches[b].law;
    return modes_[b] == Mode::active && (law == Law::resistor || law == Law::source || law == Law::diode);
  }

  /// Joins parts that no conducting branch joins to their island's reference, through the first branch that
  /// does.
  void tie_what_hangs() {
    merged_.conducting = as_fed_ ? fed_ : conducting_parts();
    const std::vector<int> candidates = in_order_of_tying();
    const auto hangs = [&](int b) { return one_end_hangs(merged_.conducting, circuit_.branches[at(b)]); };
    if (std::none_of(candidates.begin(), candidates.end(), hangs)) return;
    Partition parts = merged_.conducting;
    while (tie_in_order(parts, candidates)) {
    }
  }

  Partition conducting_parts() const {
    Partition parts(circuit_.points);
    for (std::size_t b = 0; b < circuit_.branches.size(); ++b) {
      if (merged_.fixes[b] || conducts(b)) parts.join(circuit_.branches[b].from, circuit_.branches[b].to);
    }
    return parts;
  }

  /// Regulators, the highest set point first (it is the one that holds what hangs there, if any does), then
  /// diodes, then loads.
  std::vector<int> in_order_of_tying() const {
    std::vector<int> order;
    for (const int b : may_tie_) {
      if (!merged_.fixes[at(b)] && !conducts(at(b))) order.push_back(b);
    }
    const auto rank = [&](int b) {
      const Branch& branch = circuit_.branches[at(b)];
      if (branch.law == Law::regulator) return std::pair{0, -branch.size};
      return std::pair{is_takes(branch.law) ? 2 : 1, 0.0};
    };
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return rank(a) < rank(b); });
    return order;
  }

  /// One pass over the candidates; false if nothing hung.
  bool tie_in_order(Partition& parts, const std::vector<int>& candidates) {
    bool any = false;
    for (const int b : candidates) {
      const Branch& branch = circuit_.branches[at(b)];
      if (!one_end_hangs(parts, branch)) continue;
      parts.join(branch.from, branch.to);
      sets_.join(branch.from, branch.to, 0);
      merged_.fixes[at(b)] = merged_.ties[at(b)] = 1;
      any = true;
    }
    return any;
  }

  bool one_end_hangs(Partition& parts, const Branch& branch) const {
    return anchored(parts, branch.from) != anchored(parts, branch.to);
  }

  bool anchored(Partition& parts, int point) const {
    const int reference = islands_.reference[at(islands_.of_point[at(point)])];
    return reference >= 0 && parts.find(point) == parts.find(reference);
  }

  void number_clusters() {
    std::vector<int> of_root(at(circuit_.points), -1);
    merged_.cluster.assign(at(circuit_.points), -1);
    if (!sets_.all_apart()) merged_.offset.resize(at(circuit_.points));
    for (int p = 0; p < circuit_.points; ++p) {
      const int island = islands_.of_point[at(p)];
      if (islands_.reference[at(island)] < 0) continue;
      const auto place = sets_.find(p);
      int& number = of_root[at(place.root)];
      if (number < 0) {
        number = static_cast<int>(merged_.base_point.size());
        merged_.base_point.push_back(place.root);
        merged_.island.push_back(island);
        merged_.grounded.push_back(0);
      }
      merged_.cluster[at(p)] = number;
      if (!merged_.offset.empty()) merged_.offset[at(p)] = place.above;
    }
    for (const int reference : islands_.reference) {
      if (reference >= 0) ground(reference);
    }
  }

  /// The cluster of a reference point is measured from that point, so that its base is 0 V.
  void ground(int reference) {
    const int cluster = merged_.cluster[at(reference)];
    merged_.grounded[at(cluster)] = 1;
    merged_.base_point[at(cluster)] = reference;
    if (merged_.offset.empty()) return;
    const Precise down = negate(merged_.offset[at(reference)]);
    for (std::size_t p = 0; p < merged_.offset.size(); ++p) {
      if (merged_.cluster[p] == cluster) merged_.offset[p] = add(merged_.offset[p], down);
    }
  }

  const Circuit& circuit_;
  const Islands& islands_;
  const Partition& fed_;
  Modes& modes_;
  std::vector<int> fixers_, sources_, may_tie_;  ///< branches, in file order; sources_: those with resistance
  bool as_fed_ = true;                           ///< all that may conduct do
  DisjointSets sets_;
  Merged merged_;
  bool again_ = false;
};

}  // namespace

tl::expected<Merged, Failure> merge_points(const Circuit& circuit, const Islands& islands,
                                           const Partition& fed, Modes& modes) {
  for (;;) {  // each turn takes one branch out of those that fix a voltage
    Merger merger(circuit, islands, fed, modes);
    auto merged = merger.merge();
    if (!merger.again()) return merged;
  }
}

}  // namespace ohmtrail::solve
