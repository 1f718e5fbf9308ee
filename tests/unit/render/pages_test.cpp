#include "render/pages.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "support/page_checks.hpp"

namespace ohmtrail::render {
namespace {

std::vector<std::string> texts(const Scene& page) {
  std::vector<std::string> all;
  for (const Shape& shape : page.shapes)
    if (const Text* text = std::get_if<Text>(&shape.what)) all.push_back(text->text);
  return all;
}

bool has(const Scene& page, const std::string& wanted) {
  const auto all = texts(page);
  return std::find(all.begin(), all.end(), wanted) != all.end();
}

double size_of(const Scene& page, const std::string& wanted) {
  for (const Shape& shape : page.shapes)
    if (const Text* text = std::get_if<Text>(&shape.what); text && text->text == wanted) return text->size;
  return 0;
}

Scene picture(double width, double height) {
  Scene scene{width, height, "picture", {}, {}};
  write(scene, Kind::label, -1, {width / 2, height / 2}, "middle", {7.2, false, palette::ink}, Align::middle);
  return scene;
}

const std::vector<Column> two{{"Name", 2, Align::left}, {"Value", 1, Align::right}};

TEST(Pages, EveryPageHasItsNumberAndTitle) {
  Pages pages(Paper::a4);
  for (int k = 0; k < 120; ++k) pages.paragraph("A line of text.");
  const auto done = pages.finish("Report of something");
  ASSERT_EQ(done.size(), 3u);
  EXPECT_TRUE(has(done[0], "Page 1 of 3"));
  EXPECT_TRUE(has(done[2], "Page 3 of 3"));
  for (const Scene& page : done) EXPECT_TRUE(has(page, "Report of something"));
  test::expect_inside(done);
}

TEST(Pages, SizesOfPaper) {
  EXPECT_NEAR(Pages(Paper::a4).finish("")[0].width * 25.4 / 72, 210, 0.01);   // ISO 216, mm
  EXPECT_NEAR(Pages(Paper::a4).finish("")[0].height * 25.4 / 72, 297, 0.01);  // ISO 216, mm
  EXPECT_EQ(Pages(Paper::letter).finish("")[0].width, 8.5 * 72);
  EXPECT_EQ(Pages(Paper::letter).finish("")[0].height, 11 * 72);
}

TEST(Pages, SmallerLettersTakeFewerPages) {
  const auto filled_at = [](double letters) {
    Pages pages(Paper::a4, letters);
    for (int k = 0; k < 300; ++k) pages.paragraph("A line of text.");
    return pages.count();
  };
  EXPECT_LT(filled_at(0.8), filled_at(1));
}

TEST(Pages, LettersScaleAlike) {
  const auto at = [](double letters) {
    Pages pages(Paper::a4, letters);
    pages.heading("Heading");
    pages.paragraph("Text");
    pages.table(two, {{"cell", "1"}});
    return pages.finish("")[0];
  };
  const Scene full = at(1), half = at(0.5);
  for (const char* what : {"Heading", "Text", "cell"})
    EXPECT_NEAR(size_of(half, what), size_of(full, what) / 2, 1e-9) << what;
}

TEST(Pages, ATableGoesOnUnderItsHead) {
  Pages pages(Paper::a4);
  Rows rows;
  for (int k = 0; k < 100; ++k) rows.push_back({"row " + std::to_string(k), "1"});
  pages.table(two, rows);
  const auto done = pages.finish("");
  ASSERT_GT(done.size(), 1u);
  for (const Scene& page : done) EXPECT_TRUE(has(page, "Name"));
  EXPECT_TRUE(has(done.back(), "row 99"));
  test::expect_letters_apart(done);
}

TEST(Pages, AFormLeavesRoomToWrite) {
  const auto lowest = [](bool form) {
    Pages pages(Paper::a4);
    const Rows rows(10, {"reading", ""});
    form ? pages.form(two, rows) : pages.table(two, rows);
    double y = 0;
    const std::vector<Scene> done = pages.finish("");
    for (const Shape& shape : done[0].shapes)
      if (const Text* text = std::get_if<Text>(&shape.what); text && text->text == "reading")
        y = std::max(y, text->bounds.bottom());
    return y;
  };
  EXPECT_GT(lowest(true) - lowest(false), 9 * 5) << "a pen needs more than a line of print";
}

TEST(Pages, ASheetBeginsAtTheTopButNeverLeavesAnEmptyPage) {
  Pages pages(Paper::a4);
  pages.begin_sheet();
  EXPECT_EQ(pages.count(), 1u);
  pages.paragraph("text");
  pages.begin_sheet();
  EXPECT_EQ(pages.count(), 2u);
  pages.begin_sheet();
  EXPECT_EQ(pages.count(), 2u);
}

Pages filled(int lines) {
  Pages pages(Paper::a4);
  for (int k = 0; k < lines; ++k) pages.paragraph("A line of text.");
  return pages;
}

TEST(Pages, AHeadingNeverStandsAloneAtTheFoot) {
  std::set<std::size_t> stood_on;
  for (int lines = 30; lines < 60; ++lines) {
    Pages pages = filled(lines);
    pages.heading("Heading");
    pages.paragraph("Its text");
    const auto done = pages.finish("");
    for (std::size_t k = 0; k < done.size(); ++k) {
      EXPECT_EQ(has(done[k], "Heading"), has(done[k], "Its text")) << lines;
      if (has(done[k], "Heading")) stood_on.insert(k);
    }
  }
  EXPECT_EQ(stood_on, (std::set<std::size_t>{0, 1})) << "both sides of the foot were tried";
}

/// Whatever follows: it asks for its own room, and takes its headings with it.
TEST(Pages, HeadingsGoWithTheTableUnderThem) {
  const std::string tall = "one two three four five six seven eight nine ten eleven twelve thirteen fourteen";
  std::set<std::size_t> stood_on;
  for (int lines = 20; lines < 60; ++lines) {
    Pages pages = filled(lines);
    pages.heading("Heading");
    pages.subheading("Subheading");
    pages.table({{"Name", 1}, {"Words", 0.2}}, {{"first", tall + ' ' + tall}, {"second", tall}});
    const auto done = pages.finish("");
    for (std::size_t k = 0; k < done.size(); ++k) {
      EXPECT_EQ(has(done[k], "Heading"), has(done[k], "first")) << lines;
      EXPECT_EQ(has(done[k], "Subheading"), has(done[k], "first")) << lines;
      EXPECT_TRUE(has(done[k], "A line of text.") || has(done[k], "first") || has(done[k], "second"))
          << lines;
      if (has(done[k], "Heading")) stood_on.insert(k);
    }
  }
  EXPECT_EQ(stood_on, (std::set<std::size_t>{0, 1})) << "both sides of the foot were tried";
}

TEST(Pages, AHeadingOverATableLongerThanAPageStaysAtItsTop) {
  Pages pages(Paper::a4);
  pages.heading("Heading");
  std::string tall;
  for (int k = 0; k < 90; ++k) tall += "word ";
  pages.table({{"Name", 8}, {"Words", 0.4}}, {{"first", tall}, {"second", "short"}});
  const auto done = pages.finish("");
  EXPECT_TRUE(has(done[0], "Heading"));
}

TEST(Pages, AWidePictureTurnsItsPage) {
  Pages pages(Paper::a4);
  pages.paragraph("before");
  pages.full_picture("Diagram", picture(700, 400));
  pages.paragraph("after");
  const auto done = pages.finish("");
  ASSERT_EQ(done.size(), 2u);
  EXPECT_TRUE(has(done[0], "after")) << "the text goes on where it stood";
  EXPECT_GT(done[1].width, done[1].height);
  EXPECT_TRUE(has(done[1], "Diagram"));
  test::expect_inside(done);
}

TEST(Pages, ALargePictureTakesLargerPaper) {
  Pages pages(Paper::a4);
  pages.full_picture("Diagram", picture(1500, 900));
  const auto done = pages.finish("");
  EXPECT_NEAR(done.back().width * 25.4 / 72, 420, 0.1) << "A3, landscape";
  EXPECT_GE(size_of(done.back(), "middle"), 5);
}

TEST(Pages, ATallPictureShrinksToItsPage) {
  Pages pages(Paper::letter);
  pages.picture("Tall", picture(300, 3000));
  pages.picture("Wide", picture(3000, 300));
  test::expect_inside(pages.finish(""));
}

TEST(Pages, LongWordsAndLabelsStayOnThePage) {
  Pages pages(Paper::a4);
  const std::string wide(300, 'W');
  pages.masthead(wide, wide, wide);
  pages.heading(wide);
  pages.subheading(wide);
  pages.entry(wide, wide);
  pages.callout({wide, wide});
  pages.numbered(1, wide, wide, wide);
  pages.table(two, {{wide, wide}});
  const auto done = pages.finish(wide);
  test::expect_inside(done);
  test::expect_letters_apart(done);
}

void tell_lines(Document& document, int count) {
  for (int k = 0; k < count; ++k) document.paragraph("kept " + std::to_string(k));
}

TEST(Pages, WhatBelongsTogetherIsNotTornApart) {
  Pages torn = filled(45), kept = filled(45);
  ASSERT_EQ(kept.count(), 1u);
  tell_lines(torn, 6);
  kept.together([&] { tell_lines(kept, 6); });
  const auto apart = torn.finish(""), together = kept.finish("");
  ASSERT_EQ(together.size(), 2u);
  EXPECT_TRUE(has(apart[0], "kept 0")) << "without it the page is filled first";
  EXPECT_FALSE(has(together[0], "kept 0"));
  for (int k = 0; k < 6; ++k) EXPECT_TRUE(has(together[1], "kept " + std::to_string(k)));
  EXPECT_TRUE(has(together[0], "A line of text."));
}

TEST(Pages, WhatIsLongerThanAPageIsToldOnce) {
  Pages pages = filled(45);
  pages.together([&] { tell_lines(pages, 200); });
  std::size_t lines = 0;
  for (const Scene& page : pages.finish(""))
    for (const std::string& text : texts(page)) lines += text.starts_with("kept ") ? 1 : 0;
  EXPECT_EQ(lines, 200u);
}

TEST(Pages, ASheetThatWaitsStaysWhenABlockMovesOn) {
  Pages pages = filled(45);
  pages.full_picture("Diagram", picture(300, 200));
  pages.together([&] { tell_lines(pages, 6); });
  const auto done = pages.finish("");
  ASSERT_EQ(done.size(), 3u);
  EXPECT_TRUE(has(done[1], "Diagram"));
  EXPECT_TRUE(has(done[2], "kept 0"));
}

TEST(Pages, TellHowFarTheyAreFilled) {
  Pages pages(Paper::a4);
  EXPECT_EQ(pages.share_filled(), 0);
  const Pages full = filled(45);
  EXPECT_GT(full.share_filled(), 0.9);
  EXPECT_LE(full.share_filled(), 1);
}

TEST(Pages, TheLastRowOfATableNeverStandsAlone) {
  std::set<std::size_t> stood_on;
  for (int lines = 30; lines < 52; ++lines) {
    Pages pages = filled(lines);
    pages.table(two, {{"first", "1"}, {"second", "2"}, {"third", "3"}, {"fourth", "4"}});
    const auto done = pages.finish("");
    for (std::size_t k = 0; k < done.size(); ++k)
      if (has(done[k], "fourth")) {
        EXPECT_TRUE(has(done[k], "third")) << lines;
        stood_on.insert(k);
      }
  }
  EXPECT_EQ(stood_on, (std::set<std::size_t>{0, 1})) << "both sides of the foot were tried";
}

}  // namespace
}  // namespace ohmtrail::render
