#pragma once
#include <string>
#include <string_view>
#include <variant>
#include <vector>

/// The built-in tables as a person may ask for them, with their sources.
namespace ohmtrail::trade {

/// Empty, a number in the column's unit, or words.
using Cell = std::variant<std::monostate, double, std::string>;

struct Column {
  std::string name;
  std::string unit;  ///< empty: words or a plain number
};

struct Table {
  std::string name;  ///< what `tables NAME` takes
  std::string title;
  std::vector<Column> columns;
  std::vector<std::vector<Cell>> rows;  ///< each as long as `columns`
  std::string source;                   ///< of the whole table; rows of another source say so in a column
  std::vector<std::string> doubts;
};

/// Every table, in an order fit for printing.
[[nodiscard]] const std::vector<Table>& all_tables();

/// The table of that name, or nullptr.
[[nodiscard]] const Table* find_table(std::string_view name);

}  // namespace ohmtrail::trade
