#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "plan/box_cut.hpp"
#include "plan/box_shrink.hpp"
#include "plan/incumbent.hpp"
#include "plan/local_search.hpp"
#include "plan/mip.hpp"
#include "plan/search.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

/// Rows are loosened by this share, so that the master's own tolerances cut no design away that keeps its
/// limit.
constexpr double kSlack = 1e-6;

class RadialSearch {
 public:
  RadialSearch(const DesignSpace& space, const std::vector<RadialCase>& cases, const Judge& judge)
      : space_(space),
        cases_(cases),
        judge_(judge),
        local_(space, cases, judge),
        box_(full_box(space)),
        best_(space, judge) {}

  Found run() {
    if (!shrink()) return best_.proved();
    start_from_thickest();
    shrink_by_reduced_cost();
    while (judge_.in_time()) {
      const auto solution = master().solve(judge_.seconds_left(), best_.cutoff());
      best_.count_round();
      raise_bound(solution);
      if (solution.value.empty()) {
        if (solution.status == MipSolution::Status::infeasible) return best_.proved();
        break;
      }
      const Design design = read(solution.value);
      if (!cut_off(design)) {
        if (!judge_.accepts(design)) {
          no_goods_.push_back(design);
          continue;
        }
        best_.keep(design);
        if (solution.status == MipSolution::Status::optimal) return best_.proved();
      } else if (auto repaired = local_.repaired(design, box_)) {
        best_.offer(*repaired);
      }
      best_.report();
      if (best_.closed()) return best_.proved();
    }
    return best_.found();
  }

 private:
  void raise_bound(const MipSolution& solution) {
    if (std::isfinite(solution.bound) && std::abs(solution.bound) < 1e40) best_.raise_bound(solution.bound);
  }

  /// False where no design is left.
  bool shrink() { return !shrink_box(cases_, space_, box_).empty(); }

  void start_from_thickest() {
    const Design design = LocalSearch::thickest(box_);
    if (local_.keeps_limits(design)) best_.offer(local_.thinned(design, box_));
  }

  /// Cuts away the boxes that refuse this design; false where no case refuses it.
  bool cut_off(const Design& design) {
    bool any = false;
    for (const RadialCase& in_case : cases_) {
      const Bounds known = bounds(in_case, space_, point_box(space_, design));
      if (known.possible) continue;
      any = true;
      for (const auto& order : growing_orders(in_case, known, design))
        refused_.push_back(grow_refused_box(in_case, space_, box_, design, order));
    }
    return any;
  }

  /// Runs off the broken load's path first, since they mostly do not matter; then those on it, from both
  /// ends.
  [[nodiscard]] std::vector<std::vector<int>> growing_orders(const RadialCase& in_case, const Bounds& known,
                                                             const Design& design) const {
    std::vector<bool> on_path(design.size(), false);
    if (known.broken_load >= 0)
      for (const int a : in_case.loads[at(known.broken_load)].path)
        if (in_case.arms[at(a)].run >= 0) on_path[at(in_case.arms[at(a)].run)] = true;
    std::vector<int> off, on;
    for (std::size_t k = 0; k < design.size(); ++k) (on_path[k] ? on : off).push_back(static_cast<int>(k));
    std::vector<std::vector<int>> orders;
    for (int turn = 0; turn < 2; ++turn) {
      std::vector<int> order = off;
      order.insert(order.end(), on.begin(), on.end());
      orders.push_back(std::move(order));
      std::reverse(on.begin(), on.end());
      if (on.size() < 2) break;
    }
    return orders;
  }

  /// Fixes candidates that the linear relaxation shows to be dearer than the best design, and bounds anew.
  void shrink_by_reduced_cost() {
    if (!best_.design()) return;
    const Design& design = *best_.design();
    for (int round = 0; round < 6; ++round) {
      const auto relaxation = master().relax();
      if (!relaxation) return;
      best_.raise_bound(relaxation->objective * (1 - kSlack));
      const double gap = cost(space_, design) * (1 + kSlack) - relaxation->objective;
      bool changed = false;
      for (std::size_t k = 0, column = 0; k < box_.size(); ++k)
        for (std::size_t c = 0; c < box_[k].size(); ++c, ++column)
          if (box_[k][c] && at(design[k]) != c && relaxation->reduced_cost[column] > gap)
            box_[k][c] = false, changed = true;
      if (!changed || !shrink()) return;
    }
  }

