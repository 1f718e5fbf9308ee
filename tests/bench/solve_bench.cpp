// From a circuit to its certified solution, over the bare library on the same matrix in the same run.
#include <benchmark/benchmark.h>
#include <sys/resource.h>

#include "bench/bare_library.hpp"
#include "bench/fastest.hpp"
#include "bench/large_circuit.hpp"
#include "ohmtrail/solve/solver.hpp"

namespace ohmtrail::bench {
namespace {

constexpr int turns = 5;

solve::Effort solve_ours(const solve::Circuit& circuit) {
  solve::Solver solver(circuit);
  const auto solution = solver.solve();
  if (!solution || solution->collapse) std::abort();
  benchmark::DoNotOptimize(solution->voltage.data());
  return solver.effort();
}

/// Orderings, factorings and substitutions, as many as ours took.
void solve_bare(const BareSystem& system, const solve::Effort& effort) {
  BareLibrary bare(system);
  for (int k = 0; k < effort.orderings; ++k) bare.order();
  for (int k = 0; k < effort.factorings; ++k) bare.factor();
  for (int k = 0; k < effort.steps; ++k) bare.solve();
  benchmark::DoNotOptimize(bare.answer().data());
}

void report(benchmark::State& state, const Seconds& best) {
  state.counters["bare_ms"] = best.bare * 1e3;
  state.counters["ours_ms"] = best.ours * 1e3;
  state.counters["ratio"] = best.ratio();
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  state.counters["peak_GiB"] = static_cast<double>(usage.ru_maxrss) / (1024 * 1024);
}

/// Resistors, constant currents: one ordering, one factoring, one substitution would do.
void linear(benchmark::State& state) {
  const auto circuit = large_circuit({static_cast<int>(state.range(0))});
  const auto system = bare_system(circuit);
  Seconds best;
  for (auto _ : state)
    take_turns(
        best, turns,
        [&] {
          solve_bare(system, {1, 1, 1});
        },
        [&] { solve_ours(circuit); });
  report(state, best);
}

void power_loads(benchmark::State& state) {
  LargeCircuit wanted{static_cast<int>(state.range(0))};
  wanted.power_loads = true;
  const auto circuit = large_circuit(wanted);
  const auto system = bare_system(circuit);
  const auto effort = solve_ours(circuit);
  Seconds best;
  for (auto _ : state)
    take_turns(
        best, turns, [&] { solve_bare(system, effort); }, [&] { solve_ours(circuit); });
  report(state, best);
  state.counters["orderings"] = effort.orderings;
  state.counters["factorings"] = effort.factorings;
  state.counters["steps"] = effort.steps;
}

/// Over the same circuit whose wires keep the temperature of the air; `bare_ms` is that one's.
void warm_wires(benchmark::State& state) {
  LargeCircuit wanted{static_cast<int>(state.range(0))};
  const auto cold = large_circuit(wanted);
  wanted.wires_warm = true;
  const auto warm = large_circuit(wanted);
  Seconds best;
  for (auto _ : state)
    take_turns(
        best, turns, [&] { solve_ours(cold); }, [&] { solve_ours(warm); });
  report(state, best);
}

BENCHMARK(linear)->Arg(1000)->Arg(100000)->Arg(1000000)->Unit(benchmark::kMillisecond);
BENCHMARK(power_loads)->Arg(1000)->Arg(100000)->Unit(benchmark::kMillisecond);
BENCHMARK(warm_wires)->Arg(1000)->Arg(100000)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace ohmtrail::bench
