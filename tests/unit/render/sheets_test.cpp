#include "render/sheets.hpp"

#include <gtest/gtest.h>

#include <set>

#include "render/canvas.hpp"
#include "render/diagram.hpp"
#include "render/picture.hpp"
#include "support/random_system.hpp"
#include "support/render_shipped.hpp"
#include "support/report_input.hpp"

namespace ohmtrail::render {
namespace {

/// A field of names, each with a line under it.
Scene field(double width, double height) {
  Scene scene{width, height, "field", {}, {}};
  int number = 0;
  for (double y = 20; y < height - 10; y += 40)
    for (double x = 5; x < width - 125; x += 90) {
      const int group = add_group(scene, std::to_string(number), "name");
      const Box box = write(scene, Kind::label, group, {x, y}, "name " + std::to_string(number++),
                            {7.2, false, palette::ink});
      draw_line(scene, Kind::conductor, group, {{x, box.bottom() + 3}, {x + 80, box.bottom() + 3}}, {});
    }
  return scene;
}

std::multiset<std::string> labels(const Scene& scene) {
  std::multiset<std::string> all;
  for (const Shape& shape : scene.shapes)
    if (const Text* text = std::get_if<Text>(&shape.what); text && shape.kind == Kind::label)
      all.insert(text->text);
  return all;
}

double smallest_label(const Scene& scene) {
  double size = 1e9;
  for (const Shape& shape : scene.shapes)
    if (const Text* text = std::get_if<Text>(&shape.what); text && shape.kind == Kind::label)
      size = std::min(size, text->size);
  return size;
}

void expect_inside(const Scene& page) {
  for (const Shape& shape : page.shapes)
    EXPECT_TRUE((Box{0, 0, page.width, page.height}.grown(0.01).holds(bounds(shape))));
}

TEST(Sheets, ASmallPictureTakesOnePage) {
  const auto pages = on_pages(field(700, 400), Paper::a4);
  ASSERT_EQ(pages.size(), 1u);
  EXPECT_GT(pages[0].width, pages[0].height) << "landscape, as the picture is";
  expect_inside(pages[0]);
  EXPECT_EQ(labels(pages[0]), labels(field(700, 400)));
}

TEST(Sheets, ALargeOneIsAnOverviewAndItsParts) {
  const Scene picture = field(3000, 1800);
  for (const Paper paper : {Paper::a4, Paper::letter}) {
    const auto pages = on_pages(picture, paper);
    ASSERT_GT(pages.size(), 4u);
    EXPECT_LT(pages.size(), 16u);
    EXPECT_EQ(labels(pages[0]), labels(picture)) << "the overview has everything";
    std::set<std::string> on_parts;
    for (std::size_t k = 1; k < pages.size(); ++k) {
      expect_inside(pages[k]);
      EXPECT_GE(smallest_label(pages[k]), least_letters - 0.01);
      EXPECT_EQ(pages[k].width, pages[1].width);
      for (const std::string& label : labels(pages[k])) on_parts.insert(label);
    }
    for (const std::string& label : labels(picture)) EXPECT_TRUE(on_parts.contains(label)) << label;
  }
}

TEST(Sheets, EveryPartSaysWhatLiesBesideIt) {
  const auto pages = on_pages(field(3000, 400), Paper::a4);
  ASSERT_GT(pages.size(), 2u);
  bool told = false;
  for (const Shape& shape : pages[1].shapes)
    if (const Text* text = std::get_if<Text>(&shape.what))
      told = told || text->text.find("Part A1 · B1 to its right") != std::string::npos;
  EXPECT_TRUE(told);
}

TEST(Sheets, AReportTakesTheSmallestPaperThatKeepsNamesReadable) {
  const PaperSize small = sheet_for(field(700, 400), Paper::a4, 46, 80);
  EXPECT_NEAR(small.width, 841.89, 0.01);
  EXPECT_NEAR(small.height, 595.28, 0.01);
  const PaperSize larger = sheet_for(field(1500, 900), Paper::a4, 46, 80);
  EXPECT_NEAR(larger.width / small.width, std::sqrt(2), 0.01) << "A3 beside A4";
  const PaperSize upright = sheet_for(field(300, 700), Paper::a4, 46, 80);
  EXPECT_LT(upright.width, upright.height);
  Scene vast{60000, 40000, "vast", {}, {}};
  write(vast, Kind::label, -1, {100, 100}, "lost", {7.2, false, palette::ink});
  const PaperSize most = sheet_for(vast, Paper::letter, 46, 80);
  EXPECT_NEAR(most.width * most.height, 16 * 612 * 792, 1) << "no larger than ANSI E";
}

TEST(Sheets, WhatIsCutOutIsMovedToTheOrigin) {
  const Scene piece = cut_out(field(700, 400), {100, 100, 300, 200});
  EXPECT_DOUBLE_EQ(piece.width, 300);
  EXPECT_DOUBLE_EQ(piece.height, 200);
  EXPECT_FALSE(piece.shapes.empty());
  EXPECT_FALSE(piece.groups.empty());
  expect_inside(piece);
}

TEST(Sheets, TheShippedSystemsNeedOneEach) {
  for (const char* name : test::shipped_netlists) {
    const ReportInput input = test::shipped_report(name);
    const Scene scene = diagram(input.system, input.solved.front(), input.hot_spots);
    EXPECT_EQ(on_pages(scene, Paper::a4).size(), 1u) << name;
    EXPECT_NEAR(sheet_for(scene, Paper::a4, 46, 80).width, 841.89, 0.01) << name;
  }
}

TEST(Sheets, ThreeHundredElementsArePrintedOnPartsAndStayOnePngPage) {
  const netlist::System system = test::random_system(9, {300, true, true});
  const auto solved = solve::solve_case(network::build(system, system.cases.front()));
  ASSERT_TRUE(solved);
  const Scene scene = diagram(system, *solved, {});
  const auto pages = on_pages(scene, Paper::a4);
  EXPECT_GT(pages.size(), 2u);
  for (const Scene& page : pages) expect_inside(page);
  const std::string svg = encode(scene, FileKind::svg, Paper::a4);
  EXPECT_EQ(svg.find("<svg", svg.find("<svg") + 1), std::string::npos);
}

}  // namespace
}  // namespace ohmtrail::render
