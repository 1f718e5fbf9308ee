#include <algorithm>
#include <cmath>
#include <set>

#include "solve/partition.hpp"
#include "solve/solver_state.hpp"
#include "solve/wrong_modes.hpp"
#include "units/index.hpp"

namespace ohmtrail::solve {

namespace {

constexpr int most_converter_rounds = 400;
constexpr double converter_accuracy = 1e-13;

/// Far more turns of modes than any network has been seen to need: beyond it there is no state to be found.
int most_rounds(const SolverState& state) {
  return 20 + 6 * static_cast<int>(state.switching.size());
}

bool any(const std::vector<char>& marks) {
  return std::any_of(marks.begin(), marks.end(), [](char mark) { return mark != 0; });
}

}  // namespace

Structure::Structure(const Circuit& circuit, Merged merged_points, const Modes& modes)
    : made_for(modes),
      merged(std::move(merged_points)),
      jacobian(circuit, merged),
      merged_currents(circuit, merged),
      point(circuit, merged, jacobian, made_for) {}

void SolverState::start_modes(bool afresh) {
  const Modes last = modes;
  modes.assign(circuit.branches.size(), Mode::active);
  for (const std::size_t b : switching) {
    if (!afresh) modes[b] = last[b];
  }
  for (std::size_t b = 0; b < modes.size(); ++b) {
    if (circuit.branches[b].law == Law::open || stopped[b]) modes[b] = Mode::idle;
  }
}

std::optional<Failure> SolverState::restructure() {
  if (structure && !merge_changed && structure->made_for == modes) return std::nullopt;
  auto merged = merge_points(circuit, islands, fed, modes);
  if (!merged) return merged.error();
  structure = std::make_unique<Structure>(circuit, std::move(*merged), modes);
  ++effort.orderings;
  merge_changed = false;
  return std::nullopt;
}

void SolverState::find_currents() {
  current = structure->point.current();
  if (!structure->merged_currents.any()) return;
  std::vector<double> into(at(circuit.points), 0.0);
  for (std::size_t b = 0; b < current.size(); ++b) {
    if (!structure->point.flows(b)) continue;
    into[at(circuit.branches[b].from)] -= current[b];
    into[at(circuit.branches[b].to)] += current[b];
  }
  structure->merged_currents.find(into, current);
}

double SolverState::update_converters() {
  double change = 0;
  for (const std::size_t b : switching) {
    const Branch& output = circuit.branches[b];
    if (output.law != Law::regulator || output.input < 0) continue;
    double& power = demand.power[at(output.input)];
    const double delivered = modes[b] == Mode::idle ? 0 : -structure->point.drop()[b] * current[b];
    const double wanted = std::max(delivered, 0.0) / output.efficiency + output.idle;
    if (wanted != power) change = std::max(change, std::abs(wanted - power) / std::max(wanted, power));
    power = wanted;
  }
  return change;
}

namespace {

std::vector<char> islands_of_converters(const SolverState& state) {
  std::vector<char> marks(state.islands.reference.size(), 0);
  for (const std::size_t b : state.switching) {
    const Branch& output = state.circuit.branches[b];
    if (output.law == Law::regulator && output.input >= 0) marks[state.island_of(at(output.input))] = 1;
  }
  return marks;
}

/// Newton and the converters' demand by turns.
std::vector<char> newton_with_converters(SolverState& state) {
  Structure& structure = *state.structure;
  for (int round = 0;; ++round) {
    std::vector<char> failed =
        newton(state.circuit, structure.point, structure.jacobian, state.demand, state.effort);
    if (any(failed)) return failed;
    state.find_currents();
    if (state.update_converters() <= converter_accuracy) return failed;
    if (round > most_converter_rounds) return islands_of_converters(state);
  }
}

/// Islands whose regulators cannot hold their loads: less power may help, if there is power to be less.
tl::expected<std::vector<char>, Failure> overloaded_islands(const SolverState& state,
                                                            const Failure& failure) {
  std::vector<char> marks(state.islands.reference.size(), 0);
  for (const int b : failure.branches) marks[state.island_of(at(b))] = 1;
  for (std::size_t b = 0; b < state.modes.size(); ++b) {
    if (state.circuit.branches[b].law != Law::power || state.modes[b] == Mode::idle) continue;
    if (marks[state.island_of(b)] && state.demand.share[state.island_of(b)] > 0) return marks;
  }
  return tl::unexpected(failure);
}

}  // namespace

/// From where the last solve ended; where that leads nowhere, from the state without power loads.
std::vector<char> SolverState::run_newton() {
  OperatingPoint& point = structure->point;
  if (solved) {
    point.start_at(voltage);
    std::vector<char> failed = newton_with_converters(*this);
    if (!any(failed)) return failed;
    structure->jacobian.forget();
  }
  if (point.power_loads().empty()) {
    point.start_at_zero();
    return newton_with_converters(*this);
  }
  const std::vector<double> shares = demand.share;
  std::fill(demand.share.begin(), demand.share.end(), 0.0);
  point.start_at_zero();
  std::vector<char> failed =
      newton(circuit, point, structure->jacobian, demand, effort, near_enough_to_start);
  demand.share = shares;
  return any(failed) ? failed : newton_with_converters(*this);
}

/// Block principal pivoting: all wrong modes change at once; when a state comes back, one at a time, lowest
/// index first, which ends for every network of passive elements (Murty's rule for P-matrices).
tl::expected<std::vector<char>, Failure> SolverState::settle() {
  std::set<Modes> seen;
  bool one_only = false;
  std::vector<char> wrong_islands;
  const int rounds = most_rounds(*this);
  for (int round = 0; round < rounds; ++round) {
    if (auto failure = restructure()) return tl::unexpected(*failure);
    std::vector<char> failed = run_newton();
    if (any(failed)) return failed;
    find_currents();
    const WrongModes wrong = find_wrong_modes(*this, !one_only);
    if (wrong.overloaded) return overloaded_islands(*this, *wrong.overloaded);
    wrong_islands.assign(failed.size(), 0);
    if (wrong.changes.empty() && wrong.unfed.empty()) {
      voltage = structure->point.voltage();
      solved = true;
      return failed;
    }
    for (const int load : wrong.unfed) stop(at(load));
    for (const auto& [branch, mode] : wrong.changes) {
      modes[at(branch)] = mode;
      wrong_islands[island_of(at(branch))] = 1;
      if (one_only) break;
    }
    one_only = one_only || !seen.insert(modes).second;
  }
  return wrong_islands;
}

}  // namespace ohmtrail::solve
