#include <algorithm>
#include <cmath>
#include <limits>

#include "plan/flow_model.hpp"
#include "plan/incumbent.hpp"
#include "plan/search.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

/// Shares of the drop limits at which designs are looked for that surely keep them.
constexpr double kStrict[] = {0.999, 0.99, 0.95, 0.8};

/// A master with the flow rows of every case.
struct Master {
  Mip mip;
  std::vector<std::vector<int>> taken;  ///< column per run in scope and candidate
  std::vector<FlowModel> flows;

  Master(const DesignSpace& space, const std::vector<Guards>& guards,
         const std::vector<solve::CaseSolution>& probes, double share) {
    for (const RunSpace& run : space.runs) {
      taken.emplace_back();
      std::vector<Term> one_of;
      for (const Candidate& candidate : run.candidates) {
        taken.back().push_back(mip.add_binary(candidate.cost));
        one_of.push_back({taken.back().back(), 1});
      }
      mip.add_row(one_of, 1, 1);
    }
    const auto most = most_amperes(space, probes);
    for (std::size_t c = 0; c < space.cases.size(); ++c)
      flows.emplace_back(mip, space, space.cases[c], guards[c], probes[c], most, taken, share);
  }

  [[nodiscard]] Design read(const std::vector<double>& value) const {
    Design design;
    for (const auto& columns : taken) {
      std::size_t best = 0;
      for (std::size_t c = 1; c < columns.size(); ++c)
        if (value[at(columns[c])] > value[at(columns[best])]) best = c;
      design.push_back(static_cast<int>(best));
    }
    return design;
  }

  /// Candidates that the linear relaxation shows to be dearer than `best` are fixed at zero. Returns its
  /// bound.
  std::optional<double> fix_dear(const Design& design, double best) {
    const auto relaxation = mip.relax();
    if (!relaxation) return std::nullopt;
    for (std::size_t k = 0; k < taken.size(); ++k)
      for (std::size_t c = 0; c < taken[k].size(); ++c)
        if (at(design[k]) != c &&
            relaxation->reduced_cost[at(taken[k][c])] > best * (1 + 1e-6) - relaxation->objective)
          mip.fix(taken[k][c], 0);
    return relaxation->objective;
  }
};

class GeneralSearch {
 public:
  GeneralSearch(const DesignSpace& space, const std::vector<Guards>& guards,
                const std::vector<solve::CaseSolution>& probes, const Judge& judge)
      : space_(space),
        guards_(guards),
        probes_(probes),
        judge_(judge),
        master_(space, guards, probes, 1),
        best_(space, judge) {}

  Found run() {
    best_.raise_bound(floor());
    if (const auto relaxation = master_.mip.relax()) best_.raise_bound(relaxation->objective);
    best_.report();
    start();
    while (judge_.in_time()) {
      fix_dear();
      if (best_.closed()) return best_.proved();
      const auto solution = master_.mip.solve(judge_.seconds_left(), best_.cutoff());
      best_.count_round();
      if (std::abs(solution.bound) < 1e40) best_.raise_bound(solution.bound);
      if (solution.value.empty()) {
        if (solution.status == MipSolution::Status::infeasible) return best_.proved();
        break;
      }
      const Design design = master_.read(solution.value);
      const Assessment assessment = judge_.assess(design);
      if (assessment.keeps_limits()) {
        best_.keep(design);
        if (solution.status == MipSolution::Status::optimal) return best_.proved();
      } else {
        cut_off(design, assessment, solution.value);
      }
      best_.report();
    }
    return best_.found();
  }

 private:
  /// The cheapest candidate of every run.
  [[nodiscard]] double floor() const {
    double sum = 0;
    for (const RunSpace& run : space_.runs)
      sum += std::min_element(run.candidates.begin(), run.candidates.end(), [](const auto& a, const auto& b) {
               return a.cost < b.cost;
             })->cost;
    return sum;
  }

