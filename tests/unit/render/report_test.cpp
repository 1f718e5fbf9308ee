#include "render/report.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <fstream>

#include "render/repairs.hpp"
#include "render/text.hpp"
#include "support/page_checks.hpp"
#include "support/render_shipped.hpp"
#include "support/report_input.hpp"
#include "support/temporary_folder.hpp"
#include "support/xml.hpp"

namespace ohmtrail::render {
namespace {

std::string output_of(const std::string& command) {
  std::string out;
  std::array<char, 4096> piece;
  FILE* pipe = popen(command.c_str(), "r");
  for (std::size_t n; (n = fread(piece.data(), 1, piece.size(), pipe)) > 0;) out.append(piece.data(), n);
  EXPECT_EQ(pclose(pipe), 0) << command;
  return out;
}

class Pdf {
 public:
  explicit Pdf(const std::string& bytes) {
    path_ = folder_ / "report.pdf";
    std::ofstream(path_, std::ios::binary) << bytes;
  }
  [[nodiscard]] std::string text() const { return output_of("pdftotext -layout " + path_ + " -"); }
  [[nodiscard]] std::string info() const { return output_of("pdfinfo " + path_ + " 2>&1"); }
  [[nodiscard]] std::string fonts() const { return output_of("pdffonts " + path_); }

