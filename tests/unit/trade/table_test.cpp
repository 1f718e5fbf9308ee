#include "ohmtrail/trade/table.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "ohmtrail/trade/gauge.hpp"

namespace ohmtrail::trade {
namespace {

TEST(Tables, all_that_are_promised_are_there) {
  for (const char* name : {"awg",
                           "sae",
                           "metric",
                           "conductors",
                           "conductor-factors",
                           "ampacity-33cfr183",
                           "ampacity-iso10133",
                           "ampacity-factors",
                           "terminations",
                           "joints",
                           "switches",
                           "fuses",
                           "fuse-ladder",
                           "fuse-time",
                           "fuse-limits",
                           "protection",
                           "interrupting",
                           "vehicle-fuses",
                           "drop-rules",
                           "meter-built-in",
                           "meters",
                           "temperature-limits",
                           "emissivity"})
    EXPECT_NE(find_table(name), nullptr) << name;
  EXPECT_EQ(find_table("no-such-table"), nullptr);
  EXPECT_EQ(find_table(""), nullptr);
}

TEST(Tables, names_are_unique_and_plain) {
  std::set<std::string> names;
  for (const Table& table : all_tables()) {
    EXPECT_TRUE(names.insert(table.name).second) << table.name;
    EXPECT_EQ(table.name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-"), std::string::npos)
        << table.name;
  }
}

TEST(Tables, every_row_is_as_long_as_its_heading_and_every_table_has_a_source) {
  for (const Table& table : all_tables()) {
    EXPECT_FALSE(table.title.empty()) << table.name;
    EXPECT_FALSE(table.source.empty()) << table.name;
    EXPECT_FALSE(table.rows.empty()) << table.name;
    for (const auto& row : table.rows) EXPECT_EQ(row.size(), table.columns.size()) << table.name;
  }
}

/// Where the table says that each row has its own source, each row must.
TEST(Tables, rows_of_mixed_sources_carry_theirs) {
  int checked = 0;
  for (const Table& table : all_tables()) {
    if (table.source.rfind("each row its own", 0) != 0) continue;
    for (const auto& row : table.rows) {
      const auto* source = std::get_if<std::string>(&row.back());
      ASSERT_NE(source, nullptr) << table.name;
      EXPECT_GT(source->size(), 5u) << table.name;
      ++checked;
    }
  }
  EXPECT_GT(checked, 100);
}

TEST(Tables, numbers_are_finite) {
  for (const Table& table : all_tables())
    for (const auto& row : table.rows)
      for (const Cell& cell : row) {
        const auto* number = std::get_if<double>(&cell);
        EXPECT_TRUE(number == nullptr || std::isfinite(*number)) << table.name;
      }
}

TEST(Tables, gauges_in_them_can_be_read) {
  for (const char* name : {"awg", "ampacity-33cfr183", "terminations", "vehicle-fuses"})
    for (const auto& row : find_table(name)->rows)
      EXPECT_TRUE(parse_gauge(std::get<std::string>(row.front()))) << name;
}

TEST(Tables, what_is_from_memory_says_so) {
  EXPECT_NE(find_table("ampacity-iso10133")->source.find("from memory"), std::string::npos);
  EXPECT_NE(find_table("fuse-time")->source.find("from memory"), std::string::npos);
  EXPECT_NE(find_table("vehicle-fuses")->source.find("from memory"), std::string::npos);
}

}  // namespace
}  // namespace ohmtrail::trade
