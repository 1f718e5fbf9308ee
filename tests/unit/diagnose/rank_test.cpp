#include "ohmtrail/diagnose/rank.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "rank_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using namespace test;
using units::Current;
using units::Power;
using units::Resistance;
using units::Time;

constexpr double exact = 1e-11;

std::vector<HotSpot> rank_all(const netlist::System& system, const RankOptions& options = {}) {
  return rank(system, solve_all(system), options);
}

std::vector<std::string> ids(const std::vector<HotSpot>& spots) {
  std::vector<std::string> names;
  for (const auto& spot : spots) names.push_back(spot.id);
  return names;
}

/// The lug at the battery's minus has 31 mΩ where 1 mΩ is sound.
netlist::System with_bad_lug(double amps = 10) {
  auto system = out_and_back(amps);
  system.runs[1].end_to.resistances.as_found = Resistance{0.031};
  return system;
}

TEST(Rank, OfASoundSystemIsEmpty) {
  EXPECT_TRUE(rank_all(out_and_back(10)).empty());
}

TEST(Rank, OfOneBadLugIsOhmsLaw) {
  const auto spots = rank_all(with_bad_lug());
  ASSERT_EQ(spots.size(), 1U);
  const auto& spot = spots[0];
  EXPECT_EQ(spot.rank, 1);
  EXPECT_EQ(spot.id, "back/to");
  EXPECT_EQ(spot.role, network::Role::termination);
  EXPECT_EQ(spot.cause, Cause::bad_termination);
  EXPECT_EQ(spot.in_case, "all-on");
  EXPECT_NEAR(spot.current, 10, exact);
  EXPECT_NEAR(spot.drop, 0.31, exact);
  EXPECT_NEAR(spot.heat, 3.1, exact);
  EXPECT_NEAR(spot.resistance, 0.031, exact);
  EXPECT_NEAR(spot.sound_resistance.value(), 0.001, exact);
  EXPECT_NEAR(spot.excess.value(), 0.030, exact);
  ASSERT_TRUE(spot.recoverable.has_value());
  EXPECT_EQ(spot.recoverable->load, "lamp");
  EXPECT_NEAR(spot.recoverable->volts, 0.30, exact);
  EXPECT_FALSE(spot.likelihood.has_value());
  EXPECT_FALSE(spot.waste.has_value());
  EXPECT_FALSE(spot.fix.empty());
}

TEST(Rank, NamesTheCauseByWhatTheElementIs) {
  auto system = empty_system();
  add_battery(system, "house", "b+", "b-", 12, 0.010);
  add_switch(system, "main", "b+", "s", 0.0002).resistances.as_found = Resistance{0.002};
  add_fuse(system, "fuse", "s", "f", 0.0003).resistances.as_found = Resistance{0.003};
  add_joint(system, "stud", "f", "st", 0.0001).resistances.as_found = Resistance{0.004};
  add_run(system, "out", "st", "l+", 0.020, 0.001).wire.as_found = Resistance{0.030};
  add_run(system, "back", "l-", "b-", 0.020, 0.001).end_from.resistances.as_found = Resistance{0.005};
  add_load(system, "lamp", "l+", "l-", Current{10});
  const auto spots = rank_all(system);
  ASSERT_EQ(spots.size(), 5U);
  EXPECT_EQ(find_id(spots, "main")->cause, Cause::worn_contact);
  EXPECT_EQ(find_id(spots, "fuse")->cause, Cause::worn_contact);
  EXPECT_EQ(find_id(spots, "stud")->cause, Cause::bad_joint);
  EXPECT_EQ(find_id(spots, "out/wire")->cause, Cause::corroded_conductor);
  EXPECT_EQ(find_id(spots, "back/from")->cause, Cause::bad_termination);
}

TEST(Rank, OrdersByRecoverableVolts) {
  auto system = with_bad_lug();
  system.runs[0].end_from.resistances.as_found = Resistance{0.011};
  system.runs[0].wire.as_found = Resistance{0.070};
  const auto spots = rank_all(system);
  EXPECT_EQ(ids(spots), (std::vector<std::string>{"out/wire", "back/to", "out/from"}));
  EXPECT_EQ(spots[2].rank, 3);
}

