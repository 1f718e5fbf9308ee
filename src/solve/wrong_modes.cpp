#include "solve/wrong_modes.hpp"

#include <algorithm>
#include <cmath>

#include "solve/solver_state.hpp"
#include "units/index.hpp"

namespace ohmtrail::solve {

namespace {

/// A contradiction below these is rounding.
constexpr double current_slack = 1e-10;  // of the island's largest current
constexpr double least_current = 1e-11;  // A
constexpr double voltage_slack = 1e-11;  // of the set point or drop

class Finder {
 public:
  Finder(const SolverState& state, bool idle_at_rest)
      : state_(state), idle_at_rest_(idle_at_rest), slack_(state.islands.reference.size(), least_current) {
    for (std::size_t b = 0; b < state.current.size(); ++b) {
      if (state.structure->point.island(b) < 0) continue;
      double& slack = slack_[state.island_of(b)];
      slack = std::max(slack, current_slack * std::abs(state.current[b]));
    }
  }

  /// Ties first: while they are wrong, the voltages of what hangs on them mean nothing.
  WrongModes find() {
    const std::vector<char>& ties = state_.structure->merged.ties;
    for (std::size_t b = 0; b < ties.size(); ++b) {
      if (ties[b] && judged(b)) check_tie(b);
    }
    if (!wrong_.changes.empty() || !wrong_.unfed.empty()) return without_overload();
    for (const std::size_t b : state_.switching) {
      if (!judged(b) || state_.structure->merged.ties[b]) continue;
      state_.circuit.branches[b].law == Law::regulator ? check_regulator(b) : check_diode(b);
    }
    return wrong_.changes.empty() ? std::move(wrong_) : without_overload();
  }

 private:
  bool judged(std::size_t b) const { return state_.structure->point.island(b) >= 0 && !state_.stopped[b]; }

  /// What changes may help the regulators that are at their limit.
  WrongModes without_overload() {
    wrong_.overloaded.reset();
    return std::move(wrong_);
  }

  double slack(std::size_t b) const { return slack_[state_.island_of(b)]; }
  double volts(std::size_t b) const { return state_.structure->point.drop()[b]; }
  void change(std::size_t b, Mode mode) { wrong_.changes.emplace_back(static_cast<int>(b), mode); }

  void check_regulator(std::size_t b) {
    const Branch& branch = state_.circuit.branches[b];
    const double delivered = -state_.current[b];
    const double margin = voltage_slack * std::abs(branch.size);
    switch (state_.modes[b]) {
      case Mode::active:
        if (delivered < -slack(b)) change(b, Mode::idle);
        if (delivered > branch.limit + slack(b)) change(b, Mode::limiting);
        return;
      case Mode::limiting:
        if (volts(b) > branch.size + margin) change(b, Mode::active);
        return;
      case Mode::idle:
        if (volts(b) < branch.size - margin) change(b, Mode::active);
    }
  }

  void check_diode(std::size_t b) {
    const Branch& branch = state_.circuit.branches[b];
    if (state_.modes[b] == Mode::active) {
      if (state_.current[b] < (idle_at_rest_ ? slack(b) : -slack(b))) change(b, Mode::idle);
    } else if (volts(b) > branch.size + voltage_slack * std::max(std::abs(branch.size), 1.0)) {
      change(b, Mode::active);
    }
  }

  /// What hangs on a tie may draw no current through it. If it does, the branch must conduct; if it cannot,
  /// the loads behind it get nothing. A regulator holds what hangs on it unless that takes more than its
  /// limit.
  void check_tie(std::size_t b) {
    const Branch& branch = state_.circuit.branches[b];
    const double through = state_.current[b];
    if (branch.law == Law::regulator) {
      const bool holds = state_.modes[b] == Mode::idle || -through <= branch.limit + slack(b);
      holds ? change(b, Mode::active) : overloaded(b);
      return;
    }
    if (std::abs(through) <= slack(b)) return;
    if (branch.law == Law::diode && through > 0) {
      change(b, Mode::active);
    } else {
      unfed_behind();
    }
  }

  void overloaded(std::size_t b) {
    if (!wrong_.overloaded) wrong_.overloaded = Failure{Failure::Kind::overloaded, {}, 0};
    wrong_.overloaded->branches.push_back(static_cast<int>(b));
  }

  void unfed_behind() {
    if (!wrong_.unfed.empty()) return;
    Partition parts = state_.structure->merged.conducting;
    for (std::size_t b = 0; b < state_.circuit.branches.size(); ++b) {
      const Branch& branch = state_.circuit.branches[b];
      const bool takes = is_takes(branch.law) && state_.modes[b] != Mode::idle;
      if (takes && parts.find(branch.from) != parts.find(branch.to))
        wrong_.unfed.push_back(static_cast<int>(b));
    }
  }

  const SolverState& state_;
  bool idle_at_rest_;
  std::vector<double> slack_;  ///< per island, A
  WrongModes wrong_;
};

}  // namespace

WrongModes find_wrong_modes(const SolverState& state, bool idle_at_rest) {
  const std::vector<char>& ties = state.structure->merged.ties;
  if (state.switching.empty() && std::find(ties.begin(), ties.end(), 1) == ties.end()) return {};
  return Finder(state, idle_at_rest).find();
}

}  // namespace ohmtrail::solve