  /// A design to beat: the linear relaxation rounded up, then the cheapest with a little less than the
  /// limits, which the relaxation's slack does not spoil. A third of the time at most.
  void start() {
    const double reserve = judge_.seconds_left() * 2 / 3;
    for (const double share : kStrict) {
      if (judge_.seconds_left() < reserve) return;
      Master strict(space_, guards_, probes_, share);
      if (!best_.design()) round_up(strict);
      if (best_.design() && !strict.fix_dear(*best_.design(), cost(space_, *best_.design()))) continue;
      const auto solution = strict.mip.solve((judge_.seconds_left() - reserve) / 2, best_.cutoff());
      if (solution.value.empty()) continue;
      const Design promising = strict.read(solution.value);
      if (!judge_.accepts(promising)) continue;
      best_.keep(thinned(promising, judge_.seconds_left() / 12));
      best_.report();
      return;
    }
  }

  /// For each run the thinnest candidate that holds no less copper than the relaxation mixes; thicker by a
  /// step everywhere until the judge is content, then thinned.
  void round_up(const Master& strict) {
    const auto relaxation = strict.mip.relax();
    if (!relaxation) return;
    Design design;
    for (std::size_t k = 0; k < strict.taken.size(); ++k) {
      const auto& candidates = space_.runs[k].candidates;
      double area = 0;
      for (std::size_t c = 0; c < candidates.size(); ++c)
        area += candidates[c].area * relaxation->value[at(strict.taken[k][c])];
      int chosen = 0;
      while (chosen + 1 < static_cast<int>(candidates.size()) &&
             candidates[at(chosen)].area < area * (1 - 1e-6))
        ++chosen;
      design.push_back(chosen);
    }
    for (int step = 0; step < 20; ++step) {
      if (judge_.accepts(design)) {
        best_.keep(thinned(design, judge_.seconds_left() / 12));
        return best_.report();
      }
      for (std::size_t k = 0; k < design.size(); ++k)
        design[k] = std::min(design[k] + 1, static_cast<int>(space_.runs[k].candidates.size()) - 1);
    }
  }

  /// Run after run one candidate thinner, the largest saving first, for as long as the judge allows any.
  [[nodiscard]] Design thinned(Design design, double seconds) const {
    const double reserve = judge_.seconds_left() - seconds;
    std::vector<bool> stuck(design.size(), false);
    while (judge_.seconds_left() > reserve) {
      int best = -1;
      for (std::size_t k = 0; k < design.size(); ++k)
        if (!stuck[k] && (best < 0 || saving(k, design[k]) > saving(at(best), design[at(best)])))
          best = static_cast<int>(k);
      if (best < 0 || saving(at(best), design[at(best)]) <= 0) break;
      --design[at(best)];
      if (judge_.accepts(design)) continue;
      ++design[at(best)];
      stuck[at(best)] = true;
    }
    return design;
  }

  [[nodiscard]] double saving(std::size_t run, int candidate) const {
    const auto& candidates = space_.runs[run].candidates;
    return candidate == 0 ? 0 : candidates[at(candidate)].cost - candidates[at(candidate - 1)].cost;
  }

  void fix_dear() {
    if (!best_.design()) return;
    const auto bound = master_.fix_dear(*best_.design(), cost(space_, *best_.design()));
    if (bound) best_.raise_bound(*bound);
  }

  void cut_off(const Design& design, const Assessment& assessment, const std::vector<double>& value) {
    std::vector<Term> terms;
    for (std::size_t k = 0; k < design.size(); ++k) terms.push_back({master_.taken[k][at(design[k])], 1});
    master_.mip.add_row(terms, -std::numeric_limits<double>::infinity(),
                        static_cast<double>(design.size()) - 1);
    for (std::size_t c = 0; c < assessment.cases.size(); ++c)
      master_.flows[c].refine(master_.mip, assessment.cases[c], value);
  }

  const DesignSpace& space_;
  const std::vector<Guards>& guards_;
  const std::vector<solve::CaseSolution>& probes_;
  const Judge& judge_;
  Master master_;
  Incumbent best_;
};

}  // namespace

Found search_general(const DesignSpace& space, const std::vector<Guards>& guards,
                     const std::vector<solve::CaseSolution>& probes, const Judge& judge) {
  return GeneralSearch(space, guards, probes, judge).run();
}

}  // namespace ohmtrail::plan
