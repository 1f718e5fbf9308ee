#include "ohmtrail/netlist/name_table.hpp"

#include <gtest/gtest.h>

#include <map>
#include <random>
#include <string>

namespace ohmtrail::netlist {
namespace {

TEST(NameTable, NumbersNamesInTheOrderOfTheirFirstUse) {
  NameTable table(3);
  EXPECT_EQ(table.add("bow"), 0U);
  EXPECT_EQ(table.add("stern"), 1U);
  EXPECT_EQ(table.add("bow"), 0U);
  EXPECT_EQ(table.size(), 2U);
  EXPECT_EQ(table.names(), (std::vector<std::string_view>{"bow", "stern"}));
}

TEST(NameTable, FindsOnlyWhatWasAdded) {
  NameTable table(2);
  EXPECT_FALSE(table.find("bow"));
  table.add("bow");
  EXPECT_EQ(table.find("bow"), 0U);
  for (const std::string_view other : {"", "bo", "bows", "Bow", "wob"})
    EXPECT_FALSE(table.find(other)) << other;
}

TEST(NameTable, GrowsBeyondWhatWasExpected) {
  NameTable table(0);
  std::vector<std::string> names;
  for (int k = 0; k < 1000; ++k) names.push_back("point " + std::to_string(k));
  for (std::size_t k = 0; k < names.size(); ++k) {
    table.expect(names[k]);
    EXPECT_EQ(table.add(names[k]), k);
  }
  for (std::size_t k = 0; k < names.size(); ++k) EXPECT_EQ(table.find(names[k]), k);
}

/// Names of up to 16 bytes are known by their first and last eight alone, longer ones are not.
TEST(NameTable, TellsApartWhatDiffersInOneByteOrInLength) {
  for (const std::size_t length : {1U, 2U, 3U, 4U, 5U, 7U, 8U, 9U, 15U, 16U, 17U, 24U, 60U}) {
    NameTable table(1);
    std::vector<std::string> names(length + 2, std::string(length, 'x'));
    for (std::size_t k = 0; k < length; ++k) names[k][k] = 'y';
    names.back() += 'x';
    for (std::size_t k = 0; k < names.size(); ++k) EXPECT_EQ(table.add(names[k]), k) << length;
    for (std::size_t k = 0; k < names.size(); ++k) EXPECT_EQ(table.find(names[k]), k) << length;
  }
}

TEST(NameTable, DoesAsAMapDoes) {
  std::mt19937 random(11);
  std::vector<std::string> names(3000);
  for (std::string& name : names) {
    name.resize(1 + random() % 24);
    for (char& c : name) c = "ab"[random() % 2];
  }
  NameTable table(100);
  std::map<std::string_view, std::size_t> expected;
  for (const std::string& name : names) {
    const std::size_t number = expected.try_emplace(name, expected.size()).first->second;
    EXPECT_EQ(table.add(name), number);
  }
  EXPECT_EQ(table.size(), expected.size());
}

}  // namespace
}  // namespace ohmtrail::netlist
