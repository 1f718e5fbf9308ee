#include "plan/bank_state.hpp"

#include <gtest/gtest.h>

#include <random>

#include "support/random_cases.hpp"

namespace ohmtrail::plan {
namespace {

/// By Millman's theorem, for one set of resistances.
double volts_of(const std::vector<BankString>& strings, const std::vector<double>& own, double total) {
  double pushed = -total, siemens = 0;
  for (std::size_t s = 0; s < strings.size(); ++s) {
    pushed += strings[s].emf / (strings[s].ohms + own[s]);
    siemens += 1 / (strings[s].ohms + own[s]);
  }
  return pushed / siemens;
}

TEST(BankState, AnOnlyStringSagsByItsResistance) {
  const auto state = bank_state({{12.6, 0.01, {}}}, {10, 20}, {{}});
  EXPECT_DOUBLE_EQ(state.volts.high, 12.5);
  EXPECT_DOUBLE_EQ(state.volts.low, 12.4);
  EXPECT_DOUBLE_EQ(state.posts.low, 12.4);
  EXPECT_EQ(state.own.high, 0);
}

TEST(BankState, LikeStringsShareAlike) {
  const BankString one{12.6, 0.01, {}};
  const auto state = bank_state({one, one}, {20, 20}, {{0.002, 0.002}, {0.002, 0.002}});
  EXPECT_NEAR(state.amperes[0].low, 10, 1e-9);
  EXPECT_NEAR(state.amperes[1].high, 10, 1e-9);
  EXPECT_NEAR(state.volts.low, 12.6 - 0.12, 1e-12);
  EXPECT_NEAR(state.own.low, 0.02, 1e-9);
}

TEST(BankState, AFullerStringChargesAnEmptierOne) {
  const auto state = bank_state({{13, 0.01, {}}, {12, 0.01, {}}}, {0, 0}, {{}, {}});
  EXPECT_NEAR(state.amperes[0].low, 50, 1e-9);
  EXPECT_NEAR(state.amperes[1].low, -50, 1e-9);
}

/// Whatever the resistances and the load within their intervals, the state lies within the intervals.
TEST(BankState, HoldsEveryStateOfItsIntervals) {
  std::mt19937 engine(5);
  const auto share = [&] { return std::uniform_real_distribution<double>(0, 1)(engine); };
  for (int turn = 0; turn < test::random_cases(200); ++turn) {
    std::vector<BankString> strings;
    std::vector<Interval> own;
    for (int s = 0; s < 2 + turn % 2; ++s) {
      strings.push_back({12 + share(), 0.002 + 0.01 * share(), {}});
      const double low = 0.01 * share();
      own.push_back({low, low + 0.01 * share()});
    }
    const Interval total{50 * share(), 50 + 50 * share()};
    const auto state = bank_state(strings, total, own);
    for (int pick = 0; pick < 20; ++pick) {
      std::vector<double> ohms;
      for (const Interval& one : own) ohms.push_back(one.low + share() * (one.high - one.low));
      const double load = total.low + share() * (total.high - total.low);
      const double volts = volts_of(strings, ohms, load);
      EXPECT_GE(volts, state.volts.low - 1e-9);
      EXPECT_LE(volts, state.volts.high + 1e-9);
      double most_power = -1e9;
      std::size_t leader = 0;
      for (std::size_t s = 0; s < strings.size(); ++s) {
        const double amperes = (strings[s].emf - volts) / (strings[s].ohms + ohms[s]);
        EXPECT_GE(amperes, state.amperes[s].low - 1e-9);
        EXPECT_LE(amperes, state.amperes[s].high + 1e-9);
        const double power = amperes * (strings[s].emf - strings[s].ohms * amperes);
        if (power > most_power) most_power = power, leader = s;
      }
      const double amperes = (strings[leader].emf - volts) / (strings[leader].ohms + ohms[leader]);
      const double posts = strings[leader].emf - strings[leader].ohms * amperes;
      EXPECT_GE(posts, state.posts.low - 1e-9);
      EXPECT_LE(posts, state.posts.high + 1e-9);
      EXPECT_GE(amperes * ohms[leader], state.own.low - 1e-9);
      EXPECT_LE(amperes * ohms[leader], state.own.high + 1e-9);
    }
  }
}

TEST(Interval, NarrowsToNothing) {
  Interval interval{1, 3};
  EXPECT_TRUE(interval.narrow({2, 5}));
  EXPECT_EQ(interval.low, 2);
  EXPECT_FALSE(interval.narrow({4, 5}));
  Interval all = Interval::none();
  all.include(2), all.include(-1);
  EXPECT_EQ(all.low, -1);
  EXPECT_EQ(all.high, 2);
}

}  // namespace
}  // namespace ohmtrail::plan