TEST(Rank, EqualVoltsAreOrderedByHeat) {
  auto system = out_and_back(10);
  system.runs[0].end_to.resistances.as_found = Resistance{0.011};  // 10 mΩ above sound, 1.1 W
  system.runs[1].wire.as_found = Resistance{0.030};                // 10 mΩ above sound, 3 W
  EXPECT_EQ(ids(rank_all(system)), (std::vector<std::string>{"back/wire", "out/to"}));
}

TEST(Rank, ByHeatPutsTheHottestWattsFirst) {
  auto system = empty_system();
  add_battery(system, "house", "b+", "b-", 12, 0.001);
  // A resistive load starves the small one little; the big one's joint makes more heat but returns fewer
  // volts.
  add_joint(system, "big", "b+", "h+", 0.0001).resistances.as_found = Resistance{0.010};
  add_load(system, "heater", "h+", "b-", Current{50});
  add_joint(system, "small", "b+", "l+", 0.0001).resistances.as_found = Resistance{0.300};
  add_load(system, "lamp", "l+", "b-", Current{2});
  EXPECT_EQ(ids(rank_all(system)), (std::vector<std::string>{"small", "big"}));  // 0.6 V against 0.495 V
  RankOptions by_heat;
  by_heat.by = RankBy::heat;
  EXPECT_EQ(ids(rank_all(system, by_heat)),
            (std::vector<std::string>{"big", "small"}));  // 25 W against 1.2 W
}

TEST(Rank, ByTemperaturePutsTheHottestFirst) {
  auto system = with_bad_lug(30);
  system.runs[0].end_from.resistances.as_found = Resistance{0.010};
  RankOptions by_temperature;
  by_temperature.by = RankBy::temperature;
  const auto spots = rank_all(system, by_temperature);
  ASSERT_EQ(spots.size(), 2U);
  EXPECT_EQ(spots[0].id, "back/to");
  EXPECT_GT(spots[0].temperature.value(), spots[1].temperature.value());
}

TEST(Rank, TiesKeepFileOrder) {
  auto system = empty_system();
  add_battery(system, "house", "b+", "b-", 12, 0.010);
  for (const char* name : {"c", "a", "b"}) {
    add_joint(system, std::string("joint-") + name, "b+", std::string(name) + "+", 0.001)
        .resistances.as_found = Resistance{0.011};
    add_load(system, std::string("lamp-") + name, std::string(name) + "+", "b-", Current{5});
  }
  EXPECT_EQ(ids(rank_all(system)), (std::vector<std::string>{"joint-c", "joint-a", "joint-b"}));
}

TEST(Rank, RecoverableNamesTheLoadThatGainsMost) {
  auto system = with_bad_lug();
  // A second load behind the same lug, fed by its own thin run: both gain alike, a resistive one gains less.
  add_load(system, "heater", "b+", "l-", Resistance{5});
  const auto spots = rank_all(system);
  const auto spot = find_id(spots, "back/to");
  ASSERT_NE(spot, spots.end());
  auto cured = system;
  cured.runs[1].end_to.resistances.as_found.reset();
  const auto before = solve_one(system, system.cases[0]), after = solve_one(cured, cured.cases[0]);
  const double lamp = after.loads[0].volts - before.loads[0].volts;
  const double heater = after.loads[1].volts - before.loads[1].volts;
  EXPECT_EQ(spot->recoverable->load, lamp >= heater - 1e-9 ? "lamp" : "heater");
  EXPECT_NEAR(spot->recoverable->volts, std::max(lamp, heater), 1e-9);
}

TEST(Rank, OfLoadsThatGainAlikeTheFirstIsNamed) {
  auto system = with_bad_lug();
  add_load(system, "twin", "l+", "l-", Current{5});
  system.loads[0].takes = Current{5};
  const auto spots = rank_all(system);
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_EQ(spots[0].recoverable->load, "lamp");
}

