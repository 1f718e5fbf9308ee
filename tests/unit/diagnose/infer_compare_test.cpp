#include <gtest/gtest.h>

#include <algorithm>

#include "ohmtrail/diagnose/compare.hpp"
#include "ohmtrail/netlist/read.hpp"
#include "support/simulated_survey.hpp"
#include "unit/diagnose/feed_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

test::SimulatedSurvey survey() {
  test::SurveyOptions options;
  options.layout.elements = 30;
  options.battery_may_fail = false;
  return test::simulate(21, options);
}

// A netlist whose elements carry what they have, without readings.
netlist::System with_everything_as_true(netlist::System system,
                                        const std::map<std::string, double>& resistance) {
  system.readings.clear();
  for (auto& run : system.runs) {
    run.end_from.resistances.as_found = units::Resistance{resistance.at(run.id + "/from")};
    run.wire.as_found = units::Resistance{resistance.at(run.id + "/wire")};
    run.end_to.resistances.as_found = units::Resistance{resistance.at(run.id + "/to")};
  }
  for (auto& one : system.joints) one.resistances.as_found = units::Resistance{resistance.at(one.id)};
  for (auto& one : system.switches) one.resistances.as_found = units::Resistance{resistance.at(one.id)};
  for (auto& one : system.fuses) one.resistances.as_found = units::Resistance{resistance.at(one.id)};
  return system;
}

double sound_of(const netlist::System& system, const std::string& id) {
  const auto network = network::build(system, system.cases.front());
  return network.elements[static_cast<std::size_t>(*network.element(id))].sound->si();
}

TEST(Compare, SameSurveyIsNoChange) {
  const auto one = survey();
  const auto result = compare(one.system, one.system);
  ASSERT_TRUE(result);
  EXPECT_TRUE(result->cured.empty());
  EXPECT_TRUE(result->fresh.empty());
  for (const ElementChange& change : result->elements) EXPECT_EQ(change.verdict, Change::none) << change.id;
  for (const LoadChange& load : result->loads) EXPECT_NEAR(load.volts_before, load.volts_after, 1e-9);
}

TEST(Compare, CureIsFoundAndItsVolts) {
  const auto before = survey();
  auto resistance = before.truth.resistance;
  const std::string cured = before.truth.planted.front();
  resistance[cured] = sound_of(before.system, cured);
  const auto after = with_everything_as_true(before.system, resistance);
  const auto result = compare(before.system, after);
  ASSERT_TRUE(result);
  EXPECT_EQ(result->cured, std::vector<std::string>{cured});
  EXPECT_TRUE(result->left.empty());
  const auto row = std::find_if(result->elements.begin(), result->elements.end(),
                                [&](const auto& e) { return e.id == cured; });
  EXPECT_EQ(row->verdict, Change::better);
  EXPECT_LT(row->change, 0);
  double gained = 0;
  for (const LoadChange& load : result->loads)
    gained = std::max(gained, load.volts_after - load.volts_before);
  EXPECT_GT(gained, 0.02);
}

TEST(Compare, ChargedBatteryIsNoCure) {
  const auto before = survey();
  auto after = before.system;
  for (auto& battery : after.batteries) battery.emf = units::Voltage{battery.emf->si() + 0.4};
  for (auto& reading : after.readings)
    if (auto* volts = std::get_if<netlist::VoltsReading>(&reading.what); volts && volts->value.si() > 8)
      volts->value = units::Voltage{volts->value.si() + 0.4};
  const auto result = compare(before.system, after);
  ASSERT_TRUE(result);
  EXPECT_TRUE(result->cured.empty());
  for (const LoadChange& load : result->loads)
    EXPECT_NEAR(load.volts_before, load.volts_after, 0.05) << load.id;
}

TEST(Compare, NewFaultAndMissingElements) {
  const auto before = survey();
  auto resistance = before.truth.resistance;
  resistance["feed/to"] = 60 * sound_of(before.system, "feed/to");
  auto after = with_everything_as_true(before.system, resistance);
  after.fuses.front().id = "other-fuse";
  const auto result = compare(before.system, after);
  ASSERT_TRUE(result);
  EXPECT_EQ(std::count(result->fresh.begin(), result->fresh.end(), "feed/to"), 1);
  EXPECT_EQ(result->left, before.truth.planted);
  EXPECT_EQ(result->gone, std::vector<std::string>{"main-fuse"});
  EXPECT_EQ(result->added, std::vector<std::string>{"other-fuse"});
}

