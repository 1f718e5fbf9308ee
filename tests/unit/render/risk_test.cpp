#include "render/risk.hpp"

#include <gtest/gtest.h>

#include "ohmtrail/plan/protection.hpp"
#include "render/text.hpp"
#include "support/render_shipped.hpp"
#include "support/report_input.hpp"

namespace ohmtrail::render {
namespace {

std::string_view risk_of(const std::string& rule, diagnose::Severity severity = diagnose::Severity::soon) {
  diagnose::Finding finding;
  finding.rule = rule;
  finding.severity = severity;
  return risk_in_words(finding);
}

TEST(Risk, IsThatOfItsKindWhateverTheSeverity) {
  EXPECT_EQ(risk_of("over-ampacity"), text::risk_hot_cable);
  EXPECT_EQ(risk_of("over-ampacity", diagnose::Severity::improvement), text::risk_hot_cable);
  EXPECT_EQ(risk_of("hot-connection"), text::risk_hot_connection);
  EXPECT_EQ(risk_of("no-fuse-in-reach"), text::risk_unfused);
  EXPECT_EQ(risk_of("drop-limit"), text::risk_undervoltage);
  EXPECT_EQ(risk_of("undercharge"), text::risk_undercharge);
}

TEST(Risk, FamiliesOfRulesShareOne) {
  EXPECT_EQ(risk_of("interrupting-capacity"), text::risk_cannot_break);
  EXPECT_EQ(risk_of("interrupting-capacity-unknown"), text::risk_cannot_break);
  EXPECT_EQ(risk_of("unlike-age"), text::risk_unlike_batteries);
  EXPECT_EQ(risk_of("unlike-gauge"), text::risk_weaker_cable) << "cables, not batteries";
}

TEST(Risk, AnUnknownRuleFallsBackOnItsSeverity) {
  EXPECT_EQ(risk_of("nothing-known", diagnose::Severity::before_further_use), text::risk_urgent);
  EXPECT_EQ(risk_of("nothing-known", diagnose::Severity::soon), text::risk_soon);
  EXPECT_EQ(risk_of("nothing-known", diagnose::Severity::improvement), text::risk_improvement);
  EXPECT_EQ(risk_of(""), text::risk_soon);
}

TEST(Risk, EveryKindHasAShortNameOfItsOwn) {
  diagnose::Finding finding;
  finding.rule = "interrupting-capacity-unknown";
  EXPECT_EQ(kind_in_words(finding), text::kind_break_unknown);
  finding.rule = "interrupting-capacity-by-table";
  EXPECT_EQ(kind_in_words(finding), text::kind_cannot_break);
  finding.rule = "nothing-known";
  EXPECT_EQ(kind_in_words(finding), text::kind_other);
}

// A rule that is new in `check` must get its own sentence here.
TEST(Risk, EveryFindingOfTheShippedSystemsHasItsOwn) {
  for (const char* name : test::shipped_netlists) {
    const ReportInput input = test::shipped_report(name);
    EXPECT_FALSE(input.findings.empty()) << name;
    for (const diagnose::Finding& finding : input.findings) {
      const std::string_view risk = risk_in_words(finding);
      for (const std::string_view vague : {text::risk_urgent, text::risk_soon, text::risk_improvement})
        EXPECT_NE(risk, vague) << finding.rule;
      EXPECT_NE(kind_in_words(finding), text::kind_other) << finding.rule;
    }
  }
}

}  // namespace
}  // namespace ohmtrail::render