TEST(Rank, ALoadThatIsOffRecoversNothing) {
  auto system = with_bad_lug();
  add_load(system, "spare", "l+", "l-", Current{1});
  system.cases.clear();
  add_case(system, "spare alone", {"spare"});
  const auto spots = rank_all(system);
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_EQ(spots[0].recoverable->load, "spare");
  EXPECT_NEAR(spots[0].recoverable->volts, 0.03, exact);
}

TEST(Rank, WithNothingOnAFaultIsListedWithoutALoad) {
  auto system = with_bad_lug();
  system.cases.clear();
  add_case(system, "quiet", {});
  const auto spots = rank_all(system);
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_FALSE(spots[0].recoverable.has_value());
  EXPECT_NEAR(spots[0].heat, 0, exact);
}

/// Each element has at most one row, for the case in which it recovers most.
TEST(Rank, EachElementHasOneRowForItsWorstCase) {
  auto system = with_bad_lug();
  system.cases.clear();
  add_case(system, "dim", {"lamp"}).set["lamp"] = Current{2};
  add_case(system, "bright", {"lamp"}).set["lamp"] = Current{20};
  add_case(system, "usual", {"lamp"});
  const auto spots = rank_all(system);
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_EQ(spots[0].in_case, "bright");
  EXPECT_NEAR(spots[0].recoverable->volts, 0.60, exact);
}

TEST(Rank, OfEqualCasesTheFirstIsNamed) {
  auto system = with_bad_lug();
  system.cases.clear();
  add_case(system, "first", {"lamp"});
  add_case(system, "second", {"lamp"});
  EXPECT_EQ(rank_all(system)[0].in_case, "first");
}

TEST(Rank, OneCaseCanBeAskedFor) {
  auto system = with_bad_lug();
  add_case(system, "dim", {"lamp"}).set["lamp"] = Current{2};
  RankOptions options;
  options.only_case = "dim";
  const auto spots = rank_all(system, options);
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_EQ(spots[0].in_case, "dim");
  EXPECT_NEAR(spots[0].recoverable->volts, 0.06, exact);
}

/// Every element above its sound resistance is listed, also one that carries nothing; `top` cuts after that.
TEST(Rank, ListsEveryElementAboveSoundBeforeTopCuts) {
  auto system = with_bad_lug();
  system.runs[0].wire.as_found = Resistance{0.0200001};
  add_joint(system, "idle", "b+", "spare+", 0.001).resistances.as_found = Resistance{0.5};
  add_load(system, "spare", "spare+", "b-", Current{1});
  system.cases.clear();
  add_case(system, "lamp alone", {"lamp"});
  const auto all = rank_all(system);
  EXPECT_EQ(ids(all), (std::vector<std::string>{"back/to", "out/wire", "idle"}));
  EXPECT_NEAR(all[2].recoverable->volts, 0, exact);
  RankOptions options;
  options.top = 2;
  EXPECT_EQ(ids(rank_all(system, options)), (std::vector<std::string>{"back/to", "out/wire"}));
  options.top = 0;
  EXPECT_TRUE(rank_all(system, options).empty());
}

TEST(Rank, AnUnknownSoundValueIsNeverFaulty) {
  auto system = with_bad_lug();
  auto solved = solve_all(system);
  for (auto& element : solved[0].network.elements)
    if (element.id == "back/to") element.sound.reset();
  EXPECT_TRUE(rank(system, solved).empty());
}

TEST(Rank, BetterThanSoundIsNoHotSpot) {
  auto system = out_and_back(10);
  system.runs[1].end_to.resistances.as_found = Resistance{0.0005};
  EXPECT_TRUE(rank_all(system).empty());
}

TEST(Rank, AnOpenElementIsNotRanked) {
  auto system = out_and_back(10);
  add_switch(system, "spare", "b+", "l+", 0.001).resistances.as_found = Resistance{0.5};
  system.cases[0].open = {"spare"};
  EXPECT_TRUE(rank_all(system).empty());
}

