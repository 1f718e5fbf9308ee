#include "cli/json/csv.hpp"

#include <gtest/gtest.h>

namespace {

using namespace ohmtrail::cli;

std::string cell(const std::string& text) {
  const std::string all = csv({Row{{"a", text}}}, {"a"});
  return all.substr(3, all.size() - 5);  // between the heading and the last line end
}

TEST(Csv, WritesOneLineARow) {
  EXPECT_EQ(csv({Row{{"id", std::string("x")}, {"volts", number(1.5)}},
                 Row{{"id", std::string("y")}, {"volts", {}}}},
                {"id", "volts"}),
            "id,volts\r\nx,1.5\r\ny,\r\n");
}

TEST(Csv, FlattensRowsInRows) {
  EXPECT_EQ(csv({Row{{"r", Row{{"load", std::string("lamp")}, {"volts", number(0.5)}}}, {"z", true}},
                 Row{{"r", {}}, {"z", false}}},
                {"r_load", "r_volts", "z"}),
            "r_load,r_volts,z\r\nlamp,0.5,true\r\n,,false\r\n");
}

TEST(Csv, QuotesWhatNeedsIt) {
  EXPECT_EQ(cell("a,b"), "\"a,b\"");
  EXPECT_EQ(cell("say \"hi\""), "\"say \"\"hi\"\"\"");
  EXPECT_EQ(cell("plain"), "plain");
}

TEST(Csv, NoCellBeginsAFormula) {
  EXPECT_EQ(cell("=1+1"), "'=1+1");
  EXPECT_EQ(cell("+cmd|' /C calc'!A0"), "'+cmd|' /C calc'!A0");
  EXPECT_EQ(cell("-2+3"), "'-2+3");
  EXPECT_EQ(cell("@SUM(A1)"), "'@SUM(A1)");
  EXPECT_EQ(cell("\t=1"), "' =1");
  EXPECT_EQ(cell("\r=1"), "' =1");
  EXPECT_EQ(cell("=HYPERLINK(\"x\")"), "\"'=HYPERLINK(\"\"x\"\")\"");
}

TEST(Csv, BlanksAndWideCharactersHideNoFormula) {
  EXPECT_EQ(cell(" =1+1"), "' =1+1");
  EXPECT_EQ(cell("\u00A0=1"), "'\u00A0=1");
  EXPECT_EQ(cell("\u3000=1"), "'\u3000=1");
  EXPECT_EQ(cell("\uFEFF=1"), "'\uFEFF=1");
  EXPECT_EQ(cell("\u200B@x"), "'\u200B@x");
  EXPECT_EQ(cell("＝1+1"), "'＝1+1");
  EXPECT_EQ(cell(" "), " ");
  EXPECT_EQ(cell("a=1"), "a=1");
}

TEST(Csv, NumbersStayNumbers) {
  EXPECT_EQ(cell("-2.5"), "-2.5");
  EXPECT_EQ(cell("+3"), "+3");
  EXPECT_EQ(csv({Row{{"a", number(-0.25)}}}, {"a"}), "a\r\n-0.25\r\n");
}

TEST(Csv, LineEndsInANameDoNotBreakTheLine) {
  EXPECT_EQ(cell("a\nb"), "a b");
}

}  // namespace
