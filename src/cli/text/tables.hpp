#pragma once
#include <vector>

#include "cli/text/sheet.hpp"
#include "ohmtrail/trade/table.hpp"

namespace ohmtrail::cli {

/// One table, its source and what is doubtful in it.
void show_table(Sheet& sheet, const trade::Table& table);
/// Names and titles.
void show_tables(Sheet& sheet, const std::vector<trade::Table>& tables);

}  // namespace ohmtrail::cli
