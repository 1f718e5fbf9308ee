#include "solve/parallel.hpp"

#include <gtest/gtest.h>

#include <mutex>
#include <numeric>
#include <set>

namespace ohmtrail::solve {
namespace {

TEST(InParallel, EveryIndexOnce) {
  for (const int jobs : {1, 2, 7}) {
    std::vector<int> called(100, 0);
    in_parallel(called.size(), jobs, [&](std::size_t k) { ++called[k]; });
    EXPECT_EQ(called, std::vector<int>(100, 1)) << jobs;
  }
}

TEST(InParallel, NothingToDo) {
  in_parallel(0, 4, [](std::size_t) { FAIL(); });
}

TEST(InParallel, NoMoreThreadsThanAskedFor) {
  for (const int jobs : {-1, 0, 1, 3}) {
    std::mutex lock;
    std::set<std::thread::id> threads;
    in_parallel(50, jobs, [&](std::size_t) {
      const std::lock_guard guard(lock);
      threads.insert(std::this_thread::get_id());
    });
    EXPECT_LE(threads.size(), static_cast<std::size_t>(std::max(jobs, 1)));
    EXPECT_GE(threads.size(), 1U);
  }
}

TEST(InParallel, SameResultAsOne) {
  const auto squares = [](int jobs) {
    std::vector<std::size_t> out(1000);
    in_parallel(out.size(), jobs, [&](std::size_t k) { out[k] = k * k; });
    return out;
  };
  EXPECT_EQ(squares(1), squares(4));
}

}  // namespace
}  // namespace ohmtrail::solve
