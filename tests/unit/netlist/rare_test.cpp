#include "ohmtrail/netlist/rare.hpp"

#include <gtest/gtest.h>

#include <string>

#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::netlist {
namespace {

TEST(Rare, IsAbsentUntilGiven) {
  Rare<std::string> note;
  EXPECT_FALSE(note.has_value());
  EXPECT_FALSE(note);
  EXPECT_EQ(note.value_or("none"), "none");
  note.emplace() = "loose";
  ASSERT_TRUE(note);
  EXPECT_EQ(*note, "loose");
  EXPECT_EQ(note->size(), 5U);
  EXPECT_EQ(note.value_or("none"), "loose");
  note.reset();
  EXPECT_FALSE(note);
}

TEST(Rare, CopiesAreTheirOwn) {
  const Rare<std::string> first = std::string("loose");
  Rare<std::string> second = first;
  *second = "tight";
  EXPECT_EQ(*first, "loose");
  second = first;
  EXPECT_EQ(*second, "loose");
  Rare<std::string>& itself = second;
  second = itself;
  EXPECT_EQ(*second, "loose");
  second = Rare<std::string>();
  EXPECT_FALSE(second);
  EXPECT_EQ(*first, "loose");
}

TEST(Rare, EqualWhereBothAreAbsentOrAlike) {
  const Rare<int> none, three = 3, also_three = 3, four = 4;
  EXPECT_EQ(none, Rare<int>());
  EXPECT_EQ(three, also_three);
  EXPECT_NE(three, four);
  EXPECT_NE(three, none);
  EXPECT_NE(none, three);
}

/// A file of 10⁶ elements holds 10⁵ runs or more, and the kernel hands their memory out page by page.
TEST(Rare, KeepsARunSmall) {
  EXPECT_EQ(sizeof(Rare<Resistances>), sizeof(void*));
  EXPECT_LE(sizeof(netlist::Run), 840U);
}

}  // namespace
}  // namespace ohmtrail::netlist
