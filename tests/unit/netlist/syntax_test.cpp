#include <gtest/gtest.h>

#include "netlist/parse.hpp"
#include "unit/netlist/netlist_text.hpp"

namespace ohmtrail::netlist::test {
namespace {

using testing::HasSubstr;

struct Broken {
  std::string text, name;
  int line, column;
  std::string pointer, hint;
};

void PrintTo(const Broken& broken, std::ostream* out) {
  *out << broken.text.substr(0, 60);
}

class Syntax : public testing::TestWithParam<Broken> {};

TEST_P(Syntax, IsToldWithPlaceAndRemedy) {
  const auto found = mistakes(GetParam().text);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].name, GetParam().name);
  EXPECT_EQ(found[0].line, GetParam().line);
  EXPECT_EQ(found[0].column, GetParam().column);
  EXPECT_EQ(found[0].pointer, GetParam().pointer);
  EXPECT_THAT(found[0].hint, HasSubstr(GetParam().hint));
  EXPECT_FALSE(found[0].expected.empty());
}

INSTANTIATE_TEST_SUITE_P(
    Slips, Syntax,
    testing::Values(Broken{"", "empty-file", 1, 1, "", "the least one begins"},
                    Broken{" \n\t ", "empty-file", 1, 1, "", ""},
                    Broken{"{\"a\": [1,]}", "bad-syntax", 1, 10, "/a/1", "no comma after it"},
                    Broken{"{\"a\": 1,\n}", "bad-syntax", 2, 1, "", "no comma after it"},
                    Broken{"{\"a\": 1\n \"b\": 2}", "bad-syntax", 2, 2, "", "a comma is missing"},
                    Broken{"[1 2]", "bad-syntax", 1, 4, "/1", "comma"},
                    Broken{"{\"a\" 1}", "bad-syntax", 1, 6, "/a", "colon"},
                    Broken{"{\"a\": NaN}", "bad-syntax", 1, 7, "/a", "no such number"},
                    Broken{"{\"a\": Infinity}", "bad-syntax", 1, 7, "/a", "no such number"},
                    Broken{"{\"a\": -inf}", "bad-syntax", 1, 7, "/a", "no such number"},
                    Broken{"{\"a\": True}", "bad-syntax", 1, 7, "/a", "write true"},
                    Broken{"{\"a\": None}", "bad-syntax", 1, 7, "/a", "leave the key out"},
                    Broken{"{\"a\": nil}", "bad-syntax", 1, 7, "/a", "leave the key out"},
                    Broken{"{\"a\": undefined}", "bad-syntax", 1, 7, "/a", "leave the key out"},
                    Broken{"{\"a\": yes}", "bad-syntax", 1, 7, "/a", "write true"},
                    Broken{"{\"a\": False}", "bad-syntax", 1, 7, "/a", "write false"},
                    Broken{"{\"a\": no}", "bad-syntax", 1, 7, "/a", "write false"},
                    Broken{"{\"a\": -NaN}", "bad-syntax", 1, 7, "/a", "no such number"},
                    Broken{"{\"a\": _b}", "bad-syntax", 1, 7, "/a", "double quotes"},
                    Broken{"{\"a\": 1 /* one */}", "bad-syntax", 1, 9, "", "no comments"},
                    Broken{"{\"a\": [6 ft]}", "bad-syntax", 1, 10, "/a/1", "in quotes: \"6 ft\""},
                    Broken{"{\"a\": 80 %}", "bad-syntax", 1, 10, "", "in quotes: \"6 ft\""},
                    Broken{"{\"a\": 12,6 }", "bad-syntax", 1, 10, "", "decimals have a point"},
                    Broken{"[1 {}]", "bad-syntax", 1, 4, "/1", "a comma is missing"},
                    Broken{"{\"a\": \x02}", "bad-syntax", 1, 7, "/a", ""},
                    Broken{"{'a': 1}", "bad-syntax", 1, 2, "", "double quotes only"},
                    Broken{"{a: 1}", "bad-syntax", 1, 2, "", "double quotes"},
                    Broken{"{“a”: 1}", "bad-syntax", 1, 2, "", "curly quotes"},
                    Broken{"{\"a\": 6 ft}", "bad-syntax", 1, 9, "", "in quotes: \"6 ft\""},
                    Broken{"{\"a\": .5}", "bad-syntax", 1, 7, "/a", "write 0.5"},
                    Broken{"{\"a\": +5}", "bad-syntax", 1, 7, "/a", "write 0.5"},
                    Broken{"{\"a\": 1 // one\n}", "bad-syntax", 1, 9, "", "no comments"},
                    Broken{"# netlist\n{}", "bad-syntax", 1, 1, "", "no comments"},
                    Broken{"{\"a\": 1e999}", "number-out-of-range", 1, 7, "/a", "exponent"},
                    Broken{"{\"a\": [{\"b\": -1e999}]}", "number-out-of-range", 1, 14, "/a/0/b", ""},
                    Broken{"{\"a\": [1, 2", "truncated-file", 1, 12, "/a/2", "closing bracket"},
                    Broken{"{\"a\": \"b", "truncated-file", 1, 9, "/a", "closing quote"},
                    Broken{"{\"a\":", "truncated-file", 1, 6, "/a", "cut off"},
                    Broken{"{\"a\": 1}}", "bad-syntax", 1, 9, "", "one bracket too many"},
                    Broken{"{} {}", "bad-syntax", 1, 4, "", "two netlists"},
                    Broken{"{\"a\": \"x\ny\"}", "control-character", 1, 9, "/a",
                           "closing quote may be missing"},
                    Broken{"{\"a\": \"C:\\boat\\x\"}", "bad-escape", 1, 16, "/a", ""},
                    Broken{"{\"a\": \"\xE9t\xE9\"}", "not-utf-8", 1, 9, "/a", "save it as UTF-8"},
                    Broken{"\xFF\xFE{", "not-utf-8", 1, 1, "", "save it as UTF-8"},
                    Broken{"\xFE\xFF{", "not-utf-8", 1, 1, "", "save it as UTF-8"},
                    Broken{"\xEF\xBB{}", "not-utf-8", 1, 2, "", "save it as UTF-8"}));

