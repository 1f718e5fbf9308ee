#include <string>

#include "trade/tables/cells.hpp"
#include "trade/tables/conductors.hpp"
#include "trade/tables/registry.hpp"

namespace ohmtrail::trade::tables {
namespace {

std::vector<Cell> metal_row(std::string_view name, const Metal& metal) {
  return {words(name),        figures(metal.resistivity.si() * 1e6), metal.temperature_coefficient,
          metal.density.si(), metal.thermal_conductivity.si(),       metal.specific_heat.si(),
          words(metal.source)};
}

Table metals_table() {
  return {"conductors",
          "Conductor metals",
          {{"metal", ""},
           {"resistivity at 20 °C", "ohm mm2/m"},
           {"temperature coefficient at 20 °C", "1/K"},
           {"density", "kg/m3"},
           {"thermal conductivity", "W/(m K)"},
           {"specific heat", "J/(kg K)"},
           {"source", ""}},
          {metal_row("copper", copper), metal_row("aluminium", aluminium),
           metal_row("copper-clad aluminium", copper_clad_aluminium)},
          "each row its own; R = resistivity · lay · tin · length / area · (1 + coefficient · (T − 20 °C))",
          {"aluminium: coefficients 0.00403 and 0.00387 are both in use"}};
}

Table factors_table() {
  Table table{"conductor-factors",
              "Lay and tin: what stranding and plating add to the resistance",
              {{"factor", ""}, {"value", ""}, {"source", ""}},
              {{words("lay, any strand"), lay, words(lay_source)}},
              "each row its own",
              {"tin: the strand of AWG and SAE sizes is taken as class B (7 up to 2 AWG, 19 above); finer "
               "strands may carry up to 7 %",
               "ASTM B33 gives greatest values: sound wire may be lower"}};
  for (const TinRow& row : tin_rows)
    table.rows.push_back({words("tin, AWG and SAE, strand of " +
                                std::to_string(row.diameter_from).substr(0, 4) + " mm and more"),
                          figures(row.resistivity / (copper.resistivity.si() * 1e6), 5), words(tin_source)});
  table.rows.push_back(
      {words("tin, mm2 sizes"), Cell{},
       words("IEC 60228 class 5: metal-coated over plain of the same size, 1.018 to 1.030")});
  return table;
}

}  // namespace

std::vector<Table> conductor_tables() {
  return {metals_table(), factors_table()};
}

}  // namespace ohmtrail::trade::tables
