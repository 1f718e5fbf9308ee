// What every element made good would give back, over one solve, and over one full factoring each.
#include <benchmark/benchmark.h>

#include "bench/bare_library.hpp"
#include "bench/fastest.hpp"
#include "bench/large_circuit.hpp"
#include "ohmtrail/solve/solver.hpp"

namespace ohmtrail::bench {
namespace {

constexpr int turns = 3;

struct Asked {
  solve::Circuit circuit;
  std::vector<int> loads;
  std::vector<solve::Replacement> cures;  ///< every wire and lug as good as a tenth of what it is
};

Asked asked(int elements, double rings, bool power_loads) {
  LargeCircuit wanted{elements};
  wanted.rings = rings;
  wanted.power_loads = power_loads;
  Asked all{large_circuit(wanted), {}, {}};
  for (std::size_t b = 0; b < all.circuit.branches.size(); ++b) {
    const solve::Branch& branch = all.circuit.branches[b];
    if (branch.nominal > 0) all.loads.push_back(static_cast<int>(b));
    if (branch.law != solve::Law::resistor) continue;
    all.cures.push_back({static_cast<int>(b), branch});
    all.cures.back().by.resistance /= 10;
  }
  return all;
}

void report(benchmark::State& state, const Seconds& best) {
  state.counters["bare_ms"] = best.bare * 1e3;
  state.counters["ours_ms"] = best.ours * 1e3;
  state.counters["ratio"] = best.ratio();
}

/// All what-ifs of a radial system; `bare_ms` is one solve of it by ours.
void radial(benchmark::State& state) {
  const Asked all = asked(static_cast<int>(state.range(0)), 0, state.range(1) != 0);
  solve::Solver solver(all.circuit);
  if (!solver.solve()) std::abort();
  Seconds best;
  for (auto _ : state)
    take_turns(
        best, turns, [&] { benchmark::DoNotOptimize(solve::Solver(all.circuit).solve()); },
        [&] { benchmark::DoNotOptimize(solver.estimate_best_gains(all.loads, all.cures)); });
  report(state, best);
}

/// One what-if of a meshed system; `bare_ms` is one back-substitution by the bare library.
void meshed(benchmark::State& state) {
  Asked all = asked(static_cast<int>(state.range(0)), 0.01, false);
  constexpr std::size_t spots = 50;
  all.cures.resize(spots);
  solve::Solver solver(all.circuit);
  if (!solver.solve()) std::abort();
  const auto system = bare_system(all.circuit);
  BareLibrary bare(system);
  bare.order();
  bare.factor();
  Seconds best;
  for (auto _ : state)
    take_turns(
        best, turns,
        [&] {
          for (std::size_t k = 0; k < spots; ++k) bare.solve();
        },
        [&] { benchmark::DoNotOptimize(solver.estimate_best_gains(all.loads, all.cures)); });
  report(state, best);
}

/// Every element solved again to full accuracy; `bare_ms` is as many full factorings with their substitution
/// by the bare library.
void solved_again(benchmark::State& state) {
  const Asked all = asked(static_cast<int>(state.range(0)), 0.01, false);
  solve::Solver solver(all.circuit);
  if (!solver.solve()) std::abort();
  const auto system = bare_system(all.circuit);
  Seconds best;
  for (auto _ : state)
    take_turns(
        best, 1,
        [&] {
          for (std::size_t k = 0; k < all.cures.size(); ++k) {
            BareLibrary bare(system);
            bare.order();
            bare.factor();
            bare.solve();
          }
        },
        [&] {
          for (const auto& cure : all.cures)
            benchmark::DoNotOptimize(solver.with_resistance(cure.branch, cure.by.resistance));
        });
  report(state, best);
}

BENCHMARK(radial)
    ->Args({100000, 0})
    ->Args({100000, 1})
    ->ArgNames({"", "power"})
    ->Unit(benchmark::kMillisecond);
BENCHMARK(meshed)->Arg(100000)->Unit(benchmark::kMillisecond);
BENCHMARK(solved_again)->Arg(1000)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace ohmtrail::bench
