#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "render/report.hpp"
#include "render/report_parts.hpp"
#include "render/text.hpp"
#include "support/recorded_document.hpp"
#include "support/render_shipped.hpp"
#include "support/report_input.hpp"

namespace ohmtrail::render {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::Not;

/// What a chapter tells.
template <class Tell>
test::RecordedDocument told(Tell tell, const ReportInput& input) {
  test::RecordedDocument document;
  tell(document, input);
  return document;
}

// Before and after

BeforeAfter cured_one() {
  BeforeAfter both;
  both.earlier.date = "2026-05-02";
  both.earlier.reference = "R-1";
  both.comparison.cured = {"panel/wire"};
  both.comparison.left = {"windlass/wire"};
  both.comparison.elements = {{"panel/wire", 0.030, 0.004, -0.026, diagnose::Change::better},
                              {"windlass/wire", 0.020, 0.021, 0, diagnose::Change::none},
                              {"negative link/wire", 0.001, 0.001, 0, diagnose::Change::none}};
  both.comparison.loads = {{"cabin lamps", "evening", 11.83, 12.05}};
  return both;
}

TEST(BeforeAfterChapter, IsLeftOutWhereItWasNotAskedFor) {
  EXPECT_TRUE(told(tell_before_after, test::shipped_report("yacht-12v")).headings.empty());
}

TEST(BeforeAfterChapter, SaysWhatWasCuredWhatIsLeftAndWhatCameBack) {
  ReportInput input = test::shipped_report("yacht-12v");
  input.before_after = cured_one();
  const auto document = told(tell_before_after, input);
  EXPECT_EQ(document.sheets, 1);
  EXPECT_THAT(document.all(), HasSubstr("R-1, 2026-05-02"));
  EXPECT_THAT(document.paragraphs, Contains(HasSubstr("Cured: 1 of the 2 faulty parts found before")));
  EXPECT_THAT(document.paragraphs, Contains(HasSubstr("Still to do: cable windlass")));
  ASSERT_EQ(document.tables.size(), 2u);
  EXPECT_THAT(document.tables[0][0], Contains("220\u202FmV"));
  ASSERT_EQ(document.tables[1].size(), 2u) << "what did not change is counted, not listed";
  EXPECT_THAT(document.tables[1][0], Contains(std::string(text::verdict_cured)));
  EXPECT_THAT(document.tables[1][1], Contains(std::string(text::verdict_left)));
  EXPECT_THAT(document.paragraphs, Contains(HasSubstr("unchanged as far as the readings can tell: 1")));
}

TEST(BeforeAfterChapter, ShowsBothStaircases) {
  ReportInput input = test::shipped_report("yacht-12v");
  input.before_after = cured_one();
  input.before_after->then = input.before_after->now = input.staircase;
  EXPECT_EQ(told(tell_before_after, input).pictures.size(), 2u);
}

TEST(BeforeAfterChapter, SaysWhenAllIsCuredOrNothingWasFaulty) {
  ReportInput input = test::shipped_report("yacht-12v");
  input.before_after = cured_one();
  input.before_after->comparison.left.clear();
  EXPECT_THAT(told(tell_before_after, input).paragraphs, Contains(std::string(text::cured_all)));
  input.before_after->comparison.cured.clear();
  EXPECT_THAT(told(tell_before_after, input).paragraphs, Contains(std::string(text::cured_none_before)));
}

TEST(BeforeAfterChapter, NamesNewFaultsAndPartsOfOneSurveyOnly) {
  ReportInput input = test::shipped_report("yacht-12v");
  input.before_after = cured_one();
  input.before_after->comparison.fresh = {"panel fuse"};
  input.before_after->comparison.gone = {"old splice"};
  input.before_after->comparison.added = {"new splice"};
  const std::string all = told(tell_before_after, input).all();
  EXPECT_THAT(all, HasSubstr("New since then: panel fuse"));
  EXPECT_THAT(all, HasSubstr("No longer in the system: old splice"));
  EXPECT_THAT(all, HasSubstr("Added since then: new splice"));
}

TEST(BeforeAfterChapter, NamesACableAsAWholeWhereItWasReadSo) {
  ReportInput input = test::shipped_report("yacht-12v");
  input.before_after = cured_one();
  diagnose::Comparison& c = input.before_after->comparison;
  c.conductors = {{"windlass", 0.021, 0.004, -0.017, diagnose::Change::better},
                  {"windlass/return", 0.004, 0.004, 0, diagnose::Change::none}};
  c.cured = {"windlass"};
  c.left = {"windlass/return"};
  const auto document = told(tell_before_after, input);
  EXPECT_THAT(document.paragraphs,
              Contains(HasSubstr("Still to do: return cable of windlass with its ends")));
  ASSERT_EQ(document.tables.back().size(), 3u) << "two cables and a part that is better";
  EXPECT_THAT(document.tables.back(), Contains(Contains("Cable windlass with its ends")));
  EXPECT_THAT(document.paragraphs, Contains(HasSubstr("unchanged as far as the readings can tell: 2")))
      << "only parts are counted";
}

// Rewire

plan::SizeResult chosen() {
  plan::SizeResult sized;
  sized.found = sized.proved = true;
  sized.cost = sized.bound = 12.3;
  plan::RunChoice renewed;
  renewed.id = "windlass";
  renewed.was = "2 AWG";
  renewed.gauge = "2/0 AWG";
  renewed.mass = 9;
  renewed.mass_was = 4.5;
  renewed.fuse = 150;
  renewed.current = 100;
  renewed.ampacity = 300;
  renewed.chosen = renewed.renewed = true;
  renewed.reason = plan::Reason::drop;
  plan::RunChoice kept = renewed;
  kept.id = "panel";
  kept.renewed = false;
  sized.runs = {renewed, kept};
  sized.fuses = {{"panel fuse", 60, 40, {}, {}}, {"windlass breaker", 150, 150, 400.0, 0.5}};
  sized.loads = {{"windlass motor", "raising the anchor", 9.8, 11.2, 0.7, 0.058, 0.10, true, true},
                 {"windlass motor", "quiet", 12.0, 12.1, 0.1, 0.01, 0.10, true, true}};
  return sized;
}

TEST(RewireChapter, IsLeftOutWhereItWasNotAskedFor) {
  EXPECT_TRUE(told(tell_rewire, test::shipped_report("yacht-12v")).headings.empty());
}

TEST(RewireChapter, ListsNewCableAndCountsTheRest) {
  ReportInput input = test::shipped_report("yacht-12v");
  input.rewire = chosen();
  const auto document = told(tell_rewire, input);
  EXPECT_THAT(document.paragraphs, Contains(HasSubstr("New cable in 1 of 2 runs")));
  EXPECT_THAT(document.paragraphs, Contains(std::string(text::rewire_proved)));
  EXPECT_THAT(document.paragraphs, Contains(HasSubstr("18.0\u202Fkg; in the cable that is there now: 9.00")));
  ASSERT_EQ(document.tables.size(), 2u);
  ASSERT_EQ(document.tables[0].size(), 1u);
  EXPECT_THAT(document.tables[0][0], Contains("2/0 AWG"));
  EXPECT_THAT(document.tables[0][0], Contains(HasSubstr("2 × 9.00")));
  EXPECT_THAT(document.tables[0][0], Contains("4.50 / 9.00\u202Fkg"));
  EXPECT_THAT(document.paragraphs, Contains(std::string(text::rewire_stays_one)));
}

TEST(RewireChapter, SaysWhyEachRunIsAsThickAsItIs) {
  using enum plan::Reason;
  for (const auto& [reason, words] :
       {std::pair{cheapest, text::why_cheapest}, std::pair{drop, text::why_drop},
        std::pair{ampacity, text::why_ampacity}, std::pair{fuse, text::why_fuse},
        std::pair{plan::Reason::kept, text::why_kept}}) {
    ReportInput input = test::shipped_report("yacht-12v");
    input.rewire = chosen();
    input.rewire->runs.front().reason = reason;
    EXPECT_THAT(told(tell_rewire, input).tables.at(0).at(0), Contains(std::string(words)));
  }
}

TEST(RewireChapter, ShowsPricesWhereTheListHasThem) {
  ReportInput input = test::shipped_report("yacht-12v");
  input.rewire = chosen();
  input.rewire->runs.front().cost = 86.4;
  EXPECT_THAT(told(tell_rewire, input).tables.at(0).at(0), Not(Contains("86.40")));
  input.rewire->priced = true;
  EXPECT_THAT(told(tell_rewire, input).tables.at(0).at(0), Contains("86.40"));
}

TEST(RewireChapter, TellsEachLoadsWorstCaseOnce) {
  ReportInput input = test::shipped_report("yacht-12v");
  input.rewire = chosen();
  const auto document = told(tell_rewire, input);
  ASSERT_EQ(document.tables[1].size(), 1u);
  EXPECT_THAT(document.tables[1][0], Contains("raising the anchor"));
  EXPECT_THAT(document.tables[1][0], Contains("9.80\u202FV"));
  EXPECT_THAT(document.tables[1][0], Contains("11.20\u202FV"));
}

TEST(RewireChapter, TellsOfFusesThatChangeOrWouldOpen) {
  ReportInput input = test::shipped_report("yacht-12v");
  input.rewire = chosen();
  const std::string all = told(tell_rewire, input).all();
  EXPECT_THAT(all, HasSubstr("Panel fuse: 40.0\u202FA instead of 60.0\u202FA"));
  EXPECT_THAT(all, HasSubstr("Windlass breaker: a start draws 400\u202FA"));
}

TEST(RewireChapter, TellsOnceWhatTheRulesSayOfTheNewCable) {
  ReportInput input = test::shipped_report("yacht-12v");
  input.rewire = chosen();
  EXPECT_THAT(told(tell_rewire, input).all(), Not(HasSubstr(std::string(text::rewire_raised))));
  diagnose::Finding thin;
  thin.rule = "unlike-links", thin.subject = "link B", thin.text = "10 AWG in one string",
  thin.remedy = "Fit one.";
  diagnose::Finding again = thin, other = thin;
  again.subject = "parallel minus";
  other.subject = "bank minus", other.text = "thinner than the plus";
  input.raised_by_rewire = {thin, other, again};
  const std::vector<std::string> paragraphs = told(tell_rewire, input).paragraphs;
  EXPECT_THAT(paragraphs, Contains("Link B, parallel minus: 10 AWG in one string. Fit one."));
  EXPECT_THAT(paragraphs, Contains("Bank minus: thinner than the plus. Fit one."));
  EXPECT_EQ(
      std::count_if(paragraphs.begin(), paragraphs.end(),
                    [](const std::string& one) { return one.find("parallel minus") != std::string::npos; }),
      1);
}

TEST(RewireChapter, SaysWhenItIsNotProvedOrNothingSuffices) {
  ReportInput input = test::shipped_report("yacht-12v");
  input.rewire = chosen();
  input.rewire->proved = false;
  input.rewire->bound = 12.0;
  EXPECT_THAT(told(tell_rewire, input).all(), HasSubstr("one that costs up to 0.30\u202Fkg less may exist"));
  input.rewire->found = false;
  EXPECT_THAT(told(tell_rewire, input).paragraphs, Contains(std::string(text::rewire_unknown)));
  input.rewire->shortfalls = {
      {"windlass motor", "raising the anchor", "0.4 V too little", "a shorter route"}};
  const auto none = told(tell_rewire, input);
  EXPECT_TRUE(none.tables.empty());
  EXPECT_THAT(
      none.all(),
      HasSubstr("windlass motor (raising the anchor): 0.4 V too little. Would help: a shorter route."));
}

// Bench sheet

diagnose::BenchSheet sheet_of(const ReportInput& input) {
  return diagnose::bench_sheet(input.system, input.solved);
}

TEST(BenchChapter, IsLeftOutWhereItWasNotAskedFor) {
  EXPECT_TRUE(told(tell_bench_sheet, test::shipped_report("yacht-12v")).headings.empty());
}

TEST(BenchChapter, EveryReadingHasItsProbesItsValueAndALineToWriteOn) {
  ReportInput input = test::shipped_report("yacht-12v");
  input.bench_sheet = sheet_of(input);
  const auto document = told(tell_bench_sheet, input);
  ASSERT_GE(document.forms.size(), 2u);
  std::size_t rows = 0, readings = 0;
  for (const auto& form : document.forms)
    for (const auto& row : form) {
      ++rows;
      ASSERT_EQ(row.size(), 5u);
      EXPECT_NE(row[0], "");
      EXPECT_NE(row[1], "");
      EXPECT_THAT(row[3], testing::AnyOf(HasSubstr("V"), HasSubstr("A")));
      EXPECT_EQ(row[4], "") << "left empty for the pen";
    }
  for (const auto& round : input.bench_sheet->rounds) readings += round.readings.size();
  EXPECT_EQ(rows, readings);
  EXPECT_THAT(document.paragraphs, Contains(std::string(text::bench_shorts)));
}

TEST(BenchChapter, ALongOneLosesItsSmallestDropsAndCountsThem) {
  ReportInput input = test::shipped_report("yacht-12v");
  diagnose::BenchSheet sheet;
  sheet.rounds.resize(1);
  sheet.rounds[0].in_case = "evening";
  for (int k = 0; k < 300; ++k)
    sheet.rounds[0].readings.push_back(
        {diagnose::BenchKind::drop, "part " + std::to_string(k), "a", "b", 0.001 * (k + 1), k % 2 == 0});
  input.bench_sheet = sheet;
  const auto document = told(tell_bench_sheet, input);
  ASSERT_EQ(document.forms.size(), 1u);
  EXPECT_LE(document.forms[0].size(), 120u);
  EXPECT_GE(document.forms[0].size(), 119u);
  EXPECT_THAT(document.forms[0].back()[0], HasSubstr("Part 299"));
  EXPECT_THAT(document.forms[0][0][0], Not(HasSubstr("Part 0")));
  EXPECT_THAT(document.all(), HasSubstr("more readings, with the smallest drops, are left out"));
  EXPECT_THAT(document.forms[0].back()[0], Not(HasSubstr("(open first)"))) << "an odd one needs no tools";
  EXPECT_THAT(document.forms[0][document.forms[0].size() - 2][0], HasSubstr("(open first)"));
}

TEST(BenchChapter, NamesWhatIsOutOfReach) {
  ReportInput input = test::shipped_report("yacht-12v");
  input.bench_sheet = sheet_of(input);
  input.bench_sheet->out_of_reach = {"panel/wire"};
  EXPECT_THAT(told(tell_bench_sheet, input).all(), HasSubstr("no probe gets to them: cable panel"));
}

// All together, on paper

TEST(Extras, FollowTheReportOnPagesOfTheirOwn) {
  ReportInput input = test::shipped_report("camper-12v");
  const std::size_t plain = report_pages(input).size();
  input.bench_sheet = sheet_of(input);
  input.rewire = chosen();
  input.before_after = cured_one();
  const std::size_t all = report_pages(input).size();
  EXPECT_GE(all, plain + 3);
  EXPECT_LE(all, plain + 6);
}

}  // namespace
}  // namespace ohmtrail::render
