#include "cli/parse.hpp"

#include <gmock/gmock.h>

namespace {

using namespace ohmtrail::cli;
using testing::ElementsAre;
using testing::HasSubstr;

constexpr Option by{.name = "--by", .value = "volts|heat", .sentence = "order"};
constexpr Option top{.name = "--top",
                     .value = "N",
                     .sentence = "rows",
                     .number = true,
                     .whole = true,
                     .lowest = 1,
                     .highest = 100};
constexpr Option between{
    .name = "--between", .value = "A B", .sentence = "cases", .values = 2, .excludes = "--case"};

Exit nothing(const Call&, const Doors&) {
  return Exit::done;
}

Command command() {
  return {.name = "probe",
          .summary = "",
          .description = "",
          .options = {options::file, by, top, between, options::output, options::in_case, options::json,
                      options::csv},
          .examples = {},
          .run = nothing};
}

std::vector<std::string> mistakes(const std::vector<std::string>& arguments) {
  const auto call = parse(command(), arguments);
  return call ? std::vector<std::string>{} : call.error();
}

Call accepted(const std::vector<std::string>& arguments) {
  const auto call = parse(command(), arguments);
  EXPECT_TRUE(call.has_value()) << (call ? "" : call.error().front());
  return call.value_or(Call{});
}

TEST(Parse, TakesOptionsInAnyOrder) {
  const Call call = accepted({"--by", "heat", "boat.json", "--top=3", "-o", "out.svg", "--json"});
  EXPECT_EQ(call.text(options::file), "boat.json");
  EXPECT_EQ(call.text(by), "heat");
  EXPECT_EQ(call.number(top), 3);
  EXPECT_EQ(call.text(options::output), "out.svg");
  EXPECT_TRUE(call.has(options::json));
  EXPECT_FALSE(call.has(options::csv));
}

TEST(Parse, TakesADashForStandardInput) {
  EXPECT_EQ(accepted({"-"}).text(options::file), "-");
}

TEST(Parse, TakesEverythingAfterTwoDashesAsFiles) {
  EXPECT_EQ(accepted({"--", "--odd-name.json"}).text(options::file), "--odd-name.json");
}

TEST(Parse, TakesTwoValuesWhereTwoAreAsked) {
  EXPECT_THAT(accepted({"boat.json", "--between", "quiet", "fridge on"}).texts(between),
              ElementsAre("quiet", "fridge on"));
}

TEST(Parse, ASwitchGivenTwiceIsOnce) {
  EXPECT_TRUE(accepted({"boat.json", "--json", "--json"}).has(options::json));
}

TEST(Parse, NamesTheMissingFile) {
  EXPECT_THAT(mistakes({}), ElementsAre("FILE is missing"));
}

TEST(Parse, OffersTheNearestOption) {
  EXPECT_THAT(mistakes({"boat.json", "--jsn"}), ElementsAre("unknown option --jsn; did you mean --json?"));
  EXPECT_THAT(mistakes({"boat.json", "--outptu=x"}),
              ElementsAre("unknown option --outptu; did you mean --output?"));
}

TEST(Parse, PointsToTheHelpWhereNothingIsNear) {
  EXPECT_THAT(mistakes({"boat.json", "--frobnicate"}),
              ElementsAre("unknown option --frobnicate; ohmtrail probe --help lists them"));
}

TEST(Parse, TellsEveryMistakeAtOnce) {
  EXPECT_THAT(mistakes({"boat.json", "more.json", "--top", "0", "--by", "heta"}),
              ElementsAre("\"more.json\" is one argument too many",
                          "--by \"heta\" is not one of volts, heat; did you mean heat?",
                          "--top 0 is out of range, expected at least 1"));
}

TEST(Parse, ChecksNumbers) {
  EXPECT_THAT(mistakes({"f", "--top", "many"}), ElementsAre("--top \"many\" is not a number"));
  EXPECT_THAT(mistakes({"f", "--top", "nan"}), ElementsAre("--top \"nan\" is not a number"));
  EXPECT_THAT(mistakes({"f", "--top", "3x"}), ElementsAre("--top \"3x\" is not a number"));
  EXPECT_THAT(mistakes({"f", "--top", "2.5"}), ElementsAre("--top 2.5 is not a whole number"));
  EXPECT_THAT(mistakes({"f", "--top", "1000"}),
              ElementsAre("--top 1000 is out of range, expected at most 100"));
}

TEST(Parse, TellsHowAnOptionWantsItsValues) {
  EXPECT_THAT(mistakes({"f", "--by"}), ElementsAre("--by wants one value, once: --by volts|heat"));
  EXPECT_THAT(mistakes({"f", "--between", "only"}),
              ElementsAre("--between wants 2 values, once: --between A B"));
  EXPECT_THAT(mistakes({"f", "--top", "1", "--top", "2"}),
              ElementsAre("--top wants one value, once: --top N"));
  EXPECT_THAT(mistakes({"f", "--json=yes"}), ElementsAre("--json takes no value"));
}

TEST(Parse, RefusesWhatExcludesEachOther) {
  EXPECT_THAT(mistakes({"f", "--json", "--csv"}), ElementsAre("--csv and --json exclude each other"));
  EXPECT_THAT(mistakes({"f", "--case", "a", "--between", "a", "b"}),
              ElementsAre("--between and --case exclude each other"));
}

TEST(Parse, RefusesAnEmptyFileName) {
  EXPECT_THAT(mistakes({""}), ElementsAre("FILE is empty"));
}

}  // namespace
