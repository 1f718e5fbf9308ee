#include "trade/tables/battery_capacities.hpp"
#include "trade/tables/battery_gravity.hpp"
#include "trade/tables/battery_lithium.hpp"
#include "trade/tables/battery_ratings.hpp"
#include "trade/tables/battery_resistances.hpp"
#include "trade/tables/battery_rest.hpp"
#include "trade/tables/battery_tests.hpp"
#include "trade/tables/load_behaviours.hpp"
#include "trade/tables/registry.hpp"

namespace ohmtrail::trade::tables {
namespace {

constexpr const char* own = "each row its own";

Table listed(std::string name, std::string title, std::vector<Column> columns,
             std::vector<std::string> doubts) {
  return {std::move(name), std::move(title), std::move(columns), {}, own, std::move(doubts)};
}

Table gravity_table() {
  auto table =
      listed("battery-gravity", "Specific gravity and rested volts against charge, with the freezing point",
             {{"set", ""},
              {"chemistry", ""},
              {"charge", "%"},
              {"gravity at 26.7 °C", ""},
              {"cell", "V"},
              {"12 V", "V"},
              {"freezes", "°C"},
              {"note", ""}},
             {"the sets differ by up to 0.15 V at low charge; the set 1.265 is computed with",
              "set 1.280 traction: its 25 % row looks damaged",
              "set off-grid: its 0 % row is a loaded voltage, not a rested one"});
  add_listed(table, gravity_rows);
  return table;
}

Table gravity_volts_table() {
  auto table =
      listed("battery-gravity-volts", "What rested volts and specific gravity have to do with each other",
             {{"relation", ""}, {"quantity", ""}, {"value", ""}, {"charge", "%"}, {"note", ""}},
             {"k is not constant: 0.843 V when full, 0.862 V when empty",
              "a colder battery reads lower; corrections of six times the hydrometer's are wrong"});
  add_listed(table, gravity_volts_rows);
  return table;
}

Table hydrometer_table() {
  auto table = listed("battery-hydrometer", "What to add to a hydrometer's reading for its temperature",
                      {{"kind", ""},
                       {"acid", "°C"},
                       {"acid", "°F"},
                       {"add", ""},
                       {"reads", ""},
                       {"corrected", ""},
                       {"note", ""}},
                      {"two reference temperatures are in use, 26.7 and 20 °C: look at the float"});
  add_listed(table, hydrometer_rows);
  return table;
}

Table rest_temperature_table() {
  auto table =
      listed("battery-rest-temperature", "Gravity as read and rested volts against temperature and charge",
             {{"battery", "°C"},
              {"battery", "°F"},
              {"charge", "%"},
              {"gravity as read", ""},
              {"flooded 12 V", "V"},
              {"gel 12 V", "V"}},
             {"second-hand; near 25 °C it agrees with 0.2 mV/K a cell"});
  add_listed(table, rest_temperature_listed);
  return table;
}

Table sealed_rest_table() {
  auto table = listed("battery-rest-sealed", "Rested volts of AGM, gel and flooded batteries against charge",
                      {{"chemistry", ""}, {"charge", "%"}, {"cell", "V"}, {"12 V", "V"}, {"note", ""}},
                      {"AGM tables differ by 0.4 V when full; the one with 13.2 V holds surface charge"});
  add_listed(table, sealed_rest_rows);
  return table;
}

Table lithium_rest_table() {
  auto table =
      listed("battery-rest-lithium", "Volts of lithium iron phosphate against charge",
             {{"set", ""}, {"charge", "%"}, {"cell", "V"}, {"four cells", "V"}, {"note", ""}},
             {"the middle of the curve spans about 40 mV a cell for 39 % of charge: volts tell little",
              "the set C/32 is computed with"});
  add_listed(table, lithium_rest_rows);
  return table;
}

Table load_test_table() {
  auto table =
      listed("battery-load-test", "Least volts at the end of a load test against the battery's temperature",
             {{"set", ""},
              {"chemistry", ""},
              {"battery", "°C"},
              {"12 V", "V"},
              {"6 V", "V"},
              {"load", ""},
              {"hold", "s"},
              {"note", ""}},
             {"the 6 V column of Table 5 is not half its 12 V column below 10 °C",
              "one car table has 8.0 V at −18 °C against 8.5 V elsewhere; it is not used"});
  add_listed(table, load_test_listed);
  return table;
}

Table limits_table() {
  auto table = listed("battery-limits", "Limits by which a battery's checks are judged",
                      {{"limit", ""}, {"unit", ""}, {"value", ""}, {"meaning", ""}},
                      {"limits of spread between cells run from 0.010 to 0.050: choose by purpose"});
  add_listed(table, battery_limit_rows);
  return table;
}

Table ratings_table() {
  auto table = listed("battery-ratings", "What the ratings on a battery's label mean",
                      {{"rating", ""},
                       {"battery", "°C"},
                       {"for", "s"},
                       {"cell", "V"},
                       {"6 V", "V"},
                       {"12 V", "V"},
                       {"note", ""}},
                      {"editions of IEC 60095-1 are quoted with different end voltages"});
  add_listed(table, rating_rows);
  return table;
}

Table conversions_table() {
  auto table = listed("battery-conversions", "From one rating to another, and recharging",
                      {{"quantity", ""}, {"value", ""}, {"range", ""}, {"note", ""}}, {"ratios are rough"});
  add_listed(table, conversion_rows);
  return table;
}

Table capacity_table() {
  auto table =
      listed("battery-capacity", "Capacity at other currents (Peukert) and temperatures",
             {{"quantity", ""},
              {"chemistry", ""},
              {"condition", ""},
              {"low", ""},
              {"value", ""},
              {"high", ""},
              {"note", ""}},
             {"a public example of Peukert's law does not follow from its own exponent and is flagged"});
  add_listed(table, capacity_rows);
  return table;
}

Table resistance_table() {
  auto table =
      listed("battery-resistance", "Internal resistance of sound batteries, and limits in terms of CCA",
             {{"battery", ""},
              {"chemistry", ""},
              {"low", "mΩ"},
              {"typical", "mΩ"},
              {"high or limit", "mΩ"},
              {"formula", ""},
              {"note", ""}},
             {"no public table was found: common practice, low confidence",
              "1 kHz and seconds' values differ 1.5 to 3 times"});
  add_listed(table, resistance_rows);
  return table;
}

Table resistance_factor_table() {
  auto table =
      listed("battery-resistance-factors", "How internal resistance grows in the cold and with discharge",
             {{"chemistry", ""}, {"by", ""}, {"at", "°C, %"}, {"times", ""}, {"note", ""}},
             {"the two derived series differ (1.3 and 2.5 at −18 °C) because allowed sag is not resistance"});
  add_listed(table, resistance_factor_rows);
  return table;
}

Table load_behaviour_table() {
  auto table = listed("load-behaviour", "How real loads draw: inrush, stall, working current, cut-outs",
                      {{"load", ""}, {"quantity", ""}, {"value", ""}, {"unit", ""}, {"note", ""}},
                      {"windlass, thruster and winch rows are weak: go by the maker's plate"});
  add_listed(table, load_behaviour_rows);
  return table;
}

}  // namespace

std::vector<Table> battery_tables() {
  return {gravity_table(),           gravity_volts_table(), hydrometer_table(), rest_temperature_table(),
          sealed_rest_table(),       lithium_rest_table(),  load_test_table(),  limits_table(),
          ratings_table(),           conversions_table(),   capacity_table(),   resistance_table(),
          resistance_factor_table(), load_behaviour_table()};
}

}  // namespace ohmtrail::trade::tables
