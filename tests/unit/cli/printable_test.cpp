#include "cli/text/printable.hpp"

#include <gtest/gtest.h>

namespace {

using namespace ohmtrail::cli;

TEST(Printable, LeavesOrdinaryTextAlone) {
  EXPECT_EQ(printable("2/0 AWG, 0.35 mΩ, Grüße, 船, é"), "2/0 AWG, 0.35 mΩ, Grüße, 船, é");
}

TEST(Printable, TakesTheTeethOutOfEscapeSequences) {
  EXPECT_EQ(printable("\x1b[31mred"), "�[31mred");
  EXPECT_EQ(printable("\x07\x08\x7f"), "���");
  EXPECT_EQ(printable(std::string_view("a\0b", 3)), "a�b");
}

TEST(Printable, KnowsTheEightBitControlCharacters) {
  EXPECT_EQ(printable("\xC2\x9B"
                      "31m"),
            "�31m");
}

TEST(Printable, KeepsItOnOneLine) {
  EXPECT_EQ(printable("two\nlines\tand\r\n"), "two lines and  ");
}

TEST(Printable, DropsMarksThatTurnTheDirection) {
  EXPECT_EQ(printable("a\u202Eb\u2066c\u200Fd"), "a�b�c�d");
  EXPECT_EQ(printable("a\u2028b"), "a�b");
}

TEST(Printable, ReplacesWhatIsNotUtf8) {
  EXPECT_EQ(printable("\xff"), "�");
  EXPECT_EQ(printable("\xC3"), "�");                 // cut short
  EXPECT_EQ(printable("\xC0\xAF"), "��");            // overlong
  EXPECT_EQ(printable("\xED\xA0\x80"), "���");       // half of a surrogate pair
  EXPECT_EQ(printable("\xF4\x90\x80\x80"), "����");  // beyond the last code point
}

TEST(Columns, CountsWhatTheTerminalShows) {
  EXPECT_EQ(columns_of(""), 0U);
  EXPECT_EQ(columns_of("mΩ"), 2U);
  EXPECT_EQ(columns_of("船"), 2U);
  EXPECT_EQ(columns_of("e\u0301"), 1U);
}

TEST(Fitted, CutsWithAnEllipsis) {
  EXPECT_EQ(fitted("windlass", 8), "windlass");
  EXPECT_EQ(fitted("windlass", 7), "windla…");
  EXPECT_EQ(fitted("windlass", 1), "…");
  EXPECT_EQ(fitted("windlass", 0), "");
}

TEST(Fitted, NeverSplitsAWideCharacter) {
  EXPECT_EQ(fitted("船船船", 4), "船…");
  EXPECT_EQ(fitted("船船船", 5), "船船…");
  EXPECT_LE(columns_of(fitted("船船船", 4)), 4U);
}

TEST(Fitted, KeepsACombiningMarkWithItsLetter) {
  EXPECT_EQ(fitted("e\u0301e\u0301e\u0301", 2), "e\u0301…");
}

}  // namespace
