// The next reading: how long one answer takes, and how many readings a search takes beside plain probing from
// end to end, which reads across one thing after the other from the battery on until it meets the bad one.
#include <benchmark/benchmark.h>
#include <fmt/core.h>

#include <algorithm>
#include <cstdio>
#include <set>
#include <string>
#include <vector>

#include "ohmtrail/diagnose/next.hpp"
#include "support/probing_game.hpp"

namespace ohmtrail::test {
namespace {

constexpr int games = 200;

SimulatedSurvey opened(std::uint64_t seed, const LayoutOptions& layout) {
  SurveyOptions options;
  options.layout = layout;
  options.readings = Readings::loads_only;
  return simulate(seed, options);
}

// Goal: one answer below 100 ms at 60 elements. Beside it the inference alone, which is part of it.
void one_answer(benchmark::State& state) {
  LayoutOptions layout;
  layout.elements = static_cast<int>(state.range(0));
  layout.branches = layout.elements > 100 ? 8 : 0;
  layout.shape = static_cast<Shape>(state.range(1));
  layout.loads = LoadKind::power;
  const SimulatedSurvey given = opened(3, layout);
  for (auto _ : state) benchmark::DoNotOptimize(diagnose::next_reading(given.system));
  state.counters["elements"] = static_cast<double>(passive_elements(given.system));
  state.counters["cases"] = static_cast<double>(given.system.cases.size());
}
void inference_alone(benchmark::State& state) {
  LayoutOptions layout;
  layout.elements = static_cast<int>(state.range(0));
  layout.loads = LoadKind::power;
  const SimulatedSurvey given = opened(3, layout);
  for (auto _ : state) benchmark::DoNotOptimize(diagnose::infer(given.system));
}

/// Readings of plain probing: the place of the bad thing in the order of the file, which is that of the path.
int end_to_end(const netlist::System& system, const std::string& planted) {
  std::vector<std::string> order;
  for (const auto& e : network::build(system, system.cases[1]).elements) {
    using network::Role;
    if (e.role == Role::load || e.role == Role::battery) continue;
    const std::string repair = repair_owner(e.id);
    if (std::find(order.begin(), order.end(), repair) == order.end()) order.push_back(repair);
  }
  const auto place = std::find(order.begin(), order.end(), planted);
  return place == order.end() ? 0 : static_cast<int>(place - order.begin()) + 1;
}

void print(const char* title, const std::vector<int>& readings) {
  std::vector<int> count(32, 0);
  double sum = 0;
  for (const int one : readings) {
    ++count[static_cast<std::size_t>(std::min(one, 31))];
    sum += one;
  }
  std::string out = fmt::format("{}: mean {:.2f}\n", title, sum / static_cast<double>(readings.size()));
  for (std::size_t k = 0; k < count.size(); ++k)
    if (count[k] > 0)
      out += fmt::format("  {:2} readings {:4} {}\n", k, count[k],
                         std::string(static_cast<std::size_t>(count[k]), '#'));
  std::fputs(out.c_str(), stdout);
}

// 20 to 60 elements, one fault; readings beyond the first three, until one repair has 95 %.
void game(benchmark::State& state) {
  for (auto _ : state) {
    std::vector<int> guided, plain;
    double right = 0, log2_elements = 0;
    SeededRandom sizes(77);
    for (int g = 0; g < games; ++g) {
      LayoutOptions layout;
      layout.elements = sizes.integer(20, 60);
      const Played played = play(static_cast<std::uint64_t>(g) + 500, layout);
      guided.push_back(played.until_sure);
      plain.push_back(end_to_end(opened(static_cast<std::uint64_t>(g) + 500, layout).system, played.planted));
      right += played.right ? 1 : 0;
      log2_elements += std::log2(played.elements);
    }
    print("guided, until 95 % sure", guided);
    print("from end to end, until it is met", plain);
    state.counters["right"] = right / games;
    state.counters["log2_elements"] = log2_elements / games;
  }
}

BENCHMARK(one_answer)
    ->ArgNames({"elements", "shape"})
    ->Args({60, 0})
    ->Args({60, 1})
    ->Args({60, 2})
    ->Args({200, 0})
    ->Args({200, 1})
    ->Args({200, 2})
    ->Unit(benchmark::kMillisecond);
BENCHMARK(inference_alone)->Arg(60)->Unit(benchmark::kMillisecond);
BENCHMARK(game)->Iterations(1)->Unit(benchmark::kSecond);

}  // namespace
}  // namespace ohmtrail::test
