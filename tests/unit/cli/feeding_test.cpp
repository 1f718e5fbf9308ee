#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

#include "cli/text/printable.hpp"
#include "unit/cli/memory_doors.hpp"

// Which source feeds what, as `solve` and `bank` say it. The camper is invented.
namespace {

using nlohmann::json;
using ohmtrail::cli::columns_of;
using ohmtrail::test::Program;
using testing::ContainsRegex;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

/// Two batteries that stand apart, and a panel.
json camper() {
  return json::parse(R"({
    "ohmtrail": 1,
    "system": {"name": "Invented camper", "nominal": "12 V"},
    "batteries": [
      {"id": "old", "plus": "+", "minus": "-", "nominal": "12 V", "emf": 12.4, "resistance": 0.01},
      {"id": "new", "plus": "n+", "minus": "-", "nominal": "12 V", "emf": 12.7, "resistance": 0.01}],
    "chargers": [{"id": "solar", "plus": "+", "minus": "-", "setpoint": 14.4, "limit": 5}],
    "joints": [{"id": "bar", "from": "+", "to": "n+", "kind": "bus-bar", "sound": "5 mohm"}],
    "loads": [{"id": "fridge", "plus": "+", "minus": "-", "takes": "60 A"}],
    "cases": [{"name": "cooling", "on": "all"}, {"name": "quiet"},
              {"name": "sunny", "on": "all", "set": {"fridge": "6 A"}, "chargers": ["solar"]}]
  })");
}

std::string shown(const json& file, std::vector<std::string> call) {
  Program program;
  program.files.content["camper.json"] = file.dump();
  EXPECT_EQ(program.run(call), 0) << program.terminal.complaints;
  return program.terminal.shown;
}

json solved(const std::string& name) {
  const auto cases = json::parse(shown(camper(), {"solve", "camper.json", "--json"}))["cases"];
  for (const auto& one : cases)
    if (one["case"] == name) return one;
  return {};
}

TEST(SolveFeeds, EveryTakerHasItsSources) {
  const auto feeds = solved("cooling")["feeds"];
  ASSERT_EQ(feeds.size(), 1u);
  EXPECT_EQ(feeds[0]["to"], "fridge");
  EXPECT_EQ(feeds[0]["role"], "load");
  EXPECT_NEAR(feeds[0]["current"].get<double>(), 60, 1e-9);
  ASSERT_EQ(feeds[0]["from"].size(), 2u);
  double amperes = 0, share = 0;
  for (const auto& one : feeds[0]["from"])
    amperes += one["current"].get<double>(), share += one["share"].get<double>();
  EXPECT_NEAR(amperes, 60, 1e-9);
  EXPECT_NEAR(share, 1, 1e-12);
}

/// 0.3 V over 25 mΩ.
TEST(SolveFeeds, WhatCirculatesIsNamed) {
  const auto circulating = solved("quiet")["circulating"];
  ASSERT_EQ(circulating.size(), 1u);
  EXPECT_EQ(circulating[0]["from"], "new");
  EXPECT_EQ(circulating[0]["to"], "old");
  EXPECT_NEAR(circulating[0]["current"].get<double>(), 12, 1e-9);
  EXPECT_THAT(solved("cooling")["circulating"], IsEmpty());
}

TEST(SolveFeeds, APersonReadsATable) {
  const auto text = shown(camper(), {"solve", "camper.json", "--case", "sunny"});
  EXPECT_THAT(text, ContainsRegex("fed +from +with +share"));
  EXPECT_THAT(text, ContainsRegex("fridge +(new|solar) +[0-9.]+ A +[0-9]+ %"));
  EXPECT_THAT(text, HasSubstr("old (charging)"));
  EXPECT_THAT(text, HasSubstr("mixed like what arrives"));
}

TEST(SolveFeeds, TheCirculatingCurrentIsCalledOut) {
  EXPECT_THAT(shown(camper(), {"solve", "camper.json", "--case", "quiet"}),
              HasSubstr("\"new\" drives 12.0 A through \"old\""));
}

TEST(SolveFeeds, WithOneSourceThereIsNothingToTell) {
  auto file = camper();
  file["batteries"].erase(1);
  file["joints"].clear();
  file["cases"].erase(2);
  EXPECT_THAT(shown(file, {"solve", "camper.json"}), Not(HasSubstr("share")));
}

/// Swapped in the file, the load gives: no source feeds it, and no heading stands over nothing.
TEST(SolveFeeds, WithoutASourceThereIsNoTable) {
  json file = camper();
  file["batteries"].erase(1);
  file.erase("joints"), file.erase("chargers");
  file["loads"][0]["plus"] = "-", file["loads"][0]["minus"] = "+";
  file["cases"] = json::parse(R"([{"name": "cooling", "on": "all"}])");
  EXPECT_THAT(shown(file, {"solve", "camper.json"}), Not(HasSubstr("share")));
}

TEST(SolveFeeds, StayInEightyColumns) {
  auto file = camper();
  file["loads"][0]["id"] = "the compressor fridge in the galley with the noisy fan, and its door lamp";
  file["cases"][2]["set"] = {{file["loads"][0]["id"].get<std::string>(), "6 A"}};
  file["batteries"][1]["id"] = "the new battery that was bought last week at the invented chandlery";
  const auto text = shown(file, {"solve", "camper.json"});
  std::size_t start = 0;
  for (std::size_t end; (end = text.find('\n', start)) != std::string::npos; start = end + 1)
    EXPECT_LE(columns_of(text.substr(start, end - start)), 80U) << text.substr(start, end - start);
}

TEST(BankAtRest, EveryStringHasItsCurrent) {
  const auto groups = json::parse(shown(camper(), {"bank", "camper.json", "--json"}))["groups"];
  ASSERT_EQ(groups.size(), 1u);
  const auto& at_rest = groups[0]["at_rest"];
  ASSERT_EQ(at_rest.size(), 2u);
  EXPECT_EQ(at_rest[0]["member"], json::array({"old"}));
  EXPECT_NEAR(at_rest[0]["current"].get<double>(), -12, 1e-9);
  EXPECT_NEAR(at_rest[1]["current"].get<double>(), 12, 1e-9);
}

TEST(BankAtRest, APersonReadsHowMuch) {
  EXPECT_THAT(shown(camper(), {"bank", "camper.json"}), HasSubstr("with nothing on 12 A flow into old"));
}

}  // namespace
