#include "render/lettering.hpp"

#include <gtest/gtest.h>

#include "support/hostile_names.hpp"
#include "support/seeded_random.hpp"

namespace ohmtrail::render {
namespace {

constexpr double size = 9, width = 180;

std::string joined(const std::vector<std::string>& lines) {
  std::string all;
  for (const std::string& line : lines) all += (all.empty() ? "" : " ") + line;
  return all;
}

std::string random_sentence(test::SeededRandom& random) {
  std::string text;
  for (int words = random.integer(1, 40); words > 0; --words) {
    if (!text.empty()) text += ' ';
    for (int letters = random.integer(1, 12); letters > 0; --letters)
      text += static_cast<char>('a' + random.integer(0, 25));
  }
  return text;
}

TEST(Lettering, WiderAndBolderTakesMore) {
  EXPECT_GT(measure("volts", 10).width, measure("volt", 10).width);
  EXPECT_GT(measure("volts", 12).width, measure("volts", 10).width);
  EXPECT_GT(measure("volts", 10, true).width, measure("volts", 10).width);
  EXPECT_EQ(measure("", 10).width, 0);
  EXPECT_NEAR(measure("volts", 20).width, 2 * measure("volts", 10).width, 0.1) << "no hinting";
}

TEST(Lettering, WrappedLinesFitAndLoseNothing) {
  test::SeededRandom random(7);
  for (int k = 0; k < 100; ++k) {
    const std::string text = random_sentence(random);
    const auto lines = wrapped(text, size, false, width, 100);
    EXPECT_EQ(joined(lines), text);
    for (const std::string& line : lines) EXPECT_LE(measure(line, size).width, width);
  }
}

TEST(Lettering, EachLineTakesAllTheWordsThatFit) {
  test::SeededRandom random(8);
  for (int k = 0; k < 100; ++k) {
    const auto lines = wrapped(random_sentence(random), size, false, width, 100);
    for (std::size_t l = 0; l + 1 < lines.size(); ++l) {
      const std::string next = lines[l + 1].substr(0, lines[l + 1].find(' '));
      EXPECT_GT(measure(lines[l] + " " + next, size).width, width - 0.2) << lines[l] << " | " << next;
    }
  }
}

TEST(Lettering, AWordWiderThanTheLineIsBroken) {
  const auto lines = wrapped(std::string(80, 'W'), size, false, width, 100);
  ASSERT_GT(lines.size(), 1u);
  std::string all;
  for (const std::string& line : lines) {
    EXPECT_LE(measure(line, size).width, width);
    all += line;
  }
  EXPECT_EQ(all, std::string(80, 'W'));
}

TEST(Lettering, TheLastOfTooFewLinesIsCut) {
  const auto lines = wrapped("one two three four five six seven eight nine ten", size, false, 60, 2);
  ASSERT_EQ(lines.size(), 2u);
  EXPECT_TRUE(lines[1].ends_with("…"));
  EXPECT_LE(measure(lines[1], size).width, 60);
}

TEST(Lettering, WhatFitsIsNotCut) {
  EXPECT_EQ(fitted("short", size, false, width), "short");
  const std::string cut = fitted(std::string(80, 'W'), size, false, 50);
  EXPECT_TRUE(cut.ends_with("…"));
  EXPECT_LE(measure(cut, size).width, 50);
}

TEST(Lettering, HostileNamesStayWithinTheirWidth) {
  for (const std::string& name : test::hostile_names())
    for (const double wide : {120.0, 400.0})
      for (const std::string& line : wrapped(name + " " + name, size, false, wide, 400))
        EXPECT_LE(measure(line, size).width, wide) << name;
}

}  // namespace
}  // namespace ohmtrail::render
