// Fetching ahead may change nothing but the time, least of all read beyond the end.
#include "solve/expect.hpp"

#include <gtest/gtest.h>

namespace ohmtrail::solve {
namespace {

/// Notes which points were looked at.
struct Looked {
  mutable std::vector<std::size_t> points;
  const int& operator[](std::size_t point) const {
    points.push_back(point);
    return nothing;
  }
  int nothing = 0;
};

std::vector<Branch> chain(int branches) {
  std::vector<Branch> made(static_cast<std::size_t>(branches));
  for (int b = 0; b < branches; ++b) {
    made[static_cast<std::size_t>(b)].from = b;
    made[static_cast<std::size_t>(b)].to = b + 1;
  }
  return made;
}

TEST(ExpectPoints, LooksAheadOfTheBranch) {
  const Looked looked;
  expect_points(chain(100), 10, looked);
  ASSERT_EQ(looked.points.size(), 2U);
  EXPECT_GT(looked.points[0], 10U);
  EXPECT_EQ(looked.points[1], looked.points[0] + 1);
}

TEST(ExpectPoints, NeverBeyondTheLastBranch) {
  for (const int branches : {1, 2, 15, 16, 17, 40}) {
    const Looked looked;
    for (int b = 0; b < branches; ++b) expect_points(chain(branches), static_cast<std::size_t>(b), looked);
    for (const std::size_t point : looked.points) EXPECT_LE(point, static_cast<std::size_t>(branches));
    EXPECT_EQ(looked.points.empty(), branches <= 16) << branches;
  }
}

}  // namespace
}  // namespace ohmtrail::solve