TEST(Syntax, TheEndOfEveryCutIsAMistakeWithAPlace) {
  const std::string whole = sound_netlist().dump(1);
  for (std::size_t length = 0; length < whole.size(); ++length) {
    const auto found = mistakes(whole.substr(0, length));
    ASSERT_EQ(found.size(), 1U) << length;
    ASSERT_GT(found[0].line, 0) << length;
  }
}

TEST(Syntax, DeepNestingCostsNoStack) {
  for (const std::string open : {"[", "{\"a\":"}) {
    std::string deep;
    for (int i = 0; i < 100000; ++i) deep += open;
    const auto found = mistakes(deep);
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].name, "nested-too-deep");
    EXPECT_EQ(found[0].line, 1);
  }
}

TEST(Syntax, TheDeepestThatIsReadIsSixtyFour) {
  const auto nested = [](std::size_t depth) { return std::string(depth, '[') + std::string(depth, ']'); };
  EXPECT_TRUE(parse(nested(64)));
  EXPECT_FALSE(parse(nested(65)));
}

TEST(Syntax, FilesAbove64MiBAreRefusedWithTheirSize) {
  const std::string huge(largest_file_bytes + 1, ' ');
  const auto found = mistakes(huge);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].name, "file-too-large");
  EXPECT_THAT(found[0].text, HasSubstr("67108865"));
}

TEST(Syntax, AByteOrderMarkIsPassedOver) {
  EXPECT_THAT(mistakes("\xEF\xBB\xBF" + sound_netlist().dump()), testing::IsEmpty());
}

TEST(Tree, KeepsKeysValuesAndTheirBytes) {
  const std::string text = R"({"a": [1, -2.50, true], "k\u00e9\/": "x\ny", "n": null, "e": {}})";
  const auto tree = parse(text);
  ASSERT_TRUE(tree);
  const Value root = tree->root();
  EXPECT_EQ(root.count(), 4U);
  std::vector<std::string> sources;
  for (const Value item : root.member("a").children()) sources.emplace_back(item.source());
  EXPECT_THAT(sources, testing::ElementsAre("1", "-2.50", "true"));
  const Value escaped = root.member("ké/");
  ASSERT_TRUE(escaped.exists());
  EXPECT_EQ(escaped.string(), "x\ny");
  EXPECT_EQ(escaped.pointer(), "/ké~1");
  EXPECT_TRUE(root.member("n").is(Kind::null));
  EXPECT_EQ(root.member("e").count(), 0U);
  EXPECT_FALSE(root.member("z").exists());
  EXPECT_FALSE(root.member("z").member("y").exists());
}

}  // namespace
}  // namespace ohmtrail::netlist::test