TEST(Compare, FilesOfTwoSystemsAreRefused) {
  const auto other = netlist::read(R"({"ohmtrail":1,"system":{"name":"Dinghy Invented Smew","nominal":12},
    "batteries":[{"id":"bat","plus":"p","minus":"m","nominal":12,"emf":12.7,"resistance":"9 mohm"}],
    "runs":[{"id":"pump lead","from":"p","to":"q","gauge":"2.5 mm2","length":"2 m"}],
    "loads":[{"id":"dinghy pump","plus":"q","minus":"m","takes":"3 A"}],
    "cases":[{"name":"on","on":["dinghy pump"]}]})");
  ASSERT_TRUE(other);
  const auto refused = compare(survey().system, other->system);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().text, "the two surveys have no cable, joint, switch, fuse or load in common");
  EXPECT_TRUE(compare(other->system, other->system));
}

/// "feed" read from stud to stud, and where `lug` is given across its first lug too.
netlist::System with_feed_losing(double volts, std::optional<double> lug = {}) {
  return test::feed_survey(test::read_between("b+", "l+", volts) +
                           (lug ? test::read_between("b+", "feed@from", *lug) : ""));
}

constexpr double sound_feed = 0.105, bad_feed = 0.5, bad_lug = 0.4;
using Ids = std::vector<std::string>;

TEST(CompareCables, CureOfOneReadOnlyAsAWholeIsFound) {
  const auto result = compare(with_feed_losing(bad_feed), with_feed_losing(sound_feed)).value();
  EXPECT_EQ(result.cured, Ids{"feed"});
  EXPECT_EQ(result.left, Ids{});
  EXPECT_EQ(result.fresh, Ids{});
  ASSERT_EQ(result.conductors.size(), 2u);
  EXPECT_EQ(result.conductors[0].verdict, Change::better);
  EXPECT_NEAR(result.conductors[0].change, (sound_feed - bad_feed) / 100, 0.3e-3);
  EXPECT_EQ(result.conductors[1].verdict, Change::none);
  ASSERT_EQ(result.loads.size(), 1u);
  EXPECT_NEAR(result.loads[0].volts_after - result.loads[0].volts_before, bad_feed - sound_feed, 0.03);
}

TEST(CompareCables, FaultReadAsAWholeBothTimesIsLeft) {
  const auto result = compare(with_feed_losing(bad_feed), with_feed_losing(bad_feed)).value();
  EXPECT_EQ(result.left, Ids{"feed"});
  EXPECT_EQ(result.cured, Ids{});
}

TEST(CompareCables, LugFoundInACableThatWasBadIsNotNew) {
  const auto result = compare(with_feed_losing(bad_feed), with_feed_losing(bad_feed, bad_lug)).value();
  EXPECT_EQ(result.left, Ids{"feed/from"});
  EXPECT_EQ(result.fresh, Ids{});
  EXPECT_EQ(result.cured, Ids{});
}

TEST(CompareCables, LugIsNotCuredWhileItsCableIsBad) {
  const auto result = compare(with_feed_losing(bad_feed, bad_lug), with_feed_losing(bad_feed)).value();
  EXPECT_EQ(result.left, Ids{"feed/from"});
  EXPECT_EQ(result.cured, Ids{});
}

TEST(CompareCables, LugThatWasNamedIsCuredAlone) {
  const auto result = compare(with_feed_losing(bad_feed, bad_lug), with_feed_losing(sound_feed)).value();
  EXPECT_EQ(result.cured, Ids{"feed/from"});
}

TEST(CompareCables, NewFaultOfACableReadAsAWholeIsNew) {
  const auto result = compare(with_feed_losing(sound_feed), with_feed_losing(bad_feed)).value();
  EXPECT_EQ(result.fresh, Ids{"feed"});
}

}  // namespace
}  // namespace ohmtrail::diagnose
