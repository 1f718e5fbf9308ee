#include "ohmtrail/diagnose/point_in_words.hpp"

#include <gtest/gtest.h>

#include "ohmtrail/netlist/read.hpp"

namespace ohmtrail::diagnose {
namespace {

netlist::System pump_circuit() {
  const auto read = netlist::read(R"({"ohmtrail":1,"system":{"name":"Dinghy Invented Smew","nominal":12},
    "batteries":[{"id":"bat","plus":"p","minus":"m","nominal":12,"emf":12.7,"resistance":"9 mohm"}],
    "runs":[{"id":"lead","from":"p","to":"q","gauge":"2.5 mm2","length":"2 m","return":{"from":"n","to":"m"}}],
    "loads":[{"id":"pump","plus":"q","minus":"n","takes":"3 A"}],
    "points":{"q":{"place":"in the bilge"}},
    "cases":[{"name":"on","on":["pump"]}]})");
  EXPECT_TRUE(read) << (read ? "" : netlist::format(read.error().front(), "pump"));
  return read ? read->system : netlist::System{};
}

TEST(PointInWords, TellsTheStudAndWhereItIs) {
  const netlist::System system = pump_circuit();
  EXPECT_EQ(point_in_words(system, "p"), "\"p\"");
  EXPECT_EQ(point_in_words(system, "q"), "\"q\" (in the bilge)");
}

TEST(PointInWords, TellsWhichPartOfALug) {
  const netlist::System system = pump_circuit();
  EXPECT_EQ(point_in_words(system, "lead@to"), "the barrel of \"lead\" at \"q\" (in the bilge)");
  EXPECT_EQ(point_in_words(system, "lead@return-from"), "the barrel of the return of \"lead\" at \"n\"");
}

TEST(PointInWords, FindsTheStudOfADerivedPoint) {
  const netlist::System system = pump_circuit();
  EXPECT_EQ(stud_of(system, "lead@from"), "p");
  EXPECT_EQ(stud_of(system, "lead@to"), "q");
  EXPECT_EQ(stud_of(system, "lead@return-to"), "m");
  EXPECT_EQ(stud_of(system, "q"), "");
  EXPECT_EQ(stud_of(system, "nothing@to"), "");
}

TEST(ClampInWords, SaysNothingOfTheArrowWhereTheCurrentIsAPlus) {
  EXPECT_EQ(clamp_in_words(pump_circuit(), "lead", 3), "clamp round \"lead\"");
}

TEST(ClampInWords, TellsWhichWayTheArrowPointsWhereAMinusIsRight) {
  const netlist::System system = pump_circuit();
  EXPECT_EQ(clamp_in_words(system, "lead", -3),
            "clamp round \"lead\", arrow towards \"q\" (it shows a minus)");
  EXPECT_EQ(clamp_in_words(system, "lead/return", -3),
            "clamp round \"lead/return\", arrow towards \"m\" (it shows a minus)");
}

/// A battery's current is a plus from plus to minus through it: while it charges.
TEST(ClampInWords, TheArrowOfABatteryPointsIntoItsPlusPost) {
  EXPECT_EQ(clamp_in_words(pump_circuit(), "bat", -3),
            "clamp round \"bat\", arrow towards \"p\" (it shows a minus)");
}

TEST(ClampInWords, NoCurrentHasNoDirection) {
  EXPECT_EQ(clamp_in_words(pump_circuit(), "lead", -0.01), "clamp round \"lead\"");
}

}  // namespace
}  // namespace ohmtrail::diagnose
