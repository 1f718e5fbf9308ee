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

diagnose::Finding finding(const std::string& rule, const std::string& subject,
                          diagnose::Severity severity = diagnose::Severity::soon) {
  diagnose::Finding one;
  one.rule = rule;
  one.subject = subject;
  one.severity = severity;
  one.source = "common practice";
  one.text = "is not as it should be";
  one.remedy = "mend it";
  return one;
}

test::RecordedDocument findings_of(const ReportInput& input, const Brevity& brevity = {}) {
  test::RecordedDocument document;
  tell_findings(document, input, brevity);
  return document;
}

test::RecordedDocument limits_of(const ReportInput& input, const Brevity& brevity = {}) {
  test::RecordedDocument document;
  tell_limits(document, input, brevity);
  return document;
}

// Findings

TEST(FindingsChapter, EachStandsAloneWithRiskRemedyAndRule) {
  ReportInput input = test::shipped_report("camper-12v");
  input.findings = {finding("no-fuse-in-reach", "pump", diagnose::Severity::before_further_use)};
  const std::string all = findings_of(input).all();
  EXPECT_THAT(all, HasSubstr("Before further use: cable without a fuse in reach, pump"));
  EXPECT_THAT(all, HasSubstr("Is not as it should be"));
  EXPECT_THAT(all, HasSubstr("Risk: " + std::string(text::risk_unfused)));
  EXPECT_THAT(all, HasSubstr("Do: Mend it"));
  EXPECT_THAT(all, HasSubstr("Rests on: Common practice"));
}

TEST(FindingsChapter, WhatIsFoundOfASuspectHoldsOnlyIfItIsThatOne) {
  ReportInput input = test::shipped_report("camper-12v");
  ASSERT_FALSE(input.hot_spots.empty());
  diagnose::HotSpot& spot = input.hot_spots.front();
  spot.cause = diagnose::Cause::bad_joint;
  spot.own_tests.reset();
  spot.unparted.reset();
  input.findings = {finding("rise", spot.id)};
  spot.likelihood = 0.2;
  EXPECT_THAT(findings_of(input).all(),
              HasSubstr("If it is this part that is at fault: is not as it should be"));
  spot.likelihood = 0.9;
  EXPECT_THAT(findings_of(input).all(), Not(HasSubstr("If it is this part")));
}

TEST(FindingsChapter, OneRuleAtSeveralPlacesIsOneFinding) {
  ReportInput input = test::shipped_report("camper-12v");
  input.findings.clear();
  for (int k = 0; k < 7; ++k) input.findings.push_back(finding("wing-nut", "stud " + std::to_string(k)));
  const auto document = findings_of(input);
  EXPECT_THAT(document.all(), HasSubstr("Soon: wing nut, at 7 places"));
  EXPECT_THAT(document.paragraphs, Contains(HasSubstr("And 2 more")));
  EXPECT_EQ(std::count_if(document.paragraphs.begin(), document.paragraphs.end(),
                          [](const std::string& p) { return p.find("Stud ") == 0; }),
            5);
}

TEST(FindingsChapter, WhereSpaceIsShortTheLessUrgentRunIn) {
  ReportInput input = test::shipped_report("camper-12v");
  input.findings = {finding("no-fuse-in-reach", "pump", diagnose::Severity::before_further_use),
                    finding("wing-nut", "stud")};
  Brevity brevity;
  brevity.full_findings = 0;
  const auto document = findings_of(input, brevity);
  EXPECT_THAT(document.all(), HasSubstr("Risk: " + std::string(text::risk_unfused)))
      << "the urgent one stays";
  ASSERT_FALSE(document.paragraphs.empty());
  const std::string& last = document.paragraphs.back();
  for (const char* part :
       {"Soon: wing nut, stud.", "poor contact gets hot", "Mend it.", "Rests on common practice."})
    EXPECT_THAT(last, HasSubstr(part));
}

TEST(FindingsChapter, WithNothingWrongItSaysSo) {
  ReportInput input = test::shipped_report("camper-12v");
  input.findings.clear();
  EXPECT_THAT(findings_of(input).paragraphs, Contains(std::string(text::no_findings)));
}

// Limits

/// A load outside its limit in some case, with that limit.
struct Broken {
  std::string in_case, load;
  double loss = 0, limit = 0;
};

Broken broken_in(const ReportInput& input) {
  for (const solve::CaseSolution& solved : input.solved)
    for (const solve::LoadResult& load : solved.loads)
      if (load.running && !load.within)
        return {solved.network.case_name, solved.network.elements[static_cast<std::size_t>(load.element)].id,
                load.drop_fraction, load.limit_fraction};
  throw std::runtime_error("every limit is met");
}

std::vector<std::string> row_of(const test::RecordedDocument& document, const std::string& load) {
  for (const auto& row : document.tables.at(0))
    if (row[0] == load) return row;
  throw std::runtime_error("no row of " + load);
}

TEST(LimitsChapter, AnIntervalThatStraddlesTheLimitDecidesNothing) {
  ReportInput input = test::shipped_report("yacht-12v");
  const Broken broken = broken_in(input);
  EXPECT_EQ(row_of(limits_of(input), broken.load).back(), text::limit_broken);
  for (const solve::CaseSolution& solved : input.solved)
    input.loss_intervals.push_back(
        {solved.network.case_name, broken.load, 0.5 * broken.limit, broken.limit, 2 * broken.limit});
  const auto row = row_of(limits_of(input), broken.load);
  EXPECT_EQ(row.back(), text::limit_undecided);
  EXPECT_THAT(row[3], HasSubstr(" to ")) << "the loss is told as an interval";
}

