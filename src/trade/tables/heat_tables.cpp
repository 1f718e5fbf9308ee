#include <string>

#include "trade/tables/cells.hpp"
#include "trade/tables/heat.hpp"
#include "trade/tables/registry.hpp"

namespace ohmtrail::trade::tables {
namespace {

Table limits_table() {
  Table table{"temperature-limits",
              "How warm terminals and joints may become, and how thermography grades a rise",
              {{"kind", ""},
               {"item", ""},
               {"rise", "K"},
               {"temperature", "°C"},
               {"ambient", "°C"},
               {"note", ""},
               {"how known", ""},
               {"source", ""}},
              {},
              "each row its own",
              {"IEC 60694 is a high-voltage switchgear standard; the contact metals are the same"}};
  for (const TemperatureRow& row : temperature_rows)
    table.rows.push_back({words(row.kind), words(row.item), words(row.rise), words(row.temperature),
                          words(row.ambient), words(row.note), words(row.status), words(row.source)});
  return table;
}

Table emissivity_table() {
  Table table{
      "emissivity",
      "Emissivity of surfaces: what an infrared meter must be set to",
      {{"surface", ""}, {"at", "°C"}, {"spectrum", ""}, {"least", ""}, {"greatest", ""}, {"source", ""}},
      {},
      "each row its own",
      {"bright metal reads far too cold: put tape or paint on it first"}};
  for (const EmissivityRow& row : emissivity_rows)
    table.rows.push_back({words(row.surface), words(row.temperature), words(row.spectrum), row.least,
                          row.greatest, words(row.source)});
  return table;
}

}  // namespace

std::vector<Table> heat_tables() {
  return {limits_table(), emissivity_table()};
}

}  // namespace ohmtrail::trade::tables
