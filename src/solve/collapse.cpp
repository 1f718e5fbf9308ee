#include <algorithm>
#include <cmath>

#include "solve/fold.hpp"
#include "solve/solver_state.hpp"
#include "solve/wrong_modes.hpp"
#include "units/index.hpp"

// Where the loads of an island have no solution at full power, its constant-power loads are all scaled by one
// share. The largest share that has a solution is bracketed by halving; then, where it is a smooth fold,
// walked to; where it is a corner (a regulator reaches its limit there), halved down to rounding error.

namespace ohmtrail::solve {

namespace {

constexpr double near_enough_to_walk = 0.02;
constexpr double corner_accuracy = 1e-11;
constexpr double least_share = 1e-9;  // below it nothing is carried: a load connected the wrong way round

/// A settled state to go back to.
struct Kept {
  Modes modes;
  std::vector<Precise> voltage;
  Demand demand;
  std::vector<char> stopped;
};

class Search {
 public:
  Search(SolverState& state, int island) : state_(state), island_(island) {}

  /// Leaves the state at the largest share.
  std::optional<Failure> run() {
    state_.start_modes(true);
    if (auto failure = carry(0)) return failure;
    if (!carried_) return Failure{Failure::Kind::not_certified, {}, 0};
    bool walked = false;
    while (low_ < 1 && high_ > least_share && high_ - low_ > corner_accuracy * high_) {
      if (!walked && high_ - low_ < near_enough_to_walk * high_ && low_ > 0) {
        walked = true;
        if (walk()) return std::nullopt;
      }
      if (auto failure = carry(next_share())) return failure;
    }
    return go_back();
  }

 private:
  double& share() { return state_.demand.share[at(island_)]; }

  double next_share() const { return 0.5 * (low_ + high_); }

  /// Tries one share and narrows the bracket.
  std::optional<Failure> carry(double wanted) {
    share() = wanted;
    auto marks = state_.settle();
    if (!marks && marks.error().kind != Failure::Kind::overloaded) return marks.error();
    if (!marks && wanted == 0) return marks.error();
    carried_ = marks && !(*marks)[at(island_)];
    if (carried_) {
      low_ = wanted;
      kept_ = {state_.modes, state_.voltage, state_.demand, state_.stopped};
    } else {
      high_ = wanted;
      if (wanted > 0) return go_back();
    }
    return std::nullopt;
  }

  std::optional<Failure> go_back() {
    state_.modes = kept_.modes;
    state_.voltage = kept_.voltage;
    state_.demand = kept_.demand;
    state_.stopped = kept_.stopped;
    state_.solved = true;
    auto marks = state_.settle();
    if (!marks) return marks.error();
    return std::nullopt;
  }

  /// True: the state is at the fold, or at full share where the fold lies beyond it.
  bool walk() {
    const auto fold = walk_to_fold(state_, island_);
    if (fold && *fold >= 1) return full_share();
    if (fold && *fold >= low_ && *fold <= high_ * (1 + 1e-9)) {
      state_.find_currents();
      const WrongModes wrong = find_wrong_modes(state_);
      const bool settled = wrong.changes.empty() && wrong.unfed.empty() && !wrong.overloaded;
      if (settled && state_.update_converters() <= 1e-10) {
        state_.voltage = state_.structure->point.voltage();
        return true;
      }
    }
    state_.structure->jacobian.forget();
    go_back();
    return false;
  }

  /// The fold lies beyond the full load, but Newton did not get there in one go: from nearby it does.
  bool full_share() {
    state_.structure->jacobian.forget();
    go_back();
    while (low_ < 1) {
      const double before = low_;
      if (carry(1)) return false;
      if (low_ < 1 && carry(low_ + 0.5 * (1 - low_))) return false;
      if (low_ == before) return false;
    }
    return true;
  }

  SolverState& state_;
  int island_;
  double low_ = 0, high_ = 1;
  bool carried_ = false;
  Kept kept_;
};

/// The constant-power load with the lowest voltage over nominal.
Collapse describe(const SolverState& state, int island) {
  Collapse collapse;
  collapse.share = state.demand.share[at(island)];
  double lowest = HUGE_VAL;
  for (std::size_t b = 0; b < state.circuit.branches.size(); ++b) {
    const Branch& branch = state.circuit.branches[b];
    if (branch.law != Law::power || !state.is_running_load(b) || state.island_of(b) != at(island)) continue;
    const double volts = state.structure->point.drop()[b];
    const double level = volts / (branch.nominal > 0 ? branch.nominal : 1);
    if (level >= lowest * (1 - 1e-9)) continue;  // alike but for rounding: the first in the file
    lowest = level;
    collapse.branch = static_cast<int>(b);
    collapse.at_volts = volts;
    collapse.most_power = volts * state.current[b];
  }
  return collapse;
}

}  // namespace

std::optional<Failure> SolverState::find_folds(const std::vector<char>& marks) {
  for (std::size_t k = 0; k < marks.size(); ++k) {
    if (marks[k]) demand.share[k] = 0;
  }
  for (std::size_t k = 0; k < marks.size(); ++k) {
    if (!marks[k]) continue;
    if (auto failure = Search(*this, static_cast<int>(k)).run()) return failure;
    if (demand.share[k] >= 1) continue;
    const Collapse found = describe(*this, static_cast<int>(k));
    if (found.branch < 0) continue;  // every load that asked for power turned out to be cut off
    if (!collapse || found.share < collapse->share) collapse = found;
  }
  return std::nullopt;
}

}  // namespace ohmtrail::solve
