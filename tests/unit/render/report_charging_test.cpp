#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "render/report_parts.hpp"
#include "render/text.hpp"
#include "support/recorded_document.hpp"
#include "support/render_shipped.hpp"
#include "support/report_input.hpp"

namespace ohmtrail::render {
namespace {

using testing::Contains;
using testing::HasSubstr;

diagnose::ChargeSplit way(const std::string& charger, double fraction) {
  diagnose::ChargeSplit split;
  split.in_case = "sunny day";
  split.charger = charger;
  split.batteries = {"A1", "A2"};
  split.set_point = 14.4;
  split.charger_volts = 14.1;
  split.lost = 12 * fraction;
  split.battery_volts = 14.1 - split.lost;
  split.current = 20;
  split.fraction = fraction;
  split.within = fraction <= diagnose::most_charging_drop;
  split.elements = {{"panel/wire", network::Role::wire, 0.8 * split.lost, {}},
                    {"panel/to", network::Role::termination, 0.05 * split.lost, {}}};
  return split;
}

test::RecordedDocument told(std::vector<diagnose::ChargeSplit> ways, std::size_t most = 12) {
  ReportInput input;
  input.system = test::shipped("yacht-12v");
  input.charging = std::move(ways);
  Brevity brevity;
  brevity.charging = most;
  test::RecordedDocument document;
  tell_charging(document, input, brevity);
  return document;
}

TEST(ChargingChapter, IsLeftOutWhereNoChargerRuns) {
  EXPECT_TRUE(told({}).all().empty());
}

TEST(ChargingChapter, TellsWhatIsLostAndWhere) {
  const auto document = told({way("shore charger", 0.02)});
  ASSERT_EQ(document.tables.size(), 1u);
  const auto& row = document.tables[0].at(0);
  EXPECT_EQ(row[0], "shore charger");
  EXPECT_EQ(row[1], "A1, A2");
  EXPECT_THAT(row, Contains("14.10\u202FV"));
  EXPECT_THAT(row, Contains("13.86\u202FV"));
  EXPECT_THAT(row, Contains("240\u202FmV"));
  EXPECT_THAT(row, Contains("2.0\u202F%"));
  EXPECT_THAT(row, Contains(std::string(text::limit_met)));
  EXPECT_EQ(row.back(), "Cable panel 192\u202FmV") << "what loses next to nothing is not named";
  EXPECT_THAT(document.paragraphs, Contains(HasSubstr("no more than 3.0\u202F%")));
}

TEST(ChargingChapter, WhatIsWrongStandsFirstAndTheRestIsCounted) {
  diagnose::ChargeSplit empty = way("generator", 0.001);
  empty.full = false;
  empty.reaches = 13.2;
  empty.charger_is_spent = true;
  empty.limit = 30;
  const auto document =
      told({way("solar", 0.01), way("shore charger", 0.02), empty, way("alternator", 0.05)}, 3);
  ASSERT_EQ(document.tables[0].size(), 3u);
  EXPECT_EQ(document.tables[0][0][0], "alternator");
  EXPECT_THAT(document.tables[0][0], Contains(std::string(text::limit_broken)));
  EXPECT_EQ(document.tables[0][1][0], "generator");
  EXPECT_EQ(document.tables[0][2][0], "shore charger");
  EXPECT_THAT(document.paragraphs, Contains(HasSubstr("never gets beyond 13.20\u202FV of the 14.40\u202FV")));
  EXPECT_THAT(document.paragraphs, Contains(HasSubstr("gives all it can, 30.0\u202FA")));
  EXPECT_THAT(document.paragraphs, Contains(HasSubstr("1 more")));
}

TEST(ChargingChapter, ABatteryThatGivesInSpiteOfTheChargerIsNotCharged) {
  diagnose::ChargeSplit split = way("solar", 0.01);
  split.current = -3;
  EXPECT_THAT(told({split}).tables[0][0], Contains(std::string(text::charging_none)));
}

TEST(ChargingChapter, SaysWhatRankSaysOfAShippedSystem) {
  const ReportInput input = test::shipped_report("camper-12v");
  ASSERT_FALSE(input.charging.empty());
  test::RecordedDocument document;
  tell_batteries(document, input);
  tell_charging(document, input, {});
  const auto& row = document.tables.back().at(0);
  EXPECT_EQ(row[0], "solar");
  EXPECT_EQ(row[1], "leisure");
  EXPECT_THAT(row, Contains("297\u202FmV"));  // as `ohmtrail rank` prints it in README.md
  EXPECT_EQ(row.back(), "Cable solar lead 283\u202FmV");
}

}  // namespace
}  // namespace ohmtrail::render