TEST(Rank, LikelihoodComesFromTheInferenceAlone) {
  auto system = with_bad_lug();
  system.runs[0].wire.as_found = Resistance{0.025};
  RankOptions options;
  options.fault_probability = {{"back/to", 0.97}};
  const auto spots = rank_all(system, options);
  EXPECT_DOUBLE_EQ(find_id(spots, "back/to")->likelihood.value(), 0.97);
  EXPECT_FALSE(find_id(spots, "out/wire")->likelihood.has_value());
}

/// 3.0 W of excess (10 A through 30 mΩ) for 5 h and 0.12 W (2 A) for 10 h a day.
TEST(Rank, WasteIsTheExcessOverTheHoursOfEveryCase) {
  auto system = with_bad_lug();
  system.cases[0].per_day = Time{5 * 3600.0};
  auto& dim = add_case(system, "dim", {"lamp"});
  dim.set["lamp"] = Current{2};
  dim.per_day = Time{10 * 3600.0};
  add_case(system, "never timed", {"lamp"});
  const auto spots = rank_all(system);
  ASSERT_TRUE(spots[0].waste.has_value());
  EXPECT_NEAR(spots[0].waste->watt_hours, 3.0 * 5 + 0.12 * 10, 1e-9);
  EXPECT_NEAR(spots[0].waste->ampere_hours, (3.0 * 5 + 0.12 * 10) / 12, 1e-9);
}

/// A constant-power load draws more through a fault: what comes back is more than I·ΔR, and is found by
/// solving.
TEST(Rank, RecoverableOfAPowerLoadIsAFullSolve) {
  auto system = with_bad_lug();
  system.loads[0].takes = Power{200};
  const auto spots = rank_all(system);
  ASSERT_EQ(spots.size(), 1U);
  const auto volts_behind = [](double ohms) { return (12 + std::sqrt(144 - 4 * 200 * ohms)) / 2; };
  EXPECT_NEAR(spots[0].recoverable->volts, volts_behind(0.054) - volts_behind(0.084), 1e-9);
  EXPECT_GT(spots[0].recoverable->volts, spots[0].current * 0.030 * 1.01);
}

TEST(Rank, AWarmWireIsNoFault) {
  auto system = out_and_back(60);
  for (auto& run : system.runs) run.wire.sound.reset();
  system.loads[0].load_class = netlist::LoadClass::test;
  EXPECT_TRUE(rank_all(system).empty());
}

/// A wire measured at twice its table value is compared at the temperature that it has.
TEST(Rank, AMeasuredWireIsHeldAgainstItsTableValueAtItsTemperature) {
  auto system = out_and_back(60);
  for (auto& run : system.runs) run.wire.sound.reset();
  const auto clean = solve_one(system, system.cases[0]);
  const double table =
      clean.network.elements[static_cast<std::size_t>(*clean.network.element("out"))].resistance.si();
  system.runs[0].wire.as_found = Resistance{2 * table};
  const auto spots = rank_all(system);
  ASSERT_EQ(spots.size(), 1U);
  EXPECT_EQ(spots[0].cause, Cause::corroded_conductor);
  EXPECT_NEAR(spots[0].resistance, 2 * table, exact);
  const double warmed = 1 + 0.00393 * (spots[0].temperature.value() - 20);
  EXPECT_NEAR(spots[0].sound_resistance.value() / (table * warmed), 1, 1e-6);
  const auto found = solve_one(system, system.cases[0]);
  EXPECT_NEAR(spots[0].recoverable->volts, clean.loads[0].volts - found.loads[0].volts, 1e-9);
}

TEST(Rank, WordsOfTheCausesAreThoseOfTheContract) {
  EXPECT_EQ(word(Cause::corroded_conductor), "corroded-conductor");
  EXPECT_EQ(word(Cause::bad_termination), "bad-termination");
  EXPECT_EQ(word(Cause::bad_joint), "bad-joint");
  EXPECT_EQ(word(Cause::worn_contact), "worn-contact");
  EXPECT_EQ(word(Cause::undersized), "undersized");
  EXPECT_EQ(word(Cause::weak_battery), "weak-battery");
  EXPECT_EQ(word(Cause::discharged_battery), "discharged-battery");
}

}  // namespace
}  // namespace ohmtrail::diagnose
