#include <span>
#include <string>

#include "trade/tables/cells.hpp"
#include "trade/tables/meters.hpp"
#include "trade/tables/registry.hpp"

namespace ohmtrail::trade::tables {
namespace {

void add_ranges(Table& table, std::span<const RangeRow> ranges) {
  for (const RangeRow& row : ranges)
    table.rows.push_back({words(row.quantity), row.up_to, row.percent, row.counts, row.last_digit});
}

Table built_in_table() {
  Table table{"meter-built-in",
              "The meter that is assumed where a reading names none: ±(percent + counts × last digit)",
              {{"quantity", ""},
               {"range up to", "V, A, ohm, °C"},
               {"of reading", "%"},
               {"counts", ""},
               {"last digit", "V, A, ohm, °C"}},
              {},
              std::string(meter_source),
              {"a meter whose accuracy is known should be named in the netlist"}};
  add_ranges(table, volt_ranges);
  add_ranges(table, amp_ranges);
  add_ranges(table, ohm_ranges);
  const double turn = infrared_kelvin / infrared_percent * 100;
  table.rows.push_back(
      {words("temperature, infrared"), turn, 0.0, infrared_kelvin / infrared_digit, infrared_digit});
  table.rows.push_back(
      {words("temperature, infrared"), words("above"), infrared_percent, 0.0, infrared_digit});
  return table;
}

Table class_table() {
  Table table{"meters",
              "What meters of each class can be trusted with",
              {{"instrument", ""}, {"range", ""}, {"accuracy", ""}, {"resolution", ""}, {"note", ""}},
              {},
              std::string(meter_source),
              {}};
  for (const ClassRow& row : class_rows)
    table.rows.push_back({words(row.instrument), words(row.range), words(row.accuracy), words(row.resolution),
                          words(row.note)});
  return table;
}

}  // namespace

std::vector<Table> meter_tables() {
  return {built_in_table(), class_table()};
}

}  // namespace ohmtrail::trade::tables
