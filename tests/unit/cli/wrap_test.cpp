#include "cli/text/wrap.hpp"

#include <gtest/gtest.h>

#include <random>
#include <sstream>

#include "cli/text/printable.hpp"
#include "support/random_cases.hpp"

namespace {

using ohmtrail::cli::columns_of;
using ohmtrail::cli::with_words_broken;
using ohmtrail::cli::wrapped;

TEST(Wrap, BreaksAtBlanksOnly) {
  EXPECT_EQ(wrapped("one two three", 7, 0, ""), "one two\nthree\n");
  EXPECT_EQ(wrapped("one two three", 8, 0, ""), "one two\nthree\n");
  EXPECT_EQ(wrapped("unbreakable", 4, 0, ""), "unbreakable\n");
}

TEST(Wrap, SeveralBlanksAreOneAndNothingIsALine) {
  EXPECT_EQ(wrapped("  a   b  ", 80, 0, ""), "a b\n");
  EXPECT_EQ(wrapped("", 80, 0, ""), "\n");
}

TEST(Wrap, TheFirstLineStandsBehindWhatIsThereTheOthersAreIndented) {
  EXPECT_EQ(wrapped("aa bb cc", 8, 3, "- "), "- aa bb\n   cc\n");
}

TEST(Wrap, CountsColumnsNotBytes) {
  EXPECT_EQ(wrapped("船船 船船", 9, 0, ""), "船船 船船\n");
  EXPECT_EQ(wrapped("船船 船船", 8, 0, ""), "船船\n船船\n");
  EXPECT_EQ(wrapped("mΩ mΩ", 5, 0, ""), "mΩ mΩ\n");
}

TEST(Wrap, AWideWordIsBrokenBetweenCharacters) {
  EXPECT_EQ(with_words_broken("abcdef gh", 4), "abcd ef gh");
  EXPECT_EQ(with_words_broken("船船船", 5), "船船 船");
  EXPECT_EQ(with_words_broken("short", 5), "short");
}

/// Whatever the words: no line is wider than the page, and no word is lost or changed.
TEST(Wrap, KeepsEveryWordAndThePage) {
  std::mt19937 engine(3);
  const auto below = [&](int count) { return std::uniform_int_distribution<int>(0, count - 1)(engine); };
  for (int turn = 0; turn < ohmtrail::test::random_cases(500); ++turn) {
    std::string text;
    for (int words = below(30); words > 0; --words) {
      for (int letters = 1 + below(40); letters > 0; --letters) text += below(5) == 0 ? "Ω" : "a";
      text.append(static_cast<std::size_t>(1 + below(3)), ' ');
    }
    const auto width = static_cast<std::size_t>(20 + below(60)), indent = static_cast<std::size_t>(below(10));
    const std::string broken = with_words_broken(text, width - indent);
    std::istringstream words(broken), lines(wrapped(broken, width, indent, std::string(indent, ' ')));
    for (std::string line; std::getline(lines, line);) {
      EXPECT_LE(columns_of(line), width);
      std::istringstream of_line(line);
      for (std::string word, wanted; of_line >> word;) {
        ASSERT_TRUE(words >> wanted);
        EXPECT_EQ(word, wanted);
      }
    }
    std::string left;
    EXPECT_FALSE(words >> left);
  }
}

}  // namespace
