// The whole program, from its start to its end: processor time of a child, so that a busy machine does not
// show.
#include <benchmark/benchmark.h>
#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <limits>
#include <string>
#include <vector>

#include "bench/large_netlist.hpp"

namespace ohmtrail::bench {
namespace {

double milliseconds(const timeval& time) {
  return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_usec) * 1e-3;
}

double run(std::vector<std::string> arguments) {
  std::vector<char*> argv;
  for (std::string& argument : arguments) argv.push_back(argument.data());
  argv.push_back(nullptr);
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
  pid_t child = 0;
  if (posix_spawn(&child, argv[0], &actions, nullptr, argv.data(), environ) != 0) std::abort();
  posix_spawn_file_actions_destroy(&actions);
  int status = 0;
  rusage usage{};
  wait4(child, &status, 0, &usage);
  if (!WIFEXITED(status) || WEXITSTATUS(status) != 0) std::abort();
  return milliseconds(usage.ru_utime) + milliseconds(usage.ru_stime);
}

void measure(benchmark::State& state, const std::vector<std::string>& arguments) {
  double best = std::numeric_limits<double>::infinity();
  for (auto _ : state) best = std::min(best, run(arguments));
  state.counters["ours_ms"] = best;
}

void start(benchmark::State& state) {
  measure(state, {OHMTRAIL_PROGRAM, "--version"});
}

/// A battery and 18 cables with fuses, lugs, returns and loads: 145 elements.
void solve_a_boat(benchmark::State& state) {
  std::string path = "/tmp/ohmtrail-bench-XXXXXX";
  const int file = mkstemp(path.data());
  const std::string text = large_netlist(18);
  if (write(file, text.data(), text.size()) != static_cast<ssize_t>(text.size())) std::abort();
  close(file);
  measure(state, {OHMTRAIL_PROGRAM, "solve", path});
  std::remove(path.c_str());
}

BENCHMARK(start)->Iterations(30)->Unit(benchmark::kMillisecond);
BENCHMARK(solve_a_boat)->Iterations(30)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace ohmtrail::bench
