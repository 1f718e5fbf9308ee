#pragma once
#include <algorithm>
#include <atomic>
#include <cstddef>
#include <thread>
#include <vector>

namespace ohmtrail::solve {

/// Calls `what(k)` for every k below `count`, on at most `jobs` threads, each k once, in no set order: so
/// every call writes to a place of its own. Returns when all are done.
template <class Do>
void in_parallel(std::size_t count, int jobs, Do&& what) {
  std::atomic<std::size_t> next{0};
  const auto work = [&] {
    for (std::size_t k = next++; k < count; k = next++) what(k);
  };
  const std::size_t threads = std::min(count, static_cast<std::size_t>(std::max(jobs, 1)));
  std::vector<std::jthread> others;
  for (std::size_t k = 1; k < threads; ++k) others.emplace_back(work);
  work();
}

}  // namespace ohmtrail::solve
