#pragma once
#include <algorithm>
#include <ctime>
#include <limits>

#include "cli/doors/heap.hpp"

/// Two ways of doing a thing, timed by turns in one run, so that a busy machine slows both. Seconds are those
/// of the processor, and the quickest turn of each counts: whatever else ran only ever adds.
namespace ohmtrail::bench {

/// For both ways, as in the program.
inline const bool freed_memory_is_kept = (cli::keep_freed_memory(), cli::have_large_pages(), true);

struct Seconds {
  double bare = std::numeric_limits<double>::infinity();
  double ours = std::numeric_limits<double>::infinity();
  [[nodiscard]] double ratio() const { return ours / bare; }
};

inline double processor_seconds() {
  timespec now{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) * 1e-9;
}

template <class Do>
double seconds_of(Do&& what) {
  const double start = processor_seconds();
  what();
  return processor_seconds() - start;
}

template <class Bare, class Ours>
void take_turns(Seconds& best, int turns, Bare&& bare, Ours&& ours) {
  for (int turn = 0; turn < turns; ++turn) {
    best.bare = std::min(best.bare, seconds_of(bare));
    best.ours = std::min(best.ours, seconds_of(ours));
  }
}

}  // namespace ohmtrail::bench
