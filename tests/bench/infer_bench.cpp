#include <benchmark/benchmark.h>

#include <cstdio>

#include "support/inference_score.hpp"

namespace ohmtrail::test {
namespace {

SimulatedSurvey survey(int elements, std::size_t readings) {
  SurveyOptions options;
  options.layout.elements = elements;
  options.layout.loads = LoadKind::power;
  options.layout.branches = elements > 100 ? 8 : 0;  // one battery cannot feed 200 elements in a row
  options.faults = 2;
  SimulatedSurvey out = simulate(static_cast<std::uint64_t>(elements), options);
  if (out.system.readings.size() > readings) {
    out.system.readings.resize(readings);
  }
  return out;
}

// Goals: 60 elements and 40 readings in 20 ms, 200 elements and 100 readings in 100 ms.
void infer_system(benchmark::State& state) {
  const SimulatedSurvey given =
      survey(static_cast<int>(state.range(0)), static_cast<std::size_t>(state.range(1)));
  for (auto _ : state) {
    benchmark::DoNotOptimize(diagnose::infer(given.system));
  }
  state.counters["elements"] = static_cast<double>(given.truth.resistance.size());
  state.counters["readings"] = static_cast<double>(given.system.readings.size());
}
BENCHMARK(infer_system)->Args({60, 40})->Args({200, 100})->Unit(benchmark::kMillisecond);

// How often what was said to be faulty so often was so; printed once.
void reliability(benchmark::State& state) {
  for (auto _ : state) {
    Score score;
    for (std::uint64_t k = 0; k < 200; ++k) {
      SurveyOptions options;
      options.layout.shape = static_cast<Shape>(k % 3);
      options.layout.elements = 20 + static_cast<int>(k * 7 % 41);
      options.faults = 1 + static_cast<int>(k % 2);
      options.readings = k % 2 == 0 ? Readings::every_element : Readings::every_third_point;
      const SimulatedSurvey given = simulate(5000 + k, options);
      if (const auto result = diagnose::infer(given.system)) {
        score.add(given, *result);
      }
    }
    std::fputs(score.summary().c_str(), stdout);
  }
}
BENCHMARK(reliability)->Iterations(1)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace ohmtrail::test
