#include "netlist/scan.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>

#include "netlist/parse.hpp"

namespace ohmtrail::netlist {
namespace {

bool scanned(std::string_view text) {
  Tree tree(text);
  const bool good = scan(tree);
  EXPECT_TRUE(good || tree.size() == 0);
  return good;
}

/// Accepted, and value for value what the full parser makes of it.
void expect_as_in_full(std::string_view text) {
  Tree quick(text);
  ASSERT_TRUE(scan(quick)) << text.substr(0, 60);
  const auto full = parse_in_full(text);
  ASSERT_TRUE(full) << text.substr(0, 60);
  ASSERT_EQ(quick.size(), full->size());
  for (std::uint32_t k = 0; k < quick.size(); ++k) {
    const Value a(quick, k), b(*full, k);
    EXPECT_EQ(a.kind(), b.kind()) << k;
    EXPECT_EQ(a.begin(), b.begin()) << k;
    EXPECT_EQ(a.end(), b.end()) << k;
    EXPECT_EQ(a.after(), b.after()) << k;
    EXPECT_EQ(a.key_begin(), b.key_begin()) << k;
    EXPECT_EQ(a.key(), b.key()) << k;
    EXPECT_EQ(a.string(), b.string()) << k;
  }
}

std::string text_of(const std::filesystem::path& path) {
  std::ifstream file(path);
  EXPECT_TRUE(file.good()) << path;
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

std::vector<std::string> shipped() {
  std::vector<std::string> texts;
  for (const auto& entry : std::filesystem::directory_iterator(OHMTRAIL_SOURCE_DIR "/netlists"))
    if (entry.path().extension() == ".json") texts.push_back(text_of(entry.path()));
  EXPECT_GE(texts.size(), 3U);
  return texts;
}

TEST(Scan, SmallTexts) {
  for (const char* text :
       {"{}", "[]", " [ ] ", "0", "-0", "12.50", "-3", "true", "false", "null", "\"\"", "\"m\"", "[1,2]",
        "[[],{}]", "{\"a\":1}", "{\"a\" : {\"b\":[null , true]} , \"a\":2}\n", "\xEF\xBB\xBF{\"a\":1}",
        "[\"\u03a9 \u00b2 \u20ac \U0001F50B \U0010FFFF\"]", "\t{\r\n\"\u00e9\":\"\x7f\"}"})
    expect_as_in_full(text);
}

TEST(Scan, ShippedSystems) {
  for (const std::string& text : shipped()) expect_as_in_full(text);
}

TEST(Scan, LeavesMistakesToTheFullParser) {
  for (const char* text : {"",
                           " ",
                           "{",
                           "[",
                           "]",
                           "{]",
                           "[}",
                           "[1,]",
                           "{\"a\":1,}",
                           "[,1]",
                           "[1 2]",
                           "{\"a\" 1}",
                           "{\"a\":}",
                           "{a:1}",
                           "{1:1}",
                           "01",
                           "-",
                           "1.",
                           ".5",
                           "+1",
                           "tru",
                           "nul",
                           "True",
                           "\"open",
                           "\"tab\there\"",
                           "[1]]",
                           "{} {}",
                           "'a'",
                           "[1]x",
                           "// note\n{}",
                           "\"\x80\"",
                           "\"\xC0\xAF\"",
                           "\"\xED\xA0\x80\"",
                           "\"\xF5\x80\x80\x80\"",
                           "\"\xE2\x82\"",
                           "\"\xE2\x82\xFF\"",
                           "\"\xE2\x82(\"",
                           "\"\xF4\x90\x80\x80\"",
                           "\"\xFF\"",
                           "\"\xF0\x9F",
                           "[nulL]",
                           "[falsy]",
                           "[\"a\":1]",
                           "\"\xE0\x80\x80\""}) {
    EXPECT_FALSE(scanned(text)) << text;
    EXPECT_FALSE(parse(text)) << text;
  }
  EXPECT_FALSE(scanned(std::string_view("[1\0]", 4)));
}

TEST(Scan, LeavesWhatIsRareToTheFullParser) {
  for (const char* text : {"\"\\u00b5\"", "[\"a\\n\"]", "1e3", "[2.5E-3]", "{\"\\\"\":1}"}) {
    EXPECT_FALSE(scanned(text)) << text;
    EXPECT_TRUE(parse(text)) << text;
  }
  EXPECT_FALSE(scanned(std::string(400, '9')));
  EXPECT_FALSE(parse(std::string(400, '9')));  // no double
}

TEST(Scan, NestsAsDeepAsTheFullParser) {
  const std::string deep = std::string(deepest_nesting, '[') + std::string(deepest_nesting, ']');
  expect_as_in_full(deep);
  EXPECT_FALSE(scanned("[" + deep + "]"));
  EXPECT_FALSE(parse("[" + deep + "]"));
}

/// Whatever it takes, the full parser takes, and sees the same in it.
TEST(Scan, MutatedSystems) {
  std::mt19937 random(17);
  std::size_t taken = 0;
  for (const std::string& whole : shipped()) {
    const std::string text = whole.substr(0, whole.size() > 6000 ? 6000 : whole.size());
    for (int round = 0; round < 300; ++round) {
      std::string changed = whole.size() > text.size() && round % 2 == 0 ? text : whole;
      for (auto edits = 1 + random() % 2; edits > 0; --edits) {
        constexpr std::string_view bytes = "{}[]\",: 0e.-\\\n\x80\xC2tfn";
        changed[random() % changed.size()] = bytes[random() % bytes.size()];
      }
      if (!scanned(changed)) continue;
      ++taken;
      expect_as_in_full(changed);
    }
  }
  EXPECT_GT(taken, 20U);
}

}  // namespace
}  // namespace ohmtrail::netlist