 private:
  test::TemporaryFolder folder_;
  std::string path_;
};

int pages(const std::string& info) {
  return std::stoi(info.substr(info.find("Pages:") + 6));
}

TEST(ReportPdf, TellsWhatACustomerAsks) {
  const ReportInput input = test::shipped_report("yacht-12v");
  const std::string text = Pdf(report_pdf(input)).text();
  for (const std::string expected :
       {"Sailing yacht Invented Tern", "DEMO-12-01", "2026-05-14", "A. Sample (invented)",
        "The cabin lights pulse", "The answer", "What to do, in this order", "What was found",
        "Limits of voltage loss", "The worst connections", "Batteries", "Taken as given or assumed",
        "Cautions", "Limits of this advice", "Page 1 of"})
    EXPECT_NE(text.find(expected), std::string::npos) << expected;
}

TEST(ReportPdf, IsAWholeDocument) {
  for (const char* name : test::shipped_netlists) {
    const Pdf pdf(report_pdf(test::shipped_report(name)));
    const std::string info = pdf.info();
    EXPECT_EQ(info.find("rror"), std::string::npos) << info;
    EXPECT_NE(info.find("Title:           Report DEMO"), std::string::npos) << info;
    EXPECT_GE(pages(info), 2) << name;
    EXPECT_LE(pages(info), 5) << name;
    EXPECT_EQ(pdf.fonts().find(" no  "), std::string::npos) << "a font is not embedded:\n" << pdf.fonts();
  }
}

TEST(ReportPdf, HasItsLanguageSet) {
  const std::string bytes = report_pdf(test::shipped_report("camper-12v"));
  EXPECT_NE(bytes.find("/Lang (en)"), std::string::npos);
  EXPECT_NE(bytes.find("/DisplayDocTitle true"), std::string::npos);
  EXPECT_NE(Pdf(bytes).info().find("A4"), std::string::npos);
  const std::string letter = report_pdf(test::shipped_report("camper-12v"), Paper::letter);
  EXPECT_NE(Pdf(letter).info().find("612 x 792"), std::string::npos);
}

TEST(ReportPdf, SameInputSameBytes) {
  const ReportInput input = test::shipped_report("launch-24v");
  EXPECT_EQ(report_pdf(input), report_pdf(input));
  EXPECT_EQ(report_html(input), report_html(input));
}

TEST(ReportPages, NothingLeavesThePageOrCoversAnything) {
  for (const char* name : test::shipped_netlists)
    for (const Paper paper : {Paper::a4, Paper::letter}) {
      const auto pages = report_pages(test::shipped_report(name), paper);
      test::expect_inside(pages);
      test::expect_letters_apart(pages);
      test::expect_values_whole(pages);
    }
}

TEST(ReportPages, ThereIsRoomForWhatIsFarTooHot) {
  ReportInput input = test::shipped_report("launch-24v");
  for (diagnose::HotSpot& spot : input.hot_spots) {
    spot.temperature = 1234;
    spot.likelihood = 0.27;
  }
  test::expect_values_whole(report_pages(input));
  input.hot_spots.front().likelihood.reset();
  test::expect_values_whole(report_pages(input, Paper::letter));
}

bool has_text(const Scene& page, std::string_view wanted) {
  return std::any_of(page.shapes.begin(), page.shapes.end(), [&](const Shape& shape) {
    const auto* text = std::get_if<Text>(&shape.what);
    return text != nullptr && text->text == wanted;
  });
}

TEST(ReportPages, ABankStandsUnderItsHeading) {
  int found = 0;
  for (const Scene& page : report_pages(test::shipped_report("cart-48v"))) {
    EXPECT_EQ(has_text(page, text::heading_batteries), has_text(page, text::bank_no_cells));
    found += has_text(page, text::heading_batteries) ? 1 : 0;
  }
  EXPECT_EQ(found, 1);
}

ReportInput hostile() {
  ReportInput input = test::shipped_report("launch-24v");
  const std::string wide(80, 'W'), markup = "<b onclick=x>&amp;\"'</b></td><script>alert(1)</script>";
  input.system.info.name = markup + wide;
  input.system.info.job.customer = "שלום עולם \u202E" + markup;
  input.system.info.job.complaint = wide + wide + wide + "\x1b[31m\n\r\t" + markup;
  input.system.points["switched bus"].place = wide;
  const diagnose::HotSpot spot = input.hot_spots.front();
  while (input.hot_spots.size() < 45) {
    input.hot_spots.push_back(spot);
    input.hot_spots.back().rank = static_cast<int>(input.hot_spots.size());
    input.hot_spots.back().id = markup + std::to_string(input.hot_spots.size());
    input.hot_spots.back().fix = wide + wide;
  }
  return input;
}

TEST(ReportPages, HostileNamesAndManyHotSpotsBreakNothing) {
  const auto pages = report_pages(hostile());
  test::expect_inside(pages);
  test::expect_letters_apart(pages);
  EXPECT_LT(pages.size(), 25u);
}

TEST(ReportHtml, HostileNamesStayText) {
  const std::string html = report_html(hostile());
  EXPECT_EQ(html.find("<script"), std::string::npos);
  EXPECT_EQ(html.find("<b "), std::string::npos);
  EXPECT_EQ(html.find('\x1b'), std::string::npos);
  EXPECT_NE(html.find("&lt;script&gt;alert(1)&lt;/script&gt;"), std::string::npos);
}

TEST(ReportHtml, StandsAloneAndShowsTheDiagram) {
  const std::string html = report_html(test::shipped_report("yacht-12v"));
  EXPECT_TRUE(html.starts_with("<!DOCTYPE html>"));
  EXPECT_NE(html.find("<html lang=\"en\">"), std::string::npos);
  EXPECT_NE(html.find("name=\"viewport\""), std::string::npos);
  for (const char* outside : {"src=", "href=\"http", "@import", "url("})
    EXPECT_EQ(html.find(outside), std::string::npos);
  const std::size_t svg = html.find("<svg");
  ASSERT_NE(svg, std::string::npos);
  const test::XmlSummary read = test::read_xml(html.substr(svg, html.find("</svg>", svg) + 6 - svg));
  EXPECT_EQ(read.mistake, "");
}

TEST(LimitVerdict, StraddlingIntervalsDecideNothing) {
  solve::LoadResult load;
  load.running = true;
  load.limit_fraction = 0.03;
  load.within = true;
  EXPECT_EQ(limit_verdict(load, nullptr), text::limit_met);
  load.within = false;
  EXPECT_EQ(limit_verdict(load, nullptr), text::limit_broken);
  const diagnose::LossInterval over{"", "", 0.031, 0.04, 0.05}, under{"", "", 0.01, 0.02, 0.029},
      both{"", "", 0.02, 0.03, 0.04};
  EXPECT_EQ(limit_verdict(load, &over), text::limit_broken);
  EXPECT_EQ(limit_verdict(load, &under), text::limit_met);
  EXPECT_EQ(limit_verdict(load, &both), text::limit_undecided);
  load.running = false;
  EXPECT_EQ(limit_verdict(load, &under), text::limit_stopped);
}

TEST(Repairs, BothConductorsOfARunAreOneJob) {
  const ReportInput input = test::shipped_report("yacht-12v");
  const auto list = repairs(input.hot_spots);
  EXPECT_LT(list.size(), input.hot_spots.size());
  std::size_t parts = 0;
  for (const Repair& repair : list) parts += repair.parts.size();
  EXPECT_EQ(parts, input.hot_spots.size());
  EXPECT_EQ(list.front().parts.size(), 2u);
  EXPECT_EQ(where(input.system, list.front()), "cable windlass, both conductors");
}

TEST(Report, WithNothingRunningSaysSo) {
  netlist::System system = test::shipped("camper-12v");
  system.cases.resize(1);
  system.cases[0].on.clear();
  const std::string text = Pdf(report_pdf(test::report_input(system))).text();
  EXPECT_NE(text.find("No load was running"), std::string::npos);
}

}  // namespace
}  // namespace ohmtrail::render
