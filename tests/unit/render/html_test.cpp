#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "render/report.hpp"
#include "render/text.hpp"
#include "support/render_shipped.hpp"
#include "support/report_input.hpp"

namespace ohmtrail::render {
namespace {

using testing::HasSubstr;
using testing::Not;

int count(const std::string& text, const std::string& what) {
  int times = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++times;
  return times;
}

/// Every element that opens closes, innermost first; void elements aside.
std::string unbalanced(const std::string& html) {
  std::vector<std::string> open;
  for (std::size_t at = html.find('<'); at != std::string::npos; at = html.find('<', at + 1)) {
    const std::size_t end = html.find('>', at);
    const std::string tag = html.substr(at + 1, end - at - 1);
    const std::string name = tag.substr(0, tag.find_first_of(" /\n"));
    if (tag.starts_with("!") || tag.ends_with("/") || name == "meta" || name == "link" || name == "br" ||
        name == "hr")
      continue;
    if (!tag.starts_with("/"))
      open.push_back(name);
    else if (open.empty() || open.back() != tag.substr(1))
      return tag;
    else
      open.pop_back();
  }
  return open.empty() ? "" : open.back();
}

TEST(Html, IsBalancedForEveryShippedSystem) {
  for (const char* name : test::shipped_netlists) {
    ReportInput input = test::shipped_report(name);
    input.bench_sheet = diagnose::bench_sheet(input.system, input.solved);
    EXPECT_EQ(unbalanced(report_html(input)), "") << name;
  }
}

TEST(Html, HasNeitherScriptNorAnythingFromOutside) {
  const std::string html = report_html(test::shipped_report("yacht-12v"));
  for (const char* never : {"<script", "javascript:", " onload", " onclick", "http://", "https://"}) {
    std::string without = html;
    // The namespace of SVG is a name, not a place.
    for (std::size_t at; (at = without.find("http://www.w3.org/2000/svg")) != std::string::npos;)
      without.erase(at, 26);
    EXPECT_EQ(without.find(never), std::string::npos) << never;
  }
}

TEST(Html, EveryCellSaysItsColumnForNarrowScreens) {
  const std::string html = report_html(test::shipped_report("yacht-12v"));
  EXPECT_EQ(count(html, "<td"), count(html, "data-label=\""));
  EXPECT_THAT(html, HasSubstr("@media(max-width:700px)"));
}

TEST(Html, PicturesAreDrawingsWithTitles) {
  const std::string html = report_html(test::shipped_report("yacht-12v"));
  EXPECT_GE(count(html, "<svg"), 3);
  EXPECT_EQ(count(html, "<svg"), count(html, "role=\"img\""));
  EXPECT_GT(count(html, "<title>"), 50);
  EXPECT_EQ(count(html, "<img"), 0);
}

TEST(Html, AFormHasRoomToWrite) {
  ReportInput input = test::shipped_report("camper-12v");
  EXPECT_THAT(report_html(input), Not(HasSubstr("<div class=\"form\">")));
  input.bench_sheet = diagnose::bench_sheet(input.system, input.solved);
  const std::string html = report_html(input);
  EXPECT_THAT(html, HasSubstr("<div class=\"form\">"));
  EXPECT_THAT(html, HasSubstr("<hr>"));
}

TEST(Html, NamesTheReportInItsTitle) {
  const std::string html = report_html(test::shipped_report("launch-24v"));
  EXPECT_THAT(html, HasSubstr("<title>Report DEMO-24-02: Work launch Invented Plover"));
  EXPECT_THAT(html, HasSubstr("<html lang=\"en\">"));
}

TEST(Html, SaysTheSameAsThePaper) {
  const ReportInput input = test::shipped_report("camper-12v");
  const std::string html = report_html(input);
  for (const std::string_view said :
       {text::heading_answer, text::heading_to_do, text::heading_findings, text::heading_limits,
        text::heading_connections, text::heading_batteries, text::heading_cautions,
        text::heading_limits_of_advice})
    EXPECT_THAT(html, HasSubstr(std::string(said)));
}

}  // namespace
}  // namespace ohmtrail::render
