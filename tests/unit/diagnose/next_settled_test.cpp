#include "diagnose/next/settled.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <string>

#include "ohmtrail/netlist/read.hpp"

namespace ohmtrail::diagnose {
namespace {

// Battery, a run, three joints, a load (invented). Four-wire readings of the joints; of the run what is
// given.
netlist::System system_of(const std::string& readings) {
  const auto read = netlist::read(R"({"ohmtrail":1,"system":{"name":"settled","nominal":12},
    "batteries":[{"id":"B","plus":"+","minus":"-","nominal":12,"emf":12.7,"resistance":"4 mohm"}],
    "runs":[{"id":"R","from":"p3","to":"p4","gauge":"35 mm2","length":"2 m"}],
    "joints":[{"id":"j0","from":"+","to":"p1","kind":"stud","sound":"0.2 mohm"},
              {"id":"j1","from":"p1","to":"p2","kind":"stud","sound":"0.2 mohm"},
              {"id":"j2","from":"p2","to":"p3","kind":"stud","sound":"0.2 mohm"}],
    "loads":[{"id":"L","plus":"p4","minus":"-","takes":"100 A"}],
    "cases":[{"name":"on","on":["L"]}],
    "meters":[{"id":"m","ohms":{"percent":0.5,"counts":1,"digits_to":0.000001},
               "volts":{"percent":0.1,"counts":1,"digits_to":0.0001},
               "amps":{"percent":1,"counts":1,"digits_to":0.1}}],
    "readings":[)" + readings + "]}");
  EXPECT_TRUE(read) << (read ? "" : netlist::format(read.error().front(), "settled"));
  return read->system;
}

std::string ohms(const std::string& value, const std::string& across) {
  return R"({"ohms":")" + value + R"(","across":")" + across + R"(","meter":"m"})";
}

std::string volts(double value, const std::string& red, const std::string& black) {
  return R"({"case":"on","meter":"m","volts":)" + std::to_string(value) + R"(,"red":")" + red +
         R"(","black":")" + black + R"("})";
}

// The shipped launch: three faults are sure by four-wire readings, and an opening by clamp and voltmeter,
// which is missing, would change nothing of that.
TEST(Settled, AsksForNoOpeningOnceTheFaultsAreSure) {
  std::ifstream file(OHMTRAIL_SOURCE_DIR "/netlists/launch-24v.json");
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  const auto read = netlist::read(text);
  ASSERT_TRUE(read);
  const auto result = next_reading(read->system);
  ASSERT_TRUE(result);
  EXPECT_TRUE(result->options.empty());
  EXPECT_NE(result->verdict, Verdict::go_on);
  EXPECT_NE(result->verdict_text.find("No further reading is worth taking"), std::string::npos);
  EXPECT_NE(result->verdict_text.find("the joint \"starboard clamp\""), std::string::npos)
      << result->verdict_text;
  EXPECT_NE(result->verdict_text.find("Still in doubt: the switch \"thruster contactor\""), std::string::npos)
      << result->verdict_text;
}

// The shipped camper and cart hold their faults as four-wire readings: clamp and voltmeter at the supply
// would tell nothing more.
class ShippedAsFound : public testing::TestWithParam<const char*> {};

TEST_P(ShippedAsFound, ListsNothingThatTellsNothing) {
  std::ifstream file(std::string(OHMTRAIL_SOURCE_DIR "/netlists/") + GetParam());
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  const auto read = netlist::read(text);
  ASSERT_TRUE(read);
  const auto result = next_reading(read->system);
  ASSERT_TRUE(result);
  ASSERT_GE(result->repairs.front().probability, sure_enough);
  for (const NextOption& option : result->options) EXPECT_GE(option.gain_bits, 0.02) << option.where;
}

INSTANTIATE_TEST_SUITE_P(Netlists, ShippedAsFound, testing::Values("camper-12v.json", "cart-48v.json"),
                         [](const auto& one) { return std::string(one.param).substr(0, 4); });

TEST(Settled, FourWiresReadAcross) {
  const auto by_reading = next_reading(system_of(ohms("12 mohm", "j1")));
  ASSERT_TRUE(by_reading);
  for (const RepairChance& repair : by_reading->repairs)
    EXPECT_EQ(repair.read_across, repair.id == "j1") << repair.id;
  auto given = system_of("");
  given.joints[2].resistances.as_found = units::Resistance{0.002};
  const auto by_file = next_reading(given);
  ASSERT_TRUE(by_file);
  for (const RepairChance& repair : by_file->repairs)
    EXPECT_EQ(repair.read_across, repair.id == "j2") << repair.id;
}

