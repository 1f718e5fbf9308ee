#include <gmock/gmock.h>

#include "cli/text/printable.hpp"
#include "cli/text/tables.hpp"

namespace {

using namespace ohmtrail;
using testing::HasSubstr;
using testing::Not;

trade::Table table_with(std::vector<std::string> sources) {
  trade::Table table{"invented", "An invented table", {{"value", "V"}, {"source", ""}},
                     {},         "each row its own",  {}};
  double value = 1;
  for (auto& source : sources) table.rows.push_back({value++, std::move(source)});
  return table;
}

std::string shown(const trade::Table& table) {
  cli::Sheet sheet(false);
  cli::show_table(sheet, table);
  return sheet.text();
}

std::size_t times(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
  return count;
}

TEST(TableFootnotes, LongSourcesStandBelowOnceEach) {
  const std::string long_one = "a handbook with a rather long title, table 7",
                    other = "a second handbook, just as long, table 9";
  const auto text = shown(table_with({long_one, other, long_one}));
  EXPECT_EQ(times(text, long_one), 1U);
  EXPECT_THAT(text, HasSubstr("[1] " + long_one));
  EXPECT_THAT(text, HasSubstr("[2] " + other));
  EXPECT_EQ(times(text, "[1]"), 3U);
}

TEST(TableFootnotes, ShortSourcesStayInTheTable) {
  EXPECT_THAT(shown(table_with({"a list", "a list"})), Not(HasSubstr("[1]")));
}

TEST(TableFootnotes, AnEmptyNoteHasNoNumber) {
  const auto text = shown(table_with({"", "a handbook with a rather long title, table 7"}));
  EXPECT_THAT(text, HasSubstr("[1]"));
  EXPECT_THAT(text, Not(HasSubstr("[2]")));
}

TEST(TableFootnotes, EveryBuiltInTableOfBatteriesFitsThePage) {
  for (const auto& table : trade::all_tables()) {
    if (table.name.rfind("battery", 0) != 0) continue;
    const auto text = shown(table);
    std::size_t start = 0;
    for (std::size_t end; (end = text.find('\n', start)) != std::string::npos; start = end + 1)
      EXPECT_LE(cli::columns_of(text.substr(start, end - start)), 80U) << table.name;
  }
}

}  // namespace
