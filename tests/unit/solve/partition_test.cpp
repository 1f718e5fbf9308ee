#include "solve/partition.hpp"

#include <gtest/gtest.h>

#include <random>

namespace ohmtrail::solve {
namespace {

TEST(Partition, EachMemberBeginsAlone) {
  Partition parts(3);
  for (int k = 0; k < 3; ++k) EXPECT_EQ(parts.find(k), k);
}

TEST(Partition, JoinTellsWhetherTheyWereApart) {
  Partition parts(4);
  EXPECT_TRUE(parts.join(0, 1));
  EXPECT_TRUE(parts.join(2, 3));
  EXPECT_TRUE(parts.join(1, 2));
  EXPECT_FALSE(parts.join(0, 3));
  EXPECT_FALSE(parts.join(2, 2));
  EXPECT_EQ(parts.find(0), parts.find(3));
}

TEST(Partition, AgreesWithRelabelling) {
  std::mt19937 random(11);
  constexpr std::size_t count = 60;
  Partition parts(static_cast<int>(count));
  std::vector<std::size_t> label(count);
  for (std::size_t k = 0; k < count; ++k) label[k] = k;
  for (int round = 0; round < 80; ++round) {
    const std::size_t a = random() % count, b = random() % count;
    const std::size_t old = label[b], kept = label[a];
    EXPECT_EQ(parts.join(static_cast<int>(a), static_cast<int>(b)), old != kept);
    for (std::size_t& one : label) one = one == old ? kept : one;
    for (std::size_t k = 0; k < count; ++k)
      EXPECT_EQ(parts.find(static_cast<int>(k)) == parts.find(static_cast<int>(a)), label[k] == kept);
  }
}

}  // namespace
}  // namespace ohmtrail::solve