  [[nodiscard]] Mip master() const {
    Mip mip;
    for (std::size_t k = 0; k < box_.size(); ++k)
      for (std::size_t c = 0; c < box_[k].size(); ++c) {
        const int column = mip.add_binary(space_.runs[k].candidates[c].cost);
        if (!box_[k][c]) mip.fix(column, 0);
      }
    add_choice_rows(mip);
    for (const RadialCase& in_case : cases_) add_drop_rows(mip, in_case);
    for (const Box& box : refused_) add_cut(mip, box);
    for (const Design& design : no_goods_) add_cut(mip, point_box(space_, design));
    return mip;
  }

  [[nodiscard]] int column(std::size_t run, std::size_t candidate) const {
    std::size_t before = 0;
    for (std::size_t k = 0; k < run; ++k) before += box_[k].size();
    return static_cast<int>(before + candidate);
  }

  void add_choice_rows(Mip& mip) const {
    for (std::size_t k = 0; k < box_.size(); ++k) {
      std::vector<Term> terms;
      for (std::size_t c = 0; c < box_[k].size(); ++c) terms.push_back({column(k, c), 1});
      mip.add_row(terms, 1, 1);
    }
  }

  /// Σ r(candidate, I) I over the path ≤ limit, at the least current that any design in the box lets flow.
  void add_drop_rows(Mip& mip, const RadialCase& in_case) const {
    const Bounds known = bounds(in_case, space_, box_);
    for (const RadialLoad& load : in_case.loads) {
      if (!std::isfinite(load.limit)) continue;
      std::vector<Term> terms;
      double fixed = 0;
      std::vector<std::vector<double>> by_run(box_.size());
      for (const int a : load.path) {
        const Arm& arm = in_case.arms[at(a)];
        double amperes = 0;
        for (const int l : arm.loads) amperes += known.load_amperes[at(l)].low;
        if (arm.run < 0) {
          fixed += arm.choices[0].least_ohms(amperes) * amperes;
          continue;
        }
        auto& sums = by_run[at(arm.run)];
        sums.resize(box_[at(arm.run)].size());
        for (std::size_t c = 0; c < sums.size(); ++c) sums[c] += arm.choices[c].least_ohms(amperes) * amperes;
      }
      for (std::size_t k = 0; k < by_run.size(); ++k)
        for (std::size_t c = 0; c < by_run[k].size(); ++c)
          if (box_[k][c]) terms.push_back({column(k, c), by_run[k][c] / load.limit});
      mip.add_row(terms, -std::numeric_limits<double>::infinity(), 1 - fixed / load.limit + kSlack);
    }
  }

  void add_cut(Mip& mip, const Box& box) const {
    std::vector<Term> terms;
    for (std::size_t k = 0; k < box.size(); ++k)
      for (std::size_t c = 0; c < box[k].size(); ++c)
        if (box_[k][c] && !box[k][c]) terms.push_back({column(k, c), 1});
    mip.add_row(terms, 1, std::numeric_limits<double>::infinity());
  }

  [[nodiscard]] Design read(const std::vector<double>& value) const {
    Design design;
    for (std::size_t k = 0; k < box_.size(); ++k) {
      int best = 0;
      for (std::size_t c = 1; c < box_[k].size(); ++c)
        if (value[at(column(k, c))] > value[at(column(k, at(best)))]) best = static_cast<int>(c);
      design.push_back(best);
    }
    return design;
  }

  const DesignSpace& space_;
  const std::vector<RadialCase>& cases_;
  const Judge& judge_;
  LocalSearch local_;
  Box box_;
  std::vector<Box> refused_;
  std::vector<Design> no_goods_;
  Incumbent best_;
};

}  // namespace

Found search_radial(const DesignSpace& space, const std::vector<RadialCase>& cases, const Judge& judge) {
  return RadialSearch(space, cases, judge).run();
}

}  // namespace ohmtrail::plan
