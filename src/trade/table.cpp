#include "ohmtrail/trade/table.hpp"

#include <algorithm>
#include <array>
#include <iterator>

#include "trade/tables/registry.hpp"

namespace ohmtrail::trade {
namespace {

using Group = std::vector<Table> (*)();

constexpr std::array groups{tables::gauge_tables,   tables::conductor_tables, tables::ampacity_tables,
                            tables::contact_tables, tables::fuse_tables,      tables::protection_tables,
                            tables::meter_tables,   tables::heat_tables,      tables::battery_tables};

}  // namespace

const std::vector<Table>& all_tables() {
  static const std::vector<Table> all = [] {
    std::vector<Table> result;
    for (const Group group : groups) {
      auto made = group();
      std::move(made.begin(), made.end(), std::back_inserter(result));
    }
    return result;
  }();
  return all;
}

const Table* find_table(std::string_view name) {
  const auto& all = all_tables();
  const auto found =
      std::find_if(all.begin(), all.end(), [name](const Table& table) { return table.name == name; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace ohmtrail::trade
