// The least current of a node of the load tree, against the current of designs that are solved.
#include "plan/node_current.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace ohmtrail::plan {
namespace {

/// 12.4 to 12.6 V at the posts; a load of 60 W and one of 3 Ω, 5 A beside them.
NodeCurrent mixed() {
  NodeCurrent node;
  node.given = 5;
  node.watts = 60;
  node.siemens = 1.0 / 3;
  node.terminal = {12.4, 12.6};
  node.lowest_volts = 1.26;
  node.most_lag = 100;
  return node;
}

TEST(NodeCurrent, IsTheSumOfWhatEachKindOfLoadTakes) {
  const NodeCurrent node = mixed();
  EXPECT_NEAR(node.at(0.4, {}), 5 + 60 / 12.2 + 12.0 / 3, 1e-12);
}

TEST(NodeCurrent, MoreDropOnTheWayMakesPowerTakeMoreAndResistanceLess) {
  const NodeCurrent node = mixed();
  Label label;
  label.sag = 60 * 0.5;  // half a volt more to the 60 W
  label.lag = 0.6 / 3;   // and 0.6 V more to the 3 Ω
  EXPECT_NEAR(node.at(0.4, label), 5 + 60 / 11.7 + 11.4 / 3, 1e-12);
}

TEST(NodeCurrent, IsNeverBelowWhatTheBoundsSay) {
  NodeCurrent node = mixed();
  node.least_power = 7;
  node.least_resistive = 6;
  EXPECT_NEAR(node.at(0.4, {}), 5 + 7 + 6, 1e-12);
  node.least_power = node.least_resistive = 0;
  node.least_sag = 60 * 0.5;
  EXPECT_NEAR(node.at(0.4, {}), 5 + 60 / 11.7 + 12.0 / 3, 1e-12) << "the bounds know of more drop than it";
  node.most_lag = 0;
  Label label;
  label.lag = 1;
  EXPECT_NEAR(node.at(0.4, label), 5 + 60 / 11.7 + 12.0 / 3, 1e-12) << "and of less";
}

TEST(NodeCurrent, BetweenTwoDropsIsBelowBoth) {
  const NodeCurrent node = mixed();
  for (const double low : {0.0, 0.3, 0.9})
    for (const double high : {0.9, 1.2, 2.0})
      for (double d = low; d <= high; d += 0.1)
        EXPECT_LE(node.between(low, high, {}), node.at(d, {}) + 1e-12);
}

TEST(NodeCurrent, SlopeBoundsHowFastItRises) {
  const NodeCurrent node = mixed();
  for (double d = 0; d < 3; d += 0.1) {
    const double rise = (node.at(d + 1e-6, {}) - node.at(d, {})) / 1e-6;
    EXPECT_LE(rise, node.slope(d, {}) * (1 + 1e-4));
  }
  NodeCurrent only_resistance = node;
  only_resistance.watts = 0;
  EXPECT_EQ(only_resistance.slope(1, {}), 0);
}

/// Below a tenth of the bank's voltage no load has a state that counts: the current stays finite there.
TEST(NodeCurrent, StaysFiniteWhereNothingIsLeft) {
  const NodeCurrent node = mixed();
  EXPECT_NEAR(node.at(12.6, {}), 5 + 60 / 1.26, 1e-9);
  EXPECT_NEAR(node.at(50, {}), 5 + 60 / 1.26, 1e-9);
}

}  // namespace
}  // namespace ohmtrail::plan
