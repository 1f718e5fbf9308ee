#include <gmock/gmock.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "support/process.hpp"

// The JSON of `rank` on the shipped netlists: names, order, and what must hold between the numbers.
namespace {

using namespace ohmtrail::test;
using nlohmann::ordered_json;
using testing::ElementsAre;

const std::vector<std::string> shipped{"yacht-12v", "launch-24v", "cart-48v", "camper-12v"};

std::vector<std::string> keys(const ordered_json& object) {
  std::vector<std::string> names;
  for (const auto& [name, value] : object.items()) names.push_back(name);
  return names;
}

ordered_json result_of(const std::string& call) {
  const Ended ended = run_shell("ohmtrail " + call, OHMTRAIL_SOURCE_DIR "/netlists");
  EXPECT_EQ(ended.exit, 0) << ended.err;
  return ordered_json::parse(ended.out);
}

TEST(ContractOfRank, NamesAndOrdersItsFields) {
  const ordered_json result = result_of("rank yacht-12v.json --json");
  EXPECT_THAT(keys(result),
              ElementsAre("ohmtrail", "result", "system", "assumptions", "hot_spots", "split", "charging"));
  EXPECT_EQ(result["result"], "rank");
  EXPECT_THAT(
      keys(result["hot_spots"][0]),
      ElementsAre("rank", "id", "role", "cause", "case", "current", "drop", "heat", "resistance",
                  "sound_resistance", "excess", "recoverable", "temperature", "likelihood", "fix",
                  "better_gauge", "waste_per_day", "heat_warning", "hottest", "conductor_likelihood"));
  EXPECT_THAT(keys(result["hot_spots"][0]["recoverable"]), ElementsAre("load", "volts"));
  EXPECT_THAT(keys(result["split"][0]), ElementsAre("case", "load", "sag", "battery", "wires", "terminations",
                                                    "joints", "switchgear", "isolators"));
}

TEST(ContractOfRank, EverySplitAddsUpToTheSagThatSolveTells) {
  for (const std::string& name : shipped) {
    SCOPED_TRACE(name);
    const ordered_json ranked = result_of("rank " + name + ".json --json");
    const ordered_json solved = result_of("solve " + name + ".json --json");
    ASSERT_FALSE(ranked["split"].empty());
    std::size_t found = 0;
    for (const ordered_json& row : ranked["split"]) {
      double sum = 0;
      for (const char* part : {"battery", "wires", "terminations", "joints", "switchgear", "isolators"})
        sum += row[part].get<double>();
      EXPECT_NEAR(sum, row["sag"].get<double>(), 1e-9) << row;
      for (const ordered_json& one : solved["cases"])
        for (const ordered_json& load : one["loads"])
          if (one["case"] == row["case"] && load["id"] == row["load"]) {
            EXPECT_NEAR(load["sag"].get<double>(), row["sag"].get<double>(), 1e-9) << row;
            ++found;
          }
    }
    EXPECT_EQ(found, ranked["split"].size());
  }
}

TEST(ContractOfRank, EachElementHasOneRowAndRanksCount) {
  for (const std::string& name : shipped) {
    const ordered_json spots = result_of("rank " + name + ".json --json")["hot_spots"];
    std::set<std::string> ids;
    ASSERT_FALSE(spots.empty()) << name;
    for (std::size_t i = 0; i < spots.size(); ++i) {
      EXPECT_EQ(spots[i]["rank"], i + 1) << name;
      EXPECT_TRUE(ids.insert(spots[i]["id"]).second) << name << ' ' << spots[i]["id"];
    }
  }
}

TEST(ContractOfRank, TopCutsAndByOrders) {
  const ordered_json all = result_of("rank yacht-12v.json --json")["hot_spots"];
  const ordered_json three = result_of("rank yacht-12v.json --json --top 3")["hot_spots"];
  ASSERT_GT(all.size(), 3U);
  ASSERT_EQ(three.size(), 3U);
  for (std::size_t i = 0; i < 3; ++i) EXPECT_EQ(three[i], all[i]);
  const ordered_json by_heat = result_of("rank yacht-12v.json --json --by heat")["hot_spots"];
  EXPECT_EQ(by_heat.size(), all.size());
  for (std::size_t i = 1; i < by_heat.size(); ++i)
    EXPECT_GE(by_heat[i - 1]["heat"].get<double>(), by_heat[i]["heat"].get<double>() - 1e-9);  // W, as equal
}

TEST(ContractOfRank, SwingsComeWithBetweenAndAddUp) {
  const ordered_json result = result_of("rank yacht-12v.json --json --between 'fridge off' 'inverter on'");
  ASSERT_TRUE(result.contains("swings"));
  ASSERT_FALSE(result["swings"].empty());
  EXPECT_TRUE(result.contains("hot_spots") && result.contains("split"));
  for (const ordered_json& swing : result["swings"]) {
    double sum = swing["open_circuit"].get<double>();
    for (const char* part : {"battery", "wires", "terminations", "joints", "switchgear", "isolators"})
      sum += swing[part].get<double>();
    EXPECT_NEAR(sum, swing["change"].get<double>(), 1e-9) << swing["load"];
    EXPECT_NEAR(swing["after"].get<double>() - swing["before"].get<double>(), swing["change"].get<double>(),
                1e-9);
  }
}

TEST(ContractOfRank, TheTableHasTheSameRowsAsTheJson) {
  const Ended table = run_shell("ohmtrail rank yacht-12v.json --csv", OHMTRAIL_SOURCE_DIR "/netlists");
  const ordered_json spots = result_of("rank yacht-12v.json --json")["hot_spots"];
  EXPECT_EQ(static_cast<std::size_t>(std::count(table.out.begin(), table.out.end(), '\n')), spots.size() + 1);
}

TEST(ContractOfRank, NoLineOfAnyTextIsWiderThanThePage) {
  for (const std::string& name : shipped)
    for (const std::string command : {"rank", "solve", "check", "bank"}) {
      const Ended ended =
          run_shell("ohmtrail " + command + " " + name + ".json", OHMTRAIL_SOURCE_DIR "/netlists");
      EXPECT_EQ(ended.exit, 0) << ended.err;
      EXPECT_GT(ended.out.size(), 100U) << command << ' ' << name;
      std::size_t start = 0;
      for (std::size_t end; (end = ended.out.find('\n', start)) != std::string::npos; start = end + 1) {
        const std::string line = ended.out.substr(start, end - start);
        const auto columns =
            std::count_if(line.begin(), line.end(), [](char c) { return (c & 0xC0) != 0x80; });
        EXPECT_LE(columns, 80) << command << ' ' << name << ": " << line;
      }
    }
}

}  // namespace
