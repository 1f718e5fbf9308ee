#include <algorithm>
#include <cmath>
#include <limits>

#include "solve/expect.hpp"
#include "solve/solver_state.hpp"
#include "units/index.hpp"

namespace ohmtrail::solve {

namespace {

constexpr double certified_residual = 1e-9;
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
/// An island with no current above this has none: what is left is the noise of its voltages.
constexpr double no_current = 1e-12;
/// Beside the island's largest current, a current below this share of it is noise.
constexpr double noise = 1e-19;
constexpr double merged_noise = 1e-14;  // of currents that are sums of others

class Writer {
 public:
  explicit Writer(const SolverState& state) : state_(state), circuit_(state.circuit) {
    const std::size_t count = circuit_.branches.size();
    out_.voltage.assign(at(circuit_.points), nan);
    out_.current = state.current;
    out_.drop.assign(count, nan);
    out_.heat.assign(count, 0.0);
    out_.resistance.assign(count, nan);
    out_.temperature.assign(count, nan);
    out_.running.assign(count, false);
    out_.collapse = state.collapse;
    leaving_.assign(at(circuit_.points), 0.0);
  }

  Solution write() {
    for (std::size_t p = 0; p < out_.voltage.size(); ++p) {
      const Precise& voltage = state_.voltage[p];
      if (has_source(state_.islands.of_point[p])) out_.voltage[p] = voltage.hi + voltage.lo;
    }
    find_largest();
    for (std::size_t b = 0; b < circuit_.branches.size(); ++b) {
      expect_points(circuit_.branches, b, state_.voltage, leaving_);
      if (is_nothing(b)) out_.current[b] = 0;
      write_branch(b);
      add_to_sums(b);
    }
    current_residual();
    power_residual();
    return std::move(out_);
  }

 private:
  bool has_source(int island) const { return state_.islands.reference[at(island)] >= 0; }
  bool live(std::size_t b) const { return state_.structure->point.island(b) >= 0; }
  /// Of a live branch.
  std::size_t island(std::size_t b) const { return at(state_.structure->point.island(b)); }

  void find_largest() {
    largest_.assign(state_.islands.reference.size(), 0.0);
    for (std::size_t b = 0; b < out_.current.size(); ++b) {
      if (!live(b) || state_.structure->merged.ties[b]) continue;
      largest_[island(b)] = std::max(largest_[island(b)], std::abs(out_.current[b]));
    }
    for (double& largest : largest_) {
      if (largest < no_current) largest = 0;
    }
    sum_.assign(largest_.size(), 0.0);
    delivered_.assign(largest_.size(), 0.0);
  }

  /// A current that is none, or noise.
  bool is_nothing(std::size_t b) const {
    if (!live(b) || state_.structure->merged.ties[b] || largest_[island(b)] == 0) return true;
    const double share = state_.structure->merged.fixes[b] ? merged_noise : noise;
    return std::abs(out_.current[b]) <= share * largest_[island(b)];
  }

  double drop_of(std::size_t b) const {
    const Branch& branch = circuit_.branches[b];
    if (!live(b)) {
      const int from = state_.islands.of_point[at(branch.from)];
      if (from != state_.islands.of_point[at(branch.to)] || !has_source(from)) return nan;
    }
    if (out_.current[b] == 0 && branch.law == Law::resistor && state_.modes[b] == Mode::active) return 0;
    return difference(state_.voltage[at(branch.from)], state_.voltage[at(branch.to)]);
  }

  void write_branch(std::size_t b) {
    const Branch& branch = circuit_.branches[b];
    const double i = out_.current[b];
    out_.drop[b] = drop_of(b);
    if (branch.law == Law::open || state_.modes[b] == Mode::idle) {
      out_.running[b] = branch.law == Law::regulator || branch.law == Law::diode ? !state_.stopped[b] : false;
      return;
    }
    out_.running[b] = true;
    if (!live(b)) return;
    if (branch.law == Law::resistor)
      out_.resistance[b] = is_ohmic(branch) ? branch.resistance : resistance_at(branch, i);
    if (branch.law == Law::source) out_.resistance[b] = branch.resistance;
    if (branch.law == Law::diode && branch.resistance > 0) out_.resistance[b] = branch.resistance;
    if (branch.heating.rise > 0) out_.temperature[b] = temperature_at(branch.heating, i);
    out_.heat[b] = heat_of(b);
  }

  double heat_of(std::size_t b) const {
    const Branch& branch = circuit_.branches[b];
    if (branch.law == Law::source) return out_.current[b] * out_.current[b] * branch.resistance;
    if (branch.law == Law::regulator) return 0;
    return out_.drop[b] * out_.current[b];
  }

  void add_to_sums(std::size_t b) {
    const double amperes = out_.current[b];
    if (amperes == 0) return;
    leaving_[at(circuit_.branches[b].from)] += amperes;
    leaving_[at(circuit_.branches[b].to)] -= amperes;
    const double power = out_.drop[b] * amperes;
    sum_[island(b)] += power;
    delivered_[island(b)] += std::max(-power, 0.0);
  }

  void current_residual() {
    for (std::size_t p = 0; p < leaving_.size(); ++p) {
      const double largest = largest_[at(state_.islands.of_point[p])];
      if (largest > 0) raise(out_.current_residual, std::abs(leaving_[p]) / largest);
    }
  }

  void power_residual() {
    for (std::size_t k = 0; k < sum_.size(); ++k) {
      if (delivered_[k] > 0) raise(out_.power_residual, std::abs(sum_[k]) / delivered_[k]);
    }
  }

  /// A residual that is not a number must not look like a small one.
  static void raise(double& residual, double to) {
    if (!(to <= residual)) residual = to;
  }

  const SolverState& state_;
  const Circuit& circuit_;
  Solution out_;
  std::vector<double> leaving_;          ///< per point, A
  std::vector<double> largest_;          ///< per island, A
  std::vector<double> sum_, delivered_;  ///< per island, W
};

}  // namespace

bool is_certified(const Solution& solution) {
  return solution.current_residual <= certified_residual && solution.power_residual <= certified_residual;
}

Solution make_solution(const SolverState& state) {
  return Writer(state).write();
}

}  // namespace ohmtrail::solve
