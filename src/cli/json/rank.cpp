#include "cli/json/rank.hpp"

#include "cli/json/common.hpp"
#include "cli/json/csv.hpp"
#include "ohmtrail/diagnose/cause.hpp"

namespace ohmtrail::cli {
namespace {

Value recoverable_value(const diagnose::HotSpot& spot) {
  if (!spot.recoverable) return {};
  return Row{{"load", spot.recoverable->load}, {"volts", number(spot.recoverable->volts)}};
}

Value waste_value(const diagnose::HotSpot& spot) {
  if (!spot.waste) return {};
  return Row{{"watt_hours", number(spot.waste->watt_hours)},
             {"ampere_hours", number(spot.waste->ampere_hours)}};
}

Value hottest_value(const diagnose::HotSpot& spot) {
  if (!spot.hottest) return {};
  return Row{{"case", spot.hottest->in_case}, {"temperature", number(spot.hottest->celsius)}};
}

Row hot_spot_row(const diagnose::HotSpot& spot) {
  return {{"rank", std::int64_t{spot.rank}},
          {"id", spot.id},
          {"role", role_word(spot.role)},
          {"cause", std::string(diagnose::word(spot.cause))},
          {"case", spot.in_case},
          {"current", number(spot.current)},
          {"drop", number(spot.drop)},
          {"heat", number(spot.heat)},
          {"resistance", number(spot.resistance)},
          {"sound_resistance", number(spot.sound_resistance)},
          {"excess", number(spot.excess)},
          {"recoverable", recoverable_value(spot)},
          {"temperature", number(spot.temperature)},
          {"likelihood", number(spot.likelihood)},
          {"fix", spot.fix},
          {"better_gauge", text_or_null(spot.better_gauge)},
          {"waste_per_day", waste_value(spot)},
          {"heat_warning", spot.heat_warning ? Value(*spot.heat_warning) : Value()},
          {"hottest", hottest_value(spot)},
          {"conductor_likelihood", spot.unparted ? number(spot.unparted->probability) : Value()}};
}

void add_parts(Row& row, const diagnose::Parts& parts) {
  row.push_back({"battery", number(parts.battery)});
  row.push_back({"wires", number(parts.wires)});
  row.push_back({"terminations", number(parts.terminations)});
  row.push_back({"joints", number(parts.joints)});
  row.push_back({"switchgear", number(parts.switchgear)});
  row.push_back({"isolators", number(parts.isolators)});
}

Row split_row(const diagnose::SagSplit& split) {
  Row row{{"case", split.in_case}, {"load", split.load}, {"sag", number(split.sag)}};
  add_parts(row, split.parts);
  return row;
}

Row swing_row(const diagnose::Swing& swing) {
  Row row{{"load", swing.load},
          {"from_case", swing.from_case},
          {"to_case", swing.to_case},
          {"before", number(swing.before)},
          {"after", number(swing.after)},
          {"change", number(swing.change)},
          {"change_percent", number(swing.fraction * 100)},
          {"limit_percent", number(swing.limit_fraction * 100)},
          {"within", swing.within},
          {"open_circuit", number(swing.open_circuit)}};
  add_parts(row, swing.parts);
  return row;
}

void write_swing(JsonWriter& json, const diagnose::Swing& swing) {
  json.open_object();
  for (const Field& field : swing_row(swing)) json.field(field.name, field.value);
  std::vector<Row> elements;
  for (const diagnose::ElementSwing& change : swing.elements)
    elements.push_back(
        {{"id", change.element}, {"role", role_word(change.role)}, {"change", number(change.change)}});
  json.rows("elements", elements);
  json.close();
}

Row charge_row(const diagnose::ChargeSplit& split) {
  Row row{{"case", split.in_case},
          {"charger", split.charger},
          {"batteries", split.batteries},
          {"current", number(split.current)},
          {"charger_volts", number(split.charger_volts)},
          {"battery_volts", number(split.battery_volts)},
          {"lost", number(split.lost)},
          {"lost_percent", number(split.fraction * 100)},
          {"limit_percent", number(diagnose::most_charging_drop * 100)},
          {"within", split.within},
          {"limit", number(split.limit)},
          {"set_point", number(split.set_point)},
          {"reaches", number(split.reaches)},
          {"full", split.full}};
  add_parts(row, split.parts);
  return row;
}

void write_charge(JsonWriter& json, const diagnose::ChargeSplit& split) {
  json.open_object();
  for (const Field& field : charge_row(split)) json.field(field.name, field.value);
  std::vector<Row> elements;
  for (const diagnose::ChargeLoss& loss : split.elements)
    elements.push_back({{"id", loss.element},
                        {"role", role_word(loss.role)},
                        {"lost", number(loss.lost)},
                        {"comes_back", number(loss.comes_back)}});
  json.rows("elements", elements);
  json.close();
}

std::string swings_csv(const std::vector<diagnose::Swing>& swings) {
  std::vector<Row> rows;
  for (const diagnose::Swing& swing : swings) rows.push_back(swing_row(swing));
  return csv(rows, {"load", "from_case", "to_case", "before", "after", "change", "change_percent",
                    "limit_percent", "within", "open_circuit", "battery", "wires", "terminations", "joints",
                    "switchgear", "isolators"});
}

}  // namespace

std::string rank_json(const netlist::System& system, const Ranking& ranking) {
  JsonWriter json;
  open_result(json, "rank", system, ranking.assumptions);
  std::vector<Row> spots, splits;
  for (const diagnose::HotSpot& spot : ranking.hot_spots) spots.push_back(hot_spot_row(spot));
  for (const diagnose::SagSplit& split : ranking.split) splits.push_back(split_row(split));
  json.rows("hot_spots", spots);
  json.rows("split", splits);
  json.key("charging");
  json.open_array();
  for (const diagnose::ChargeSplit& split : ranking.charging) write_charge(json, split);
  json.close();
  if (ranking.swings) {
    json.key("swings");
    json.open_array();
    for (const diagnose::Swing& swing : *ranking.swings) write_swing(json, swing);
    json.close();
  }
  json.close();
  return json.finish();
}

std::string rank_csv(const Ranking& ranking) {
  if (ranking.swings) return swings_csv(*ranking.swings);
  std::vector<Row> rows;
  for (const diagnose::HotSpot& spot : ranking.hot_spots) rows.push_back(hot_spot_row(spot));
  return csv(rows, {"rank",
                    "id",
                    "role",
                    "cause",
                    "case",
                    "current",
                    "drop",
                    "heat",
                    "resistance",
                    "sound_resistance",
                    "excess",
                    "recoverable_load",
                    "recoverable_volts",
                    "temperature",
                    "likelihood",
                    "fix",
                    "better_gauge",
                    "waste_per_day_watt_hours",
                    "waste_per_day_ampere_hours",
                    "heat_warning",
                    "conductor_likelihood"});
}

}  // namespace ohmtrail::cli
