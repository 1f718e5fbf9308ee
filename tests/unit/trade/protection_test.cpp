#include "ohmtrail/trade/protection.hpp"

#include <gmock/gmock.h>

#include "ohmtrail/trade/fuse_ladder.hpp"
#include "ohmtrail/trade/gauge.hpp"

namespace ohmtrail::trade {
namespace {

using testing::HasSubstr;
using units::Current;
using units::Voltage;

TEST(LargestFuse, BelowFiftyVoltsIsOneAndAHalfTimesTheWire) {
  for (const double volts : {6.0, 12.0, 48.0, 49.9}) {
    const auto rule = largest_fuse(Current{40}, Voltage{volts});
    EXPECT_DOUBLE_EQ(rule.limit.si(), 60);
    EXPECT_THAT(rule.source, HasSubstr("183.455(c)(1)"));
  }
}

TEST(LargestFuse, FromFiftyVoltsIsTheNextStandardRating) {
  const auto rule = largest_fuse(Current{42}, Voltage{50});
  EXPECT_THAT(rule.source, HasSubstr("183.455(c)(2)"));
  const auto next = rating_at_least(all_fuse_ratings(), Current{42});
  ASSERT_TRUE(next);
  EXPECT_EQ(rule.limit, *next);
  EXPECT_EQ(largest_fuse(Current{40}, Voltage{60}).limit, Current{40}) << "a standard rating itself";
}

/// Whatever the wire: no fuse above 150 % of it, none below the wire itself.
TEST(LargestFuse, KeepsItsBounds) {
  for (double amperes = 1; amperes < 1000; amperes *= 1.07)
    for (const double volts : {12.0, 60.0}) {
      const double limit = largest_fuse(Current{amperes}, Voltage{volts}).limit.si();
      EXPECT_GE(limit, amperes);
      EXPECT_LE(limit, 1.5 * amperes * (1 + 1e-12));
    }
}

TEST(FuseDistances, AreThoseOfTheRules) {
  const FuseDistances& rules = fuse_distances();
  EXPECT_NEAR(rules.plain.limit.si(), 7 * 0.0254, 1e-12);          // 33 CFR 183.455(b)(1)
  EXPECT_NEAR(rules.sheathed.limit.si(), 40 * 0.0254, 1e-12);      // 33 CFR 183.455(b)(2)
  EXPECT_NEAR(rules.from_battery.limit.si(), 72 * 0.0254, 1e-12);  // 33 CFR 183.460(a)
  EXPECT_NEAR(rules.park_trailer.limit.si(), 18 * 0.0254, 1e-12);  // NEC 552.10(E)(4)
  for (const auto* rule :
       {&rules.plain, &rules.sheathed, &rules.from_battery, &rules.european, &rules.park_trailer})
    EXPECT_FALSE(rule->source.empty());
}

TEST(VehicleFuses, GrowWithTheWireAndEndWithTheTable) {
  double last = 0;
  int rows = 0;
  for (int number = 20; number >= -3; --number) {
    const auto rule = vehicle_fuse_limit(awg(number));
    if (!rule) continue;
    ++rows;
    EXPECT_GT(rule->limit.si(), last) << number;
    EXPECT_THAT(rule->source, HasSubstr("551.10"));
    last = rule->limit.si();
  }
  EXPECT_GE(rows, 4);
  EXPECT_FALSE(vehicle_fuse_limit(awg(-3))) << "beyond the table";
  EXPECT_FALSE(vehicle_fuse_limit(*parse_gauge("2.5 mm2"))) << "it is one of AWG";
}

TEST(Interrupting, MoreBatteryAsksForNoLess) {
  for (const double volts : {12.0, 24.0, 32.0, 48.0}) {
    double main = 0, branch = 0;
    for (double amperes = 100; amperes < 5000; amperes += 50) {
      const Interrupting least = interrupting_capacity(Voltage{volts}, Current{amperes});
      EXPECT_GE(least.main.si(), main);
      EXPECT_GE(least.branch.si(), branch);
      EXPECT_GE(least.main, least.branch) << "a main breaker sees the whole bank";
      EXPECT_FALSE(least.source.empty());
      main = least.main.si(), branch = least.branch.si();
    }
  }
}

TEST(Interrupting, FromThirtyTwoVoltsOtherRowsHold) {
  const Current cold_cranking{1200};
  EXPECT_EQ(interrupting_capacity(Voltage{12}, cold_cranking).main,
            interrupting_capacity(Voltage{24}, cold_cranking).main);
  EXPECT_NE(interrupting_capacity(Voltage{12}, cold_cranking).main,
            interrupting_capacity(Voltage{32}, cold_cranking).main);
  EXPECT_EQ(interrupting_capacity(Voltage{48}, cold_cranking).main,
            interrupting_capacity(Voltage{32}, cold_cranking).main);
}

}  // namespace
}  // namespace ohmtrail::trade