TEST(LimitsChapter, WhatCannotBeDecidedIsNoFinding) {
  ReportInput input = test::shipped_report("yacht-12v");
  const auto is_limit = [](const diagnose::Finding& f) { return f.rule == "drop-limit"; };
  const auto before = std::count_if(input.findings.begin(), input.findings.end(), is_limit);
  ASSERT_GT(before, 0);
  const auto one = std::find_if(input.findings.begin(), input.findings.end(), is_limit);
  input.loss_intervals.push_back({one->in_case, one->subject, 0, 0.1, 1});
  const auto decided = decided_findings(input);
  EXPECT_EQ(std::count_if(decided.begin(), decided.end(), is_limit), before - 1);
  input.loss_intervals.back().low = 0.9;
  EXPECT_EQ(decided_findings(input).size(), input.findings.size()) << "broken for sure";
}

TEST(LimitsChapter, TellsTheRuleOfItsVerdicts) {
  ReportInput input = test::shipped_report("yacht-12v");
  EXPECT_THAT(limits_of(input).paragraphs, Contains(std::string(text::limits_rule_computed)));
  input.loss_intervals.push_back({"inverter on", "chart plotter", 0.02, 0.04, 0.06});
  EXPECT_THAT(limits_of(input).paragraphs, Contains(std::string(text::limits_rule)));
}

TEST(LimitsChapter, WhereSpaceIsShortTheWorstStayAndTheRestIsCounted) {
  const ReportInput input = test::shipped_report("yacht-12v");
  Brevity brevity;
  brevity.limits = 2;
  const auto document = limits_of(input, brevity);
  ASSERT_EQ(document.tables[0].size(), 2u);
  for (const auto& row : document.tables[0]) EXPECT_EQ(row.back(), text::limit_broken);
  EXPECT_THAT(document.paragraphs, Contains(HasSubstr("5 more loads are left out")));
}

// What was not examined

TEST(NotExamined, ListsWhatWasNotReachedOrNeverOn) {
  netlist::System system = test::shipped("camper-12v");
  system.points["fuse block"].reach = netlist::Reach::no;
  system.runs.front().wire.seen = {trade::Observation::not_reached};
  for (netlist::Case& one : system.cases) {
    one.all_on = false;
    std::erase(one.on, system.loads.front().id);
  }
  test::RecordedDocument document;
  tell_not_examined(document, test::report_input(system));
  EXPECT_THAT(document.all(), HasSubstr("fuse block: out of reach of a probe"));
  EXPECT_THAT(document.all(), HasSubstr("not reached"));
  EXPECT_THAT(document.all(), HasSubstr(system.loads.front().id + ": not switched on"));
}

TEST(NotExamined, ALongListRunsIn) {
  netlist::System system = test::shipped("camper-12v");
  for (const netlist::Run& run : system.runs) system.points[run.from].reach = netlist::Reach::no;
  for (const netlist::Run& run : system.runs) system.points[run.to].reach = netlist::Reach::no;
  test::RecordedDocument document;
  tell_not_examined(document, test::report_input(system));
  ASSERT_EQ(document.paragraphs.size(), 1u);
  EXPECT_THAT(document.paragraphs[0], HasSubstr("; "));
}

// The first page

TEST(FrontPage, AnswersInThreeSentencesAndTellsThreeJobs) {
  const ReportInput input = test::shipped_report("yacht-12v");
  test::RecordedDocument document;
  tell_front(document, input);
  EXPECT_THAT(document.all(), HasSubstr("With windlass motor on (“weighing anchor”)"));
  EXPECT_THAT(document.all(), HasSubstr("The largest share of that"));
  EXPECT_THAT(document.all(), HasSubstr("The first thing to put right is"));
  EXPECT_THAT(document.all(), HasSubstr(input.system.info.job.complaint));
  EXPECT_EQ(document.pictures.size(), 1u) << "the split of the sag as one bar";
  EXPECT_THAT(document.all(), Not(HasSubstr("resistance")));
  EXPECT_THAT(document.all(), Not(HasSubstr("Ω")));
}

TEST(FrontPage, CountsWhatMustBeDoneFirst) {
  ReportInput input = test::shipped_report("camper-12v");
  input.findings.clear();
  test::RecordedDocument none;
  tell_front(none, input);
  EXPECT_THAT(none.all(), Not(HasSubstr("Before the system is used again")));
  input.findings = {finding("no-fuse-in-reach", "pump", diagnose::Severity::before_further_use),
                    finding("open-end", "x", diagnose::Severity::before_further_use)};
  test::RecordedDocument two;
  tell_front(two, input);
  EXPECT_THAT(two.all(), HasSubstr("Before the system is used again: 2 of the findings"));
}

// The whole

TEST(WholeReport, HasItsChaptersInOrder) {
  const ReportInput input = test::shipped_report("yacht-12v");
  test::RecordedDocument document;
  tell_report(document, input, draw_pictures(input, std::nullopt), {});
  std::vector<std::string> wanted;
  for (const std::string_view heading :
       {text::heading_answer, text::heading_to_do, text::heading_findings, text::heading_limits,
        text::heading_not_examined, text::heading_connections, text::heading_batteries,
        text::heading_cautions, text::heading_limits_of_advice})
    wanted.emplace_back(heading);
  EXPECT_EQ(document.headings, wanted);
  EXPECT_EQ(document.sheets, 0);
}

}  // namespace
}  // namespace ohmtrail::render
