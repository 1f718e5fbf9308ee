#include <string>

#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "trade/tables/cells.hpp"
#include "trade/tables/gauges.hpp"
#include "trade/tables/registry.hpp"

namespace ohmtrail::trade::tables {
namespace {

double ohm_per_km(const Gauge& gauge, ConductorKind kind, Stranding stranding) {
  return figures(wire_resistance_at_20C(gauge, units::Length{1000}, kind, stranding).si());
}

Table awg_table() {
  Table table{"awg",
              "American wire gauge",
              {{"gauge", "AWG"},
               {"diameter", "mm"},
               {"area", "mm2"},
               {"area", "circular mils"},
               {"solid copper at 20 °C", "ohm/km"},
               {"stranded copper at 20 °C", "ohm/km"},
               {"stranded tinned copper at 20 °C", "ohm/km"}},
              {},
              "ASTM B258: d = 0.127 mm · 92^((36 − n)/39); resistance computed from 100 % IACS copper (IEC "
              "60028), lay and tin as in table conductors",
              {"No. 3, 5 and odd gauges below 4 are seldom sold"}};
  for (const Gauge& gauge : known_gauges(GaugeSystem::awg))
    table.rows.push_back({gauge_cell(gauge.number), figures(awg_diameter(gauge.number).si() * 1e3),
                          figures(gauge.area.si() * 1e6), figures(circular_mils(gauge.area)),
                          ohm_per_km(gauge, ConductorKind::bare_copper, Stranding::solid),
                          ohm_per_km(gauge, ConductorKind::bare_copper, Stranding::stranded),
                          ohm_per_km(gauge, ConductorKind::tinned_copper, Stranding::stranded)});
  return table;
}

Table sae_table() {
  Table table{"sae",
              "SAE gauge",
              {{"gauge", "SAE"},
               {"metric designation", "mm2"},
               {"least area", "circular mils"},
               {"least area", "mm2"},
               {"share of the same AWG", ""},
               {"stranded copper at 20 °C", "ohm/km"}},
              {},
              std::string(sae_source),
              {"6 SAE: 25910 circular mils is remembered elsewhere", "the standards' own text was not seen"}};
  for (const SaeRow& row : sae_rows) {
    const Gauge gauge = sae(row.number);
    table.rows.push_back({gauge_cell(row.number), row.designation, number_or_none(row.circular_mils),
                          figures(gauge.area.si() * 1e6), figures(ratio(gauge.area, awg_area(row.number)), 4),
                          ohm_per_km(gauge, ConductorKind::bare_copper, Stranding::stranded)});
  }
  return table;
}

Table metric_table() {
  Table table{"metric",
              "Square millimetre sizes",
              {{"nominal area", "mm2"},
               {"class 2 plain, greatest", "ohm/km"},
               {"class 2 coated, greatest", "ohm/km"},
               {"class 5 plain, greatest", "ohm/km"},
               {"class 5 coated, greatest", "ohm/km"},
               {"used: stranded copper at 20 °C", "ohm/km"},
               {"used: stranded tinned copper at 20 °C", "ohm/km"}},
              {},
              std::string(metric_source) + "; the last two columns computed as in table conductors",
              {"the standard's values are limits, not typical ones: a sound cable is a few per cent below"}};
  for (const MetricRow& row : metric_rows)
    table.rows.push_back(
        {row.square_millimetres, row.class2_plain, row.class2_coated, row.class5_plain, row.class5_coated,
         ohm_per_km(metric(row.square_millimetres), ConductorKind::bare_copper, Stranding::stranded),
         ohm_per_km(metric(row.square_millimetres), ConductorKind::tinned_copper, Stranding::stranded)});
  return table;
}

}  // namespace

std::vector<Table> gauge_tables() {
  return {awg_table(), sae_table(), metric_table()};
}

}  // namespace ohmtrail::trade::tables
