#pragma once
#include <vector>

#include "ohmtrail/trade/table.hpp"

/// The groups that make up `all_tables()`. A new group: declare it here and add it to the list in table.cpp.
namespace ohmtrail::trade::tables {

[[nodiscard]] std::vector<Table> gauge_tables();
[[nodiscard]] std::vector<Table> conductor_tables();
[[nodiscard]] std::vector<Table> ampacity_tables();
[[nodiscard]] std::vector<Table> contact_tables();
[[nodiscard]] std::vector<Table> fuse_tables();
[[nodiscard]] std::vector<Table> protection_tables();
[[nodiscard]] std::vector<Table> meter_tables();
[[nodiscard]] std::vector<Table> heat_tables();
[[nodiscard]] std::vector<Table> battery_tables();

}  // namespace ohmtrail::trade::tables
