#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>
#include <string>

#include "ohmtrail/diagnose/next.hpp"
#include "ohmtrail/netlist/read.hpp"

/// Which readings are offered, and how they are told.
namespace ohmtrail::diagnose {
namespace {

NextResult next_of(const std::string& text) {
  const auto read = netlist::read(text);
  EXPECT_TRUE(read) << (read ? "" : netlist::format(read.error().front(), "next"));
  auto result = next_reading(read->system);
  EXPECT_TRUE(result);
  return std::move(*result);
}

std::string shipped(const std::string& name) {
  std::ifstream file(OHMTRAIL_SOURCE_DIR "/netlists/" + name);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// A power supply and a lamp at its terminals (invented): no wire, no battery.
std::string supply_and_lamp(const std::string& readings) {
  return R"({"ohmtrail":1,"system":{"name":"bare","nominal":12},
    "chargers":[{"id":"S","plus":"+","minus":"-","setpoint":13.8,"limit":30}],
    "loads":[{"id":"L","plus":"+","minus":"-","takes":"30 W"}],
    "cases":[{"name":"on","on":["L"],"chargers":["S"]}],
    "readings":[)" +
         readings + "]}";
}

TEST(NextOffers, NothingToConfirmWhereNothingCanBeFaulty) {
  const auto result = next_of(supply_and_lamp(R"({"case":"on","volts":13.8,"red":"+","black":"-"},
                                                 {"case":"on","amps":2.2,"in":"S"})"));
  EXPECT_EQ(result.verdict, Verdict::sound);
  EXPECT_TRUE(result.repairs.empty());
}

/// The load hangs on the battery's posts: its volts and the battery's are one reading.
TEST(NextOffers, OneOpeningAtThePostsOfBoth) {
  const auto result = next_of(R"({"ohmtrail":1,"system":{"name":"bare","nominal":12},
    "batteries":[{"id":"B","plus":"+","minus":"-","nominal":12}],
    "loads":[{"id":"L","plus":"+","minus":"-","takes":"30 W"}],"cases":[{"name":"on","on":["L"]}]})");
  const auto volts = std::count_if(result.options.begin(), result.options.end(),
                                   [](const NextOption& option) { return option.in.empty(); });
  EXPECT_EQ(volts, 1);
}

/// One loop (invented) whose first run is told against its current.
std::string loop(const std::string& feed) {
  return R"({"ohmtrail":1,"system":{"name":"loop","nominal":12},
    "batteries":[{"id":"B","plus":"+","minus":"-","nominal":12,"emf":12.7,"resistance":"4 mohm"}],
    "runs":[{"id":"earth","from":"-","to":"chassis","gauge":"35 mm2","length":1})" +
         feed + R"(],"loads":[{"id":"L","plus":"l+","minus":"chassis","takes":"80 A"}],
    "joints":[{"id":"stud","from":"+","to":"f","kind":"stud"})" +
         (feed.empty() ? R"(,{"id":"bar","from":"f","to":"l+","kind":"bus-bar"})" : "") +
         R"(],"cases":[{"name":"on","on":["L"]}]})";
}

TEST(NextOffers, AClampWhereItShowsAPlus) {
  const auto result = next_of(loop(R"(,{"id":"feed","from":"f","to":"l+","gauge":"35 mm2","length":1})"));
  ASSERT_FALSE(result.options.empty());
  EXPECT_EQ(result.options.front().where, "clamp round \"feed\"");
  EXPECT_GT(result.options.front().expect_sound, 79);
}

TEST(NextOffers, AClampThatMustShowAMinusWithItsArrow) {
  const auto result = next_of(loop(""));
  ASSERT_FALSE(result.options.empty());
  EXPECT_EQ(result.options.front().where,
            "clamp round \"earth\", arrow towards \"chassis\" (it shows a minus)");
  EXPECT_LT(result.options.front().expect_sound, -79);
}

TEST(NextOffers, NoPairOfPointsTwiceWhateverIsOn) {
  const auto result = next_of(shipped("cart-48v.json"));
  ASSERT_GE(result.options.size(), 3U);
  std::set<std::string> where;
  for (const NextOption& option : result.options)
    EXPECT_TRUE(where.insert(option.where).second) << option.where;
}

/// The corroded lug of the tail lights is sure but for a fraction; what the reading across it can still
/// change is its own odds, not those of the battery.
TEST(NextOffers, AReadingNamesWhatItSpeaksFor) {
  const auto result = next_of(shipped("cart-48v.json"));
  const auto across =
      std::find_if(result.options.begin(), result.options.end(), [](const NextOption& option) {
        return option.red == "tail lights -" && option.black == "tail lights@return-from";
      });
  ASSERT_NE(across, result.options.end());
  EXPECT_EQ(across->bad, std::vector<std::string>{"tail lights/return"});
  EXPECT_EQ(std::count(across->good.begin(), across->good.end(), "4"), 0);
}

}  // namespace
}  // namespace ohmtrail::diagnose
