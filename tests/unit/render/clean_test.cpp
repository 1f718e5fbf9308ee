#include "render/clean.hpp"

#include <gtest/gtest.h>

namespace ohmtrail::render {
namespace {

TEST(Clean, KeepsWhatPeopleWrite) {
  EXPECT_EQ(clean("Bus + 12 V · Größe µΩ"), "Bus + 12 V · Größe µΩ");
  EXPECT_EQ(clean("מתח סוללה"), "מתח סוללה");
  EXPECT_EQ(clean("電池 🔋"), "電池 🔋");
}

TEST(Clean, ControlCharactersBecomeSpaces) {
  EXPECT_EQ(clean("a\nb\tc\x1b[31md"), "a b c [31md");
  EXPECT_EQ(clean(std::string("x\0y", 3)), "x y");
  EXPECT_EQ(clean("a\xC2\x85z"), "a z");
}

TEST(Clean, MarksThatTurnTheTextGo) {
  EXPECT_EQ(clean("a\u202Eb\u2066c\u2069\u2028"), "abc");
}

TEST(Clean, BrokenBytesAreShownAsBroken) {
  EXPECT_EQ(clean("a\xFFz"), "a\uFFFDz");
  EXPECT_EQ(clean("\xC0\xAF"), "\uFFFD\uFFFD");            // overlong
  EXPECT_EQ(clean("\xED\xA0\x80"), "\uFFFD\uFFFD\uFFFD");  // surrogate
  EXPECT_EQ(clean("\xE2\x82"), "\uFFFD\uFFFD");            // cut short
}

TEST(Escaped, NothingOfTheTextCanBecomeMarkup) {
  EXPECT_EQ(escaped("<script>alert('x') & \"y\"</script>"),
            "&lt;script&gt;alert(&#39;x&#39;) &amp; &quot;y&quot;&lt;/script&gt;");
}

}  // namespace
}  // namespace ohmtrail::render
