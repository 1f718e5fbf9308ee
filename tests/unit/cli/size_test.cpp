#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

#include "cli/text/printable.hpp"
#include "cli/text/progress.hpp"
#include "unit/cli/memory_doors.hpp"

// The command `size` as a person and as a program see it, and its progress. The system is invented.
namespace {

using nlohmann::json;
using ohmtrail::cli::columns_of;
using ohmtrail::test::Program;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::StartsWith;

constexpr const char* skiff = R"({
  "ohmtrail": 1,
  "system": {"name": "Invented skiff", "nominal": "12 V"},
  "batteries": [{"id": "bank", "plus": "b+", "minus": "b-", "nominal": "12 V", "emf": "12.7 V", "resistance": "5 mohm"}],
  "runs": [
    {"id": "feed", "from": "f", "to": "l+", "gauge": "18 AWG", "length": "5 m", "return": {"from": "l-", "to": "b-"}},
    {"id": "tail", "from": "l+", "to": "m+", "gauge": "16 AWG", "length": "1 m", "return": {"from": "m-", "to": "l-"}}
  ],
  "fuses": [{"id": "fuse", "from": "b+", "to": "f", "rating": "40 A", "form": "blade"}],
  "loads": [{"id": "lamp", "plus": "l+", "minus": "l-", "takes": "8 A", "inrush": "90 A"},
            {"id": "radio", "plus": "m+", "minus": "m-", "takes": "1 A", "class": "critical"}],
  "cable_list": [{"gauge": "16 AWG", "price": 1}, {"gauge": "12 awg", "price": 2}, {"gauge": "6 AWG", "price": 4}]
})";

Program with(const std::string& file) {
  Program program;
  program.files.content["boat.json"] = file;
  return program;
}

json result_of(const std::string& file, int exit = 0) {
  auto program = with(file);
  EXPECT_EQ(program.run({"size", "boat.json", "--json"}), exit) << program.terminal.complaints;
  return json::parse(program.terminal.shown);
}

/// The same with a load that nothing on the list can feed.
std::string too_much() {
  std::string file = skiff;
  file.replace(file.find("\"8 A\""), 5, "\"150 A\"");
  return file;
}

TEST(SizeCommand, JsonFollowsTheContract) {
  const auto result = result_of(skiff);
  EXPECT_EQ(result["ohmtrail"], 1);
  EXPECT_EQ(result["result"], "size");
  EXPECT_EQ(result["proved"], true);
  EXPECT_EQ(result["cost"], result["bound"]);
  ASSERT_EQ(result["runs"].size(), 2U);
  for (const auto& run : result["runs"])
    for (const auto* key : {"id", "gauge", "was", "area", "mass", "cost", "fuse", "ampacity", "current"})
      EXPECT_TRUE(run.contains(key)) << key;
  EXPECT_EQ(result["runs"][0]["id"], "feed");
  EXPECT_EQ(result["runs"][0]["was"], "18 AWG");
  ASSERT_EQ(result["loads"].size(), 2U);
  for (const auto* key : {"id", "volts", "current", "power", "supply", "drop", "drop_percent",
                          "limit_percent", "within", "sag", "running", "case", "volts_before"})
    EXPECT_TRUE(result["loads"][0].contains(key)) << key;
  EXPECT_TRUE(result["shortfalls"].empty());
}

TEST(SizeCommand, GaugesAreSpelledAsInTheListAndTheSumIsTheCost) {
  const auto result = result_of(skiff);
  double sum = 0;
  for (const auto& run : result["runs"]) {
    EXPECT_TRUE(run["gauge"] == "16 AWG" || run["gauge"] == "12 awg" || run["gauge"] == "6 AWG")
        << run["gauge"];
    EXPECT_LE(run["current"], run["ampacity"]);
    sum += run["cost"].get<double>();
  }
  EXPECT_DOUBLE_EQ(sum, result["cost"].get<double>());
  for (const auto& load : result["loads"]) {
    EXPECT_EQ(load["within"], true);
    EXPECT_GT(load["volts"], load["volts_before"]);
  }
}

TEST(SizeCommand, TextSaysTheVerdictFirstInEightyColumns) {
  auto program = with(skiff);
  EXPECT_EQ(program.run({"size", "boat.json"}), 0);
  const auto& shown = program.terminal.shown;
  EXPECT_THAT(shown, StartsWith("Invented skiff\nNew cable in 1 of 2 runs keeps every limit in every case:"));
  EXPECT_THAT(shown, HasSubstr("(proved)"));
  EXPECT_THAT(shown, HasSubstr("because of"));
  EXPECT_THAT(shown, HasSubstr("at which it may open at once"));
  EXPECT_THAT(shown, HasSubstr("does not replace the local code or a licensed electrician."));
  EXPECT_THAT(program.terminal.complaints, IsEmpty()) << "no progress within a second";
  std::size_t start = 0;
  for (std::size_t end; (end = shown.find('\n', start)) != std::string::npos; start = end + 1)
    EXPECT_LE(columns_of(shown.substr(start, end - start)), 80U);
}

