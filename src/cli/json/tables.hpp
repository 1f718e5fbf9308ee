#pragma once
#include <string>
#include <vector>

#include "ohmtrail/trade/table.hpp"

namespace ohmtrail::cli {

[[nodiscard]] std::string table_json(const trade::Table& table);
[[nodiscard]] std::string table_csv(const trade::Table& table);
/// The list of tables: name, title, source, number of rows.
[[nodiscard]] std::string tables_json(const std::vector<trade::Table>& tables);
[[nodiscard]] std::string tables_csv(const std::vector<trade::Table>& tables);

}  // namespace ohmtrail::cli
