#include <algorithm>
#include <cmath>
#include <limits>

#include "plan/flow_model.hpp"
#include "plan/search.hpp"

namespace ohmtrail::plan {

namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

constexpr double kSameCost = 1e-9;

class GeneralSearch {
 public:
  GeneralSearch(const DesignSpace& space, const std::vector<Guards>& guards,
                const std::vector<solve::CaseSolution>& probes, const Judge& judge)
      : space_(space), judge_(judge) {
    for (const RunSpace& run : space.runs) {
      taken_.emplace_back();
      std::vector<Term> one_of;
      for (const Candidate& candidate : run.candidates) {
        taken_.back().push_back(mip_.add_binary(candidate.cost));
        one_of.push_back({taken_.back().back(), 1});
      }
      mip_.add_row(one_of, 1, 1);
    }
    for (std::size_t c = 0; c < space.cases.size(); ++c)
      add_flow_rows(mip_, space, space.cases[c], guards[c], probes[c], taken_);
  }

  Found run() {
    start();
    while (judge_.seconds_left() > 0) {
      const auto solution = mip_.solve(judge_.seconds_left(), cutoff());
      ++found_.rounds;
      if (std::abs(solution.bound) < 1e40) found_.bound = std::max(found_.bound, solution.bound);
      if (solution.value.empty()) {
        if (solution.status == MipSolution::Status::infeasible) return finish();
        break;
      }
      const Design design = read(solution.value);
      if (judge_.accepts(design)) {
        found_.design = design;
        if (solution.status == MipSolution::Status::optimal) return finish();
      } else {
        cut_off(design);
      }
      report();
    }
    return found_;
  }

 private:
  Found finish() {
    found_.proved = true;
    if (found_.design) found_.bound = cost(space_, *found_.design);
    return found_;
  }

  [[nodiscard]] std::optional<double> cutoff() const {
    if (!found_.design) return std::nullopt;
    return cost(space_, *found_.design) * (1 - kSameCost);
  }

  /// A design to beat: the thickest, then each run in turn as thin as the judge lets it be, within a third of
  /// the time.
  void start() {
    Design design;
    for (const RunSpace& run : space_.runs) design.push_back(static_cast<int>(run.candidates.size()) - 1);
    if (!judge_.accepts(design)) return;
    const double reserve = judge_.seconds_left() * 2 / 3;
    for (std::size_t k = 0; k < design.size() && judge_.seconds_left() > reserve; ++k)
      for (int step = static_cast<int>(space_.runs[k].candidates.size()); step > 0; step /= 2)
        while (design[k] >= step && judge_.seconds_left() > reserve) {
          design[k] -= step;
          if (judge_.accepts(design)) continue;
          design[k] += step;
          break;
        }
    found_.design = design;
  }

  void cut_off(const Design& design) {
    std::vector<Term> terms;
    for (std::size_t k = 0; k < design.size(); ++k) terms.push_back({taken_[k][at(design[k])], 1});
    mip_.add_row(terms, -std::numeric_limits<double>::infinity(), static_cast<double>(design.size()) - 1);
  }

  [[nodiscard]] Design read(const std::vector<double>& value) const {
    Design design;
    for (const auto& columns : taken_) {
      std::size_t best = 0;
      for (std::size_t c = 1; c < columns.size(); ++c)
        if (value[at(columns[c])] > value[at(columns[best])]) best = c;
      design.push_back(static_cast<int>(best));
    }
    return design;
  }

  void report() const {
    if (judge_.progress)
      judge_.progress({found_.bound,
                       found_.design ? std::optional(cost(space_, *found_.design)) : std::nullopt,
                       found_.rounds});
  }

  const DesignSpace& space_;
  const Judge& judge_;
  Mip mip_;
  std::vector<std::vector<int>> taken_;
  Found found_;
};

}  // namespace

Found search_general(const DesignSpace& space, const std::vector<Guards>& guards,
                     const std::vector<solve::CaseSolution>& probes, const Judge& judge) {
  return GeneralSearch(space, guards, probes, judge).run();
}

}  // namespace ohmtrail::plan
