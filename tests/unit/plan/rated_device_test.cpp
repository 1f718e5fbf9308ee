// The resistance of a fuse whose rating follows the cable: what `resistance` says holds for every design.
#include "plan/rated_device.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "support/random_cases.hpp"

namespace ohmtrail::plan {
namespace {

Device ladder_of(double rated) {
  Device device;
  device.ladder = {5, 10, 15, 20, 30, 40, 60, 80};
  for (const double amperes : device.ladder) device.ohms.push_back(0.05 / amperes);
  device.rated = rated;
  device.found_ohms = 0.0123;
  return device;
}

/// The rule itself: it stays where it serves, else the least that does; 0 where none does.
double chosen(const Device& device, double amperes, double ampacity) {
  const double least = 1.25 * amperes;
  if (device.rated >= least && device.rated <= ampacity) return device.rated;
  const auto first = std::lower_bound(device.ladder.begin(), device.ladder.end(), least);
  return first == device.ladder.end() || *first > ampacity ? 0 : *first;
}

double ohms_of(const Device& device, double rating) {
  if (rating == device.rated) return device.found_ohms;
  const auto place = std::find(device.ladder.begin(), device.ladder.end(), rating) - device.ladder.begin();
  return device.ohms[static_cast<std::size_t>(place)];
}

TEST(RatedDevice, KeepsItsRatingWhereThatServes) {
  Device device = ladder_of(30);
  device.most = {15, 16};
  const Interval found = device.resistance({50, 60});
  EXPECT_EQ(found.low, device.found_ohms);
  EXPECT_EQ(found.high, device.found_ohms);
}

TEST(RatedDevice, TooSmallItTakesTheLeastThatServes) {
  Device device = ladder_of(10);
  device.most = {20, 20.1};  // 25 A and a bit: 30
  const Interval found = device.resistance({50, 60});
  EXPECT_EQ(found.low, 0.05 / 30);
  EXPECT_EQ(found.high, 0.05 / 30);
}

TEST(RatedDevice, AboveTheCableItGoesDown) {
  Device device = ladder_of(80);
  device.most = {10, 10};
  const Interval found = device.resistance({30, 30});
  EXPECT_EQ(found.low, 0.05 / 15);
  EXPECT_EQ(found.high, 0.05 / 15);
}

TEST(RatedDevice, WhereNoneServesItIsAsFound) {
  Device device = ladder_of(10);
  device.most = {70, 75};
  EXPECT_EQ(device.resistance({40, 50}).high, device.found_ohms);
}

TEST(RatedDevice, HoldsForEveryCurrentAndCableWithinTheRanges) {
  std::mt19937 engine(41);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine);
  };
  int served = 0;
  for (int turn = 0; turn < test::random_cases(2000); ++turn) {
    Device device = ladder_of(turn % 4 == 0 ? 33 : ladder_of(0).ladder[static_cast<std::size_t>(turn % 8)]);
    device.most.low = between(1, 50);
    device.most.high = device.most.low * between(1, 1.6);
    Interval ampacity;
    ampacity.low = between(8, 90);
    ampacity.high = ampacity.low * between(1, 1.6);
    const Interval found = device.resistance(ampacity);
    const double rating =
        chosen(device, between(device.most.low, device.most.high), between(ampacity.low, ampacity.high));
    if (rating == 0) continue;
    ++served;
    EXPECT_LE(found.low, ohms_of(device, rating)) << rating;
    EXPECT_GE(found.high, ohms_of(device, rating)) << rating;
  }
  EXPECT_GT(served, test::random_cases(2000) / 4);
}

}  // namespace
}  // namespace ohmtrail::plan
