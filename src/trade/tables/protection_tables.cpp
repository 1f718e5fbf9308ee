#include <string>

#include "trade/tables/cells.hpp"
#include "trade/tables/fuses.hpp"
#include "trade/tables/registry.hpp"
#include "trade/tables/rules.hpp"

namespace ohmtrail::trade::tables {
namespace {

Table rules_table() {
  Table table{"protection",
              "Fuses and conductors: sizes and distances",
              {{"rule", ""}, {"value", ""}, {"unit", ""}, {"condition", ""}, {"source", ""}},
              {},
              "each row its own",
              {"local codes and the vessel's own rules come first"}};
  for (const RuleRow& row : protection_rows)
    table.rows.push_back(
        {words(row.rule), row.value, words(row.unit), words(row.condition), words(row.source)});
  return table;
}

Table interrupting_table() {
  Table table{"interrupting",
              "Least current that breakers must interrupt, by the batteries' cold-cranking current",
              {{"system", "V"},
               {"cold-cranking up to", "A"},
               {"main breaker", "A"},
               {"branch breaker", "A"},
               {"source", ""}},
              {},
              "each row its own",
              {"written for lead-acid batteries: says nothing of lithium"}};
  for (const InterruptRow& row : interrupt_rows)
    table.rows.push_back({words(row.at_32_volts ? "32" : "12 and 24"), number_or_none(row.cold_cranking_to),
                          row.main, row.branch, words(row.source)});
  return table;
}

Table vehicle_table() {
  Table table{"vehicle-fuses",
              "Largest low-voltage fuse by gauge, recreational vehicles",
              {{"gauge", "AWG"}, {"largest fuse", "A"}},
              {},
              std::string(vehicle_source),
              {"18 and 16 AWG: stranded only"}};
  for (const VehicleRow& row : vehicle_rows) table.rows.push_back({gauge_cell(row.awg), row.amps});
  return table;
}

Table drop_table() {
  Table table{"drop-rules",
              "Voltage drop that rules allow",
              {{"scope", ""}, {"limit", ""}, {"unit", ""}, {"applies to", ""}, {"source", ""}},
              {},
              "each row its own",
              {"SAE J541 values come from a summary, not the standard"}};
  for (const DropRow& row : drop_rows)
    table.rows.push_back(
        {words(row.scope), row.limit, words(row.unit), words(row.applies_to), words(row.source)});
  return table;
}

}  // namespace

std::vector<Table> protection_tables() {
  return {rules_table(), interrupting_table(), vehicle_table(), drop_table()};
}

}  // namespace ohmtrail::trade::tables
