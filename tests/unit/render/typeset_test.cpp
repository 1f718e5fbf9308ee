#include "render/typeset.hpp"

#include <gtest/gtest.h>

namespace ohmtrail::render {
namespace {

TEST(Typeset, AUnitStaysWithItsNumber) {
  EXPECT_EQ(typeset("about 37 % charged"), "about 37\u202F% charged");
  EXPECT_EQ(typeset("80 cm (31 in) after"), "80\u202Fcm (31\u202Fin) after");
  EXPECT_EQ(typeset("up to 3590 A; 12.6 V"), "up to 3590\u202FA; 12.6\u202FV");
  EXPECT_EQ(typeset("40 µΩ"), "40\u202FµΩ");
}

TEST(Typeset, WordsThatOnlyBeginLikeAUnitStandApart) {
  EXPECT_EQ(typeset("at 3 places"), "at 3 places");
  EXPECT_EQ(typeset("5 lugs meet here"), "5 lugs meet here");
  EXPECT_EQ(typeset("link 4-5 is A Volt"), "link 4-5 is A Volt");
}

TEST(Typeset, AStandardStaysWithItsNumber) {
  EXPECT_EQ(typeset("named in ISO 8820-3:2015 scope"), "named in ISO\u00A08820-3:2015 scope");
  EXPECT_EQ(typeset("33 CFR 183.425"), "33\u202FCFR\u00A0183.425");
  EXPECT_EQ(typeset("PISO 12"), "PISO 12");
}

TEST(Typeset, SquareMillimetresHaveTheirSquare) {
  EXPECT_EQ(typeset("16 mm2, the other 10 mm2"), "16\u202Fmm², the other 10\u202Fmm²");
  EXPECT_EQ(typeset("35mm2"), "35mm²");
  EXPECT_EQ(typeset("mm25"), "mm25");
  EXPECT_EQ(typeset("drum2"), "drum2");
}

TEST(Typeset, EdgesOfTheTextAreNoWords) {
  EXPECT_EQ(typeset(""), "");
  EXPECT_EQ(typeset(" A "), " A ");
  EXPECT_EQ(typeset("12 "), "12 ");
  EXPECT_EQ(typeset("2"), "2");
}

}  // namespace
}  // namespace ohmtrail::render
