#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

#include "cli/text/printable.hpp"
#include "unit/cli/memory_doors.hpp"

// What `rank` says of charging, to a person and to a program. The boat is invented.
namespace {

using nlohmann::json;
using ohmtrail::cli::columns_of;
using ohmtrail::test::Program;
using testing::ContainsRegex;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

/// 14.4 V into 12.6 V: 60 A through 20 mΩ of bad post.
json boat() {
  return json::parse(R"({
    "ohmtrail": 1,
    "system": {"name": "Invented sloop", "nominal": "12 V"},
    "batteries": [{"id": "house", "plus": "h+", "minus": "h-", "nominal": "12 V", "emf": 12.6, "resistance": 0.01}],
    "chargers": [{"id": "alternator", "plus": "a+", "minus": "h-", "setpoint": 14.4, "limit": 100}],
    "joints": [{"id": "post", "from": "a+", "to": "h+", "kind": "stud", "sound": "1 mohm", "resistance": "20 mohm"}],
    "loads": [{"id": "lamp", "plus": "h+", "minus": "h-", "takes": "0.1 A"}],
    "cases": [{"name": "motoring", "on": "all", "chargers": ["alternator"]}, {"name": "moored", "on": "all"}]
  })");
}

std::string shown(const json& file, const std::vector<std::string>& more = {}) {
  Program program;
  program.files.content["boat.json"] = file.dump();
  std::vector<std::string> call{"rank", "boat.json"};
  call.insert(call.end(), more.begin(), more.end());
  EXPECT_EQ(program.run(call), 0) << program.terminal.complaints;
  return program.terminal.shown;
}

json charging(const json& file) {
  return json::parse(shown(file, {"--json"}))["charging"];
}

TEST(RankCharging, TellsAProgramWhereTheVoltsGo) {
  const auto rows = charging(boat());
  ASSERT_EQ(rows.size(), 1u) << "one charger, one battery, one case in which it runs";
  const auto& row = rows[0];
  EXPECT_EQ(row["case"], "motoring");
  EXPECT_EQ(row["charger"], "alternator");
  EXPECT_EQ(row["batteries"], json::array({"house"}));
  EXPECT_NEAR(row["lost"].get<double>(), 1.2, 0.01);
  EXPECT_NEAR(row["lost_percent"].get<double>(), 10, 0.1);
  EXPECT_EQ(row["limit_percent"], 3);
  EXPECT_EQ(row["within"], false);
  EXPECT_EQ(row["full"], true);
  EXPECT_NEAR(row["reaches"].get<double>(), 14.4, 0.05);
}

TEST(RankCharging, PartsAndElementsAddUp) {
  const auto row = charging(boat())[0];
  double parts = 0, elements = 0;
  for (const auto* part : {"battery", "wires", "terminations", "joints", "switchgear", "isolators"})
    parts += row[part].get<double>();
  for (const auto& element : row["elements"]) elements += element["lost"].get<double>();
  EXPECT_NEAR(parts, row["lost"].get<double>(), 1e-12);
  EXPECT_NEAR(elements, row["lost"].get<double>(), 1e-12);
  EXPECT_EQ(row["elements"][0]["id"], "post");
  EXPECT_EQ(row["elements"][0]["role"], "joint");
  EXPECT_GT(row["elements"][0]["comes_back"], 1);
}

TEST(RankCharging, TellsAPersonTheSame) {
  const auto text = shown(boat());
  EXPECT_THAT(text, HasSubstr("Where the volts go, from the charger to the battery"));
  EXPECT_THAT(text, HasSubstr("\"alternator\" to \"house\" in \"motoring\""));
  EXPECT_THAT(text, HasSubstr("TOO MUCH"));
  EXPECT_THAT(text, ContainsRegex("post +joint +1.20 V +1.10 V"));
}

TEST(RankCharging, UnderchargeIsSaid) {
  auto file = boat();
  file["loads"][0]["takes"] = "20 A";
  EXPECT_THAT(shown(file), HasSubstr("never gets beyond"));
  EXPECT_EQ(charging(file)[0]["full"], false);
  EXPECT_THAT(shown(boat()), Not(HasSubstr("never gets beyond")));
}

TEST(RankCharging, ABatteryThatGivesAllTheSameIsSaid) {
  auto file = boat();
  file["chargers"][0]["limit"] = 10;
  file["loads"][0]["takes"] = "60 A";
  EXPECT_THAT(shown(file), HasSubstr("not charged at all, it gives 50 A"));
  EXPECT_THAT(shown(file), HasSubstr("the charger gives all it can"));
}

TEST(RankCharging, WithoutAChargerNothingIsSaid) {
  EXPECT_THAT(shown(boat(), {"--case", "moored"}), Not(HasSubstr("from the charger")));
  auto file = boat();
  file["cases"].erase(0);
  EXPECT_THAT(charging(file), IsEmpty());
}

TEST(RankCharging, ABrokenLimitCountsWhenStrict) {
  Program program;
  program.files.content["boat.json"] = boat().dump();
  EXPECT_EQ(program.run({"rank", "boat.json", "--strict"}), 1);
  auto sound = boat();
  sound["joints"][0].erase("resistance");
  program.files.content["boat.json"] = sound.dump();
  EXPECT_EQ(program.run({"rank", "boat.json", "--strict"}), 0);
}

TEST(RankCharging, StaysInEightyColumns) {
  auto file = boat();
  file["chargers"][0]["id"] = "the large alternator on the port engine, fitted last spring";
  file["cases"][0]["chargers"] = json::array({file["chargers"][0]["id"]});
  file["joints"][0]["id"] = "the post under the starboard berth, behind the water tank, painted over";
  const auto text = shown(file);
  std::size_t start = 0;
  for (std::size_t end; (end = text.find('\n', start)) != std::string::npos; start = end + 1)
    EXPECT_LE(columns_of(text.substr(start, end - start)), 80U) << text.substr(start, end - start);
}

}  // namespace
