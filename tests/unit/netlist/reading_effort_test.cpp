#include <gtest/gtest.h>

#include "bench/large_netlist.hpp"
#include "ohmtrail/netlist/read.hpp"
#include "support/allocations.hpp"

/// How much work reading is, counted, not timed.
namespace ohmtrail::netlist {
namespace {

test::Allocations reading(int cables) {
  const std::string text = bench::large_netlist(cables);
  return test::allocations_of([&] { EXPECT_TRUE(read(text)); });
}

/// Short names and words lie where they are kept: lists grow, and nothing else is asked for.
TEST(ReadingEffort, AsksTheHeapForListsOnly) {
  const test::Allocations small = reading(500), large = reading(4000);
  EXPECT_GT(small.calls, 0U);
  EXPECT_LE(large.calls, small.calls + 20);
}

TEST(ReadingEffort, MemoryIsInProportionToTheFile) {
  const double small = static_cast<double>(reading(1000).bytes),
               large = static_cast<double>(reading(8000).bytes);
  EXPECT_LE(large, 8.5 * small);
  EXPECT_LE(large, 10 * static_cast<double>(bench::large_netlist(8000).size()));
}

}  // namespace
}  // namespace ohmtrail::netlist