TEST(SizeCommand, CsvHasALineARun) {
  auto program = with(skiff);
  EXPECT_EQ(program.run({"size", "boat.json", "--csv"}), 0);
  EXPECT_THAT(program.terminal.shown, StartsWith("id,gauge,was,"));
  EXPECT_THAT(program.terminal.shown, HasSubstr("\r\ntail,"));
}

TEST(SizeCommand, TheNewFileKeepsEveryLimit) {
  auto program = with(skiff);
  ASSERT_EQ(program.run({"size", "boat.json", "-o", "new.json"}), 0) << program.terminal.complaints;
  ASSERT_EQ(program.files.written, std::vector<std::string>{"new.json"});
  Program again;
  again.files.content["new.json"] = program.files.content["new.json"];
  EXPECT_EQ(again.run({"solve", "new.json", "--strict"}), 0);
  Program checked;
  checked.files.content["new.json"] = program.files.content["new.json"];
  EXPECT_EQ(checked.run({"check", "new.json", "--json"}), 0);
  const json result = json::parse(checked.terminal.shown);
  for (const auto& finding : result["findings"]) {
    EXPECT_NE(finding["rule"], "fuse-over-ampacity");
    EXPECT_NE(finding["rule"], "over-ampacity");
    EXPECT_NE(finding["rule"], "drop-limit");
  }
}

TEST(SizeCommand, OnlyTheNamedRunsAreChosen) {
  auto program = with(skiff);
  ASSERT_EQ(program.run({"size", "boat.json", "--json", "--only", "feed"}), 0) << program.terminal.complaints;
  const auto runs = json::parse(program.terminal.shown)["runs"];
  EXPECT_EQ(runs[1]["gauge"], "16 AWG");
  EXPECT_EQ(runs[1]["chosen"], false);
  EXPECT_EQ(runs[0]["chosen"], true);
  auto both = with(skiff);
  ASSERT_EQ(both.run({"size", "boat.json", "--json", "--only", "feed", "--only", "tail"}), 0)
      << both.terminal.complaints;
  EXPECT_EQ(json::parse(both.terminal.shown)["runs"][1]["chosen"], true);
}

TEST(SizeCommand, AnUnknownRunIsAMistake) {
  auto program = with(skiff);
  EXPECT_EQ(program.run({"size", "boat.json", "--only", "fed"}), 2);
  EXPECT_THAT(program.terminal.shown, IsEmpty());
  EXPECT_THAT(program.terminal.complaints, HasSubstr("did you mean \"feed\"?"));
}

TEST(SizeCommand, WhereNothingSufficesItSaysWhyAndExitsThree) {
  const auto result = result_of(too_much(), 3);
  EXPECT_EQ(result["proved"], false);
  EXPECT_TRUE(result["cost"].is_null());
  ASSERT_FALSE(result["shortfalls"].empty());
  for (const auto* key : {"id", "case", "text", "remedy"}) EXPECT_TRUE(result["shortfalls"][0].contains(key));
  auto program = with(too_much());
  EXPECT_EQ(program.run({"size", "boat.json", "-o", "new.json"}), 3);
  EXPECT_THAT(program.terminal.shown, HasSubstr("Nothing on the list suffices"));
  EXPECT_THAT(program.terminal.shown, HasSubstr("Would help:"));
  EXPECT_THAT(program.files.written, IsEmpty());
  EXPECT_THAT(program.terminal.complaints, HasSubstr("new.json is not written"));
}

TEST(SizeCommand, TheSameFileGivesTheSameBytes) {
  auto once = with(skiff), again = with(skiff);
  EXPECT_EQ(once.run({"size", "boat.json", "--json"}), 0);
  EXPECT_EQ(again.run({"size", "boat.json", "--json"}), 0);
  EXPECT_EQ(once.terminal.shown, again.terminal.shown);
}

TEST(SizeCommand, ANegativeTimeLimitIsAMistake) {
  auto program = with(skiff);
  EXPECT_EQ(program.run({"size", "boat.json", "--time-limit", "-1"}), 2);
}

class SeenTerminal : public ohmtrail::test::MemoryTerminal {
 public:
  [[nodiscard]] bool errors_are_seen() const override { return true; }
};

TEST(ProgressLine, IsSilentInTheFirstSecondThenSpeaksOnceASecond) {
  ohmtrail::test::MemoryTerminal terminal;
  double now = 100;
  {
    ohmtrail::cli::ProgressLine line(terminal, [&] { return now; });
    now = 100.9;
    line.tell("one");
    now = 101.1;
    line.tell("two");
    now = 101.9;
    line.tell("three");
    now = 102.2;
    line.tell("four");
  }
  EXPECT_EQ(terminal.complaints, "two\nfour\n");
}

TEST(ProgressLine, WritesOverItselfOnATerminalAndGoes) {
  SeenTerminal terminal;
  double now = 0;
  {
    ohmtrail::cli::ProgressLine line(terminal, [&] { return now; });
    now = 2;
    line.tell("far \x1b[31m off");
  }
  EXPECT_THAT(terminal.complaints, StartsWith("\rfar "));
  EXPECT_THAT(terminal.complaints, Not(HasSubstr("[31m\x1b")));
  EXPECT_THAT(terminal.complaints, Not(HasSubstr("\n")));
  EXPECT_TRUE(terminal.complaints.ends_with("\r\x1b[K"));
}

}  // namespace
