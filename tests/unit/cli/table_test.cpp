#include "cli/text/table.hpp"

#include <gmock/gmock.h>

#include "cli/text/printable.hpp"
#include "cli/text/sheet.hpp"

namespace {

using namespace ohmtrail::cli;
using Align = Column::Align;

TEST(Table, AlignsByDisplayColumns) {
  Table table({{"who", Align::left}, {"lost", Align::right}});
  table.row({"mΩ", "1 V"});
  table.row({"船", "12 V"});
  EXPECT_EQ(table.text(80, false), "  who  lost\n  mΩ    1 V\n  船   12 V\n");
}

TEST(Table, CutsTheColumnsThatMayBeCut) {
  Table table({{"where", Align::left, Narrow::cuts}, {"lost", Align::right}});
  table.row({std::string(100, 'x'), "1 V"});
  const std::string text = table.text(40, false);
  EXPECT_THAT(text, testing::HasSubstr("x…   1 V\n"));
  EXPECT_EQ(columns_of(text.substr(text.find('\n') + 1)), 41U);  // a line of 40 and its end
}

TEST(Table, WrapsTheColumnsThatMayBeWrapped) {
  Table table({{"name", Align::left}, {"what", Align::left, Narrow::wraps}});
  table.row({"a", "one two three four"});
  EXPECT_EQ(table.text(20, false), "  name  what\n  a     one two\n        three four\n");
}

TEST(Table, BreaksTitlesBeforeItWidensColumns) {
  Table table({{"resistance of the wire", Align::right}});
  table.row({"1"});
  EXPECT_EQ(table.text(14, false), "  resistance\n      of the\n        wire\n           1\n");
  EXPECT_EQ(table.text(80, false), "  resistance of the wire\n                       1\n");
}

TEST(Table, PutsNotesBelowTheirRow) {
  Table table({{"#", Align::right}, {"where", Align::left}});
  table.row({"1", "stud"});
  table.note(1, "clean it and tighten it");
  EXPECT_EQ(table.text(20, false), "  #  where\n  1  stud\n     clean it and\n     tighten it\n");
}

TEST(Table, ColoursTextButNotItsPadding) {
  Table table({{"a", Align::left}, {"b", Align::left}});
  table.row({Cell("x", Ink::bad), "y"});
  EXPECT_THAT(table.text(80, true), testing::HasSubstr("\x1b[1;31mx\x1b[0m  y"));
  EXPECT_THAT(table.text(80, false), testing::Not(testing::HasSubstr("\x1b")));
}

TEST(Table, NothingFromAFileReachesTheTerminalRaw) {
  Table table({{"a", Align::left}});
  table.row({"\x1b[2J"});
  table.note(0, "\x1b]0;title\x07");
  EXPECT_THAT(table.text(80, false), testing::Not(testing::HasSubstr("\x1b")));
}

TEST(Sheet, WrapsAtEightyColumnsBehindItsMark) {
  Sheet sheet(false);
  sheet.item("  - ", std::string(60, 'a') + ' ' + std::string(60, 'b'));
  EXPECT_EQ(sheet.text(), "  - " + std::string(60, 'a') + "\n    " + std::string(60, 'b') + "\n");
}

TEST(Sheet, BreaksAWordThatIsWiderThanThePage) {
  Sheet sheet(false);
  std::string wide;
  for (int i = 0; i < 50; ++i) wide += "船";
  sheet.item("  - ", "a " + wide + " z");
  std::string first = "    ", rest = "    ";
  for (int i = 0; i < 38; ++i) first += "船";
  for (int i = 0; i < 12; ++i) rest += "船";
  EXPECT_EQ(sheet.text(), "  - a\n" + first + "\n" + rest + " z\n");
}

TEST(Sheet, MakesTextSafeAndColoursItOnlyWhenAsked) {
  Sheet plain(false), coloured(true);
  plain.line("\x1b[1mx", Ink::good);
  coloured.line("x", Ink::good);
  EXPECT_EQ(plain.text(), "�[1mx\n");
  EXPECT_EQ(coloured.text(), "\x1b[32mx\x1b[0m\n");
}

}  // namespace
