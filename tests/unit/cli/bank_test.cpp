#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

#include "cli/text/printable.hpp"
#include "unit/cli/memory_doors.hpp"

// The command `bank` as a person and as a program see it. The batteries are invented.
namespace {

using nlohmann::json;
using ohmtrail::cli::columns_of;
using ohmtrail::test::Program;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::StartsWith;

constexpr const char* worn_and_good = R"({
  "ohmtrail": 1,
  "system": {"name": "Invented launch", "nominal": "12 V"},
  "batteries": [
    {"id": "A", "plus": "A +", "minus": "A -", "nominal": "6 V", "capacity": "225 Ah", "cca": "650 A",
     "checks": {"rest": {"volts": 6.30, "hours": 8, "temperature": "25 C"},
                "load_test": {"before": 6.3, "amps": 300, "volts": 5.8, "seconds": 10, "temperature": "25 C"}}},
    {"id": "B", "plus": "B +", "minus": "B -", "nominal": "6 V", "capacity": "225 Ah", "cca": "650 A",
     "checks": {"rest": {"volts": 6.28, "hours": 8, "temperature": "25 C"},
                "load_test": {"before": 6.28, "amps": 300, "volts": 4.6, "seconds": 15, "temperature": "25 C"}}}
  ],
  "runs": [{"id": "link", "from": "A +", "to": "B -", "gauge": "2/0 AWG", "length": "1 ft"}],
  "loads": [{"id": "lamp", "plus": "B +", "minus": "A -", "takes": "10 A"}]
})";

Program with(const char* file) {
  Program program;
  program.files.content["bank.json"] = file;
  return program;
}

json result_of(const char* file) {
  auto program = with(file);
  EXPECT_EQ(program.run({"bank", "bank.json", "--json"}), 0) << program.terminal.complaints;
  return json::parse(program.terminal.shown);
}

TEST(BankCommand, JsonFollowsTheContract) {
  const auto result = result_of(worn_and_good);
  EXPECT_EQ(result["ohmtrail"], 1);
  EXPECT_EQ(result["result"], "bank");
  EXPECT_EQ(result["system"], "Invented launch");
  EXPECT_TRUE(result["assumptions"].is_array());
  ASSERT_EQ(result["batteries"].size(), 2u);
  for (const auto& battery : result["batteries"])
    for (const auto* key :
         {"id", "soc", "soc_from", "emf", "resistance", "resistance_from", "verdict", "findings"})
      EXPECT_TRUE(battery.contains(key)) << key;
}

TEST(BankCommand, NumbersAreSiAndReadBack) {
  const auto battery = result_of(worn_and_good)["batteries"][1];
  EXPECT_EQ(battery["id"], "B");
  EXPECT_EQ(battery["emf"], 6.28);
  EXPECT_DOUBLE_EQ(battery["resistance"].get<double>(), (6.28 - 4.6) / 300);
  EXPECT_GT(battery["soc"], 0.8);
  EXPECT_LE(battery["soc"], 1.0);
  EXPECT_EQ(battery["verdict"], "sulphated-or-worn");
}

TEST(BankCommand, FindingsCarryNameSeveritySourceAndRemedy) {
  const auto findings = result_of(worn_and_good)["batteries"][1]["findings"];
  const auto failed = std::find_if(findings.begin(), findings.end(),
                                   [](const json& finding) { return finding["name"] == "load-test-failed"; });
  ASSERT_NE(failed, findings.end());
  EXPECT_EQ((*failed)["severity"], "soon");
  EXPECT_THAT((*failed)["source"].get<std::string>(), HasSubstr("Table 5"));
  EXPECT_THAT((*failed)["text"].get<std::string>(), HasSubstr("4.60 V under 300 A"));
}

TEST(BankCommand, TheStringNamesItsWeakest) {
  const auto groups = result_of(worn_and_good)["groups"];
  ASSERT_EQ(groups.size(), 1u);
  EXPECT_EQ(groups[0]["kind"], "series");
  EXPECT_EQ(groups[0]["members"], json::parse(R"([["A"], ["B"]])"));
  EXPECT_EQ(groups[0]["weakest"], "B");
}

TEST(BankCommand, TextStaysInEightyColumnsAndSaysTheVerdictInWords) {
  auto program = with(worn_and_good);
  EXPECT_EQ(program.run({"bank", "bank.json"}), 0);
  EXPECT_THAT(program.terminal.shown, StartsWith("Invented launch\n"));
  EXPECT_THAT(program.terminal.shown, HasSubstr("Sulphated or worn out"));
  EXPECT_THAT(program.terminal.shown, HasSubstr("goggles"));
  EXPECT_THAT(program.terminal.shown, HasSubstr("licensed"));
  EXPECT_THAT(program.terminal.complaints, IsEmpty());
  std::size_t start = 0;
  for (std::size_t end; (end = program.terminal.shown.find('\n', start)) != std::string::npos;
       start = end + 1)
    EXPECT_LE(columns_of(program.terminal.shown.substr(start, end - start)), 80U);
}

TEST(BankCommand, CsvHasALineAFinding) {
  auto program = with(worn_and_good);
  EXPECT_EQ(program.run({"bank", "bank.json", "--csv"}), 0);
  EXPECT_THAT(program.terminal.shown, StartsWith("id,verdict,soc,"));
  EXPECT_THAT(program.terminal.shown, HasSubstr("B,sulphated-or-worn,"));
  EXPECT_THAT(program.terminal.shown, HasSubstr("load-test-failed"));
}

TEST(BankCommand, StrictExitsOneWhenSomethingMustBeDone) {
  auto program = with(worn_and_good);
  EXPECT_EQ(program.run({"bank", "bank.json", "--strict"}), 1);
  auto good = with(R"({"ohmtrail": 1, "system": {"name": "Invented", "nominal": "12 V"},
    "batteries": [{"id": "A", "plus": "+", "minus": "-", "nominal": "12 V", "cca": "600 A",
      "checks": {"rest": {"volts": 12.6, "hours": 8}}}],
    "loads": [{"id": "lamp", "plus": "+", "minus": "-", "takes": "10 A"}]})");
  EXPECT_EQ(good.run({"bank", "bank.json", "--strict"}), 0);
}

TEST(BankCommand, AChargerThatWasOnIsReadFromTheFile) {
  const auto result = result_of(R"({"ohmtrail": 1, "system": {"name": "Invented", "nominal": "12 V"},
    "batteries": [{"id": "A", "plus": "+", "minus": "-", "nominal": "12 V", "cca": "600 A",
      "checks": {"rest": {"volts": 13.9, "hours": 8, "charging": true}}}],
    "loads": [{"id": "lamp", "plus": "+", "minus": "-", "takes": "10 A"}]})");
  EXPECT_EQ(result["batteries"][0]["findings"][0]["name"], "charger-on");
  EXPECT_LT(result["batteries"][0]["emf"], 12.8);
}

TEST(BankCommand, AWrongFileIsAMistakeWithEmptyOutput) {
  auto program = with("{}");
  EXPECT_EQ(program.run({"bank", "bank.json", "--json"}), 2);
  EXPECT_THAT(program.terminal.shown, IsEmpty());
  EXPECT_THAT(program.terminal.complaints, Not(IsEmpty()));
}

TEST(BankCommand, TheSameFileGivesTheSameBytes) {
  auto once = with(worn_and_good), again = with(worn_and_good);
  EXPECT_EQ(once.run({"bank", "bank.json", "--json"}), 0);
  EXPECT_EQ(again.run({"bank", "bank.json", "--json"}), 0);
  EXPECT_EQ(once.terminal.shown, again.terminal.shown);
}

}  // namespace
