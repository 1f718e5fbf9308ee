#include "solve/by_island.hpp"

#include <gtest/gtest.h>

namespace ohmtrail::solve {
namespace {

TEST(ByIsland, SumsInTheOrderGiven) {
  std::vector<double> totals{1, 0, 0};
  {
    SumByIsland sums(totals);
    sums.add(0, 1e16);
    sums.add(0, 1);
    sums.add(2, 5);
    sums.add(0, -1e16);
    sums.add(2, 7);
  }
  EXPECT_EQ(totals, (std::vector<double>{((1 + 1e16) + 1) - 1e16, 0, 12}));
}

TEST(ByIsland, TakesTheLargest) {
  std::vector<double> totals{3, 0};
  {
    LargestByIsland largest(totals);
    largest.add(0, 2);
    largest.add(1, 4);
    largest.add(1, 1);
    largest.add(0, 5);
  }
  EXPECT_EQ(totals, (std::vector<double>{5, 4}));
}

TEST(ByIsland, WithoutValuesTheTotalsStay) {
  std::vector<double> totals{3, -1};
  { const SumByIsland sums(totals); }
  EXPECT_EQ(totals, (std::vector<double>{3, -1}));
}

}  // namespace
}  // namespace ohmtrail::solve
