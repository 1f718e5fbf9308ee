#include "cli/doors/heap.hpp"

#include <gtest/gtest.h>
#include <sys/resource.h>

#include <vector>

namespace ohmtrail::cli {
namespace {

/// How often the kernel had to find a page for an array that was made, filled and freed.
long page_faults_of_an_array() {
  constexpr std::size_t bytes = std::size_t{48} << 20U;
  rusage before{}, after{};
  getrusage(RUSAGE_SELF, &before);
  const std::vector<char> array(bytes, 'x');
  getrusage(RUSAGE_SELF, &after);
  EXPECT_EQ(array.back(), 'x');
  return after.ru_minflt - before.ru_minflt;
}

TEST(Heap, WhatWasFreedIsNotAskedOfTheKernelAgain) {
#ifdef __SANITIZE_ADDRESS__
  GTEST_SKIP() << "the sanitizer has a heap of its own";
#endif
  keep_freed_memory();
  const long first = page_faults_of_an_array();
  EXPECT_LE(page_faults_of_an_array(), first / 20);
}

}  // namespace
}  // namespace ohmtrail::cli