TEST(Settled, OpensWithCurrentAndVoltagesWhileNothingIsSure) {
  const auto result = next_reading(system_of(""));
  ASSERT_TRUE(result);
  ASSERT_LT(result->repairs.front().probability, sure_enough);
  ASSERT_GE(result->options.size(), 3U);
  for (std::size_t k = 0; k < 3; ++k) EXPECT_EQ(result->options[k].purpose, Purpose::opening) << k;
}

TEST(Settled, GoesOnWhileNothingIsSure) {
  const auto result = next_reading(system_of(volts(11.9, "p4", "-")));
  ASSERT_TRUE(result);
  EXPECT_EQ(result->verdict, Verdict::go_on);
  ASSERT_FALSE(result->options.empty());
}

// A suspect that is sure is so whatever the next reading shows: it is on neither side of it.
TEST(Settled, NamesNoSureSuspectOnEitherSide) {
  const auto result =
      next_reading(system_of(ohms("12 mohm", "j1") + ',' + volts(12.3, "+", "-") + ',' +
                             volts(9.9, "p4", "-") + R"(,{"case":"on","meter":"m","amps":100,"in":"j0"})"));
  ASSERT_TRUE(result);
  ASSERT_GE(result->repairs.front().probability, sure_enough);
  ASSERT_FALSE(result->options.empty());
  for (const NextOption& option : result->options) {
    for (const auto* side : {&option.bad, &option.good})
      for (const std::string& id : *side) EXPECT_NE(id, "j1") << option.where;
  }
}

NextResult sure_of(const std::string& words) {
  NextResult out;
  out.repairs = {{"j", words, 0.99, {"j"}, false}};
  return out;
}

TEST(Settled, TellsWhatARangeOfSoundOnesLeavesOpen) {
  NextResult result = sure_of("the joint \"j\"");
  result.repairs.push_back({"s", "the switch \"s\"", 0.8, {"s"}, false});
  result.inference.elements = {{"s", 1.4e-3, 1.38e-3, 1.42e-3, 3e-4, 0.8}};
  const std::string known = next::settled_in_words(result, 0.011);
  EXPECT_NE(known.find("would tell 0.01 bits"), std::string::npos) << known;
  EXPECT_NE(known.find("the switch \"s\" (80 %); its resistance is known"), std::string::npos) << known;
  result.inference.elements.front().high = 4e-3;
  const std::string unknown = next::settled_in_words(result, 0.011);
  EXPECT_NE(unknown.find("no reading within reach would settle it"), std::string::npos) << unknown;
}

TEST(Settled, TellsWhatWasOnlyReadAsAWholeAndWhatWouldPartIt) {
  NextResult result = sure_of("the cable \"R\" with its lugs");
  UnresolvedGroup group;
  group.ids = {"R/from", "R/wire", "R/to"};
  group.fault_probability = 0.99;
  group.separate_at = {{"p3", "R@from"}};
  result.inference.unresolved = {group};
  const std::string text = next::settled_in_words(result, 0);
  EXPECT_NE(text.find("Which of \"R/from\", \"R/wire\" and \"R/to\" it is cannot be told"), std::string::npos)
      << text;
  EXPECT_NE(text.find("from \"p3\" to \"R@from\" would part them"), std::string::npos) << text;
  result.inference.unresolved.front().fault_probability = 0.01;  // nobody asks about sound ones
  EXPECT_EQ(next::settled_in_words(result, 0).find("Which of"), std::string::npos);
}

// A whole ring may be one group: only what may be the fault is asked about, and where it can be told.
TEST(Settled, AsksOnlyOfPartsThatMayBeTheFault) {
  NextResult result = sure_of("the cable \"R\" with its lugs");
  UnresolvedGroup group;
  group.ids = {"B", "Q/wire", "R/from", "R/wire", "R/to"};
  group.fault_probability = 0.99;
  group.separate_at = {{"b+", "b-"}, {"Q@from", "Q@to"}, {"p3", "R@from"}};
  result.inference.unresolved = {group};
  result.inference.batteries.emplace_back().id = "B";
  for (const auto& [id, chance] : std::vector<std::pair<std::string, double>>{
           {"Q/wire", 0.01}, {"R/from", 0.5}, {"R/wire", 0.03}, {"R/to", 0.5}}) {
    auto& element = result.inference.elements.emplace_back();
    element.id = id;
    element.fault_probability = chance;
  }
  const std::string text = next::settled_in_words(result, 0);
  EXPECT_NE(text.find("Which of \"R/from\" and \"R/to\" it is"), std::string::npos) << text;
  EXPECT_NE(text.find("from \"p3\" to \"R@from\" would part them"), std::string::npos) << text;
}

}  // namespace
}  // namespace ohmtrail::diagnose
