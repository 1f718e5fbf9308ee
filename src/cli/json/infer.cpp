#include "cli/json/infer.hpp"

#include <fmt/core.h>

#include "cli/json/common.hpp"
#include "cli/json/csv.hpp"

namespace ohmtrail::cli {
namespace {

using namespace diagnose;

Row element_row(const InferredElement& element, const network::Network& network) {
  const auto index = network.element(element.id);
  const std::string role = index ? role_word(network.elements[static_cast<std::size_t>(*index)].role) : "";
  return {{"id", element.id},
          {"role", text_or_null(role)},
          {"resistance", number(element.resistance)},
          {"low", number(element.low)},
          {"high", number(element.high)},
          {"sound_resistance", number(element.sound_resistance)},
          {"fault_probability", number(element.fault_probability)},
          {"informed", element.informed}};
}

Row battery_row(const InferredBattery& battery) {
  return {{"id", battery.id},
          {"emf", number(battery.emf)},
          {"resistance", number(battery.resistance)},
          {"low", number(battery.low)},
          {"high", number(battery.high)},
          {"fault_probability", number(battery.fault_probability)},
          {"emf_low", number(battery.emf_low)},
          {"emf_high", number(battery.emf_high)},
          {"cell_missing_probability", number(battery.cell_missing_probability)},
          {"informed", battery.informed}};
}

Row load_row(const InferredLoad& load) {
  return {{"id", load.id},
          {"case", load.in_case},
          {"share", number(load.share)},
          {"low", number(load.low)},
          {"high", number(load.high)}};
}

Row reading_row(const InferredReading& reading) {
  return {{"index", static_cast<std::int64_t>(reading.index)},
          {"predicted", number(reading.predicted)},
          {"measured", number(reading.measured)},
          {"sigma", number(reading.sigma)},
          {"residual", number(reading.residual)},
          {"suspect", reading.suspect},
          {"normalised", number(reading.normalised)},
          {"redundancy", number(reading.redundancy)},
          {"critical", reading.critical},
          {"wrong_probability", number(reading.wrong_probability)},
          {"would_be", number(reading.would_be)},
          {"slip", text_or_null(slip_word(reading.slip))},
          {"slip_case", text_or_null(reading.slip_case)}};
}

Row group_row(const UnresolvedGroup& group) {
  std::vector<std::string> separate;
  for (const auto& [red, black] : group.separate_at) {
    separate.push_back(fmt::format("{} – {}", red, black));
  }
  return {{"ids", group.ids},
          {"sum", number(group.sum)},
          {"low", number(group.low)},
          {"high", number(group.high)},
          {"fault_probability", number(group.fault_probability)},
          {"separate", separate}};
}

Row conductor_row(const InferredConductor& conductor) {
  return {{"id", conductor.id},
          {"parts", conductor.parts},
          {"resistance", number(conductor.resistance)},
          {"low", number(conductor.low)},
          {"high", number(conductor.high)},
          {"sound_resistance", number(conductor.sound_resistance)},
          {"fault_probability", number(conductor.fault_probability)},
          {"informed", conductor.informed}};
}

Row explanation_row(const Explanation& explanation) {
  std::vector<std::string> wrong;
  for (const std::size_t index : explanation.wrong) {
    wrong.push_back(std::to_string(index));
  }
  return {{"faulty", explanation.faulty},
          {"wrong_readings", wrong},
          {"probability", number(explanation.probability)}};
}

template <class Item, class ToRow>
std::vector<Row> rows_of(const std::vector<Item>& items, ToRow to_row) {
  std::vector<Row> rows;
  for (const Item& item : items) {
    rows.push_back(to_row(item));
  }
  return rows;
}

void write_unresolved(JsonWriter& json, const InferResult& result) {
  json.key("unresolved");
  json.open_array();
  for (const UnresolvedGroup& group : result.unresolved) {
    json.value(group.ids);
  }
  json.close();
  json.rows("unresolved_sums", rows_of(result.unresolved, group_row));
}

void write_fit(JsonWriter& json, const InferResult& result) {
  json.field("fit", Row{{"chi_square", number(result.fit.chi_square)},
                        {"degrees_of_freedom", static_cast<std::int64_t>(result.fit.degrees_of_freedom)},
                        {"p_value", number(result.fit.p_value)}});
  json.field("left_out", number(result.left_out));
}

std::vector<network::Assumption> assumptions_of(const InferResult& result, const network::Network& network) {
  std::vector<network::Assumption> all = network.assumptions;
  all.insert(all.end(), result.assumptions.begin(), result.assumptions.end());
  return all;
}

Row change_row(const ElementChange& change) {
  const char* verdict = change.verdict == Change::better  ? "better"
                        : change.verdict == Change::worse ? "worse"
                                                          : "no-change";
  return {{"id", change.id},
          {"before", number(change.before)},
          {"after", number(change.after)},
          {"change", number(change.change)},
          {"verdict", std::string(verdict)}};
}

Row load_change_row(const LoadChange& change) {
  return {{"id", change.id},
          {"case", change.in_case},
          {"volts_before", number(change.volts_before)},
          {"volts_after", number(change.volts_after)}};
}

}  // namespace

std::string slip_word(Slip slip) {
  switch (slip) {
    case Slip::swapped_probes:
      return "swapped-probes";
    case Slip::wrong_unit:
      return "wrong-unit";
    case Slip::load_off:
      return "load-off";
    case Slip::wrong_case:
      return "wrong-case";
    case Slip::none:
      break;
  }
  return "";
}

std::string infer_json(const netlist::System& system, const InferResult& result,
                       const network::Network& network) {
  JsonWriter json;
  open_result(json, "infer", system, assumptions_of(result, network));
  json.rows("elements", rows_of(result.elements, [&](const auto& e) { return element_row(e, network); }));
  json.rows("batteries", rows_of(result.batteries, battery_row));
  json.rows("readings", rows_of(result.readings, reading_row));
  write_unresolved(json, result);
  json.field("suspects", result.suspects);
  write_fit(json, result);
  json.rows("conductors", rows_of(result.conductors, conductor_row));
  json.rows("loads", rows_of(result.loads, load_row));
  json.rows("explanations", rows_of(result.explanations, explanation_row));
  json.close();
  return json.finish();
}

std::string infer_csv(const InferResult& result, const network::Network& network) {
  return csv(
      rows_of(result.elements, [&](const auto& e) { return element_row(e, network); }),
      {"id", "role", "resistance", "low", "high", "sound_resistance", "fault_probability", "informed"});
}

std::string compare_json(const netlist::System& system, const Comparison& comparison,
                         const network::Network& network) {
  JsonWriter json;
  open_result(json, "compare", system, network.assumptions);
  json.rows("elements", rows_of(comparison.elements, change_row));
  json.rows("loads", rows_of(comparison.loads, load_change_row));
  json.field("cured", comparison.cured);
  json.field("left", comparison.left);
  json.field("new", comparison.fresh);
  json.field("gone", comparison.gone);
  json.field("added", comparison.added);
  json.rows("conductors", rows_of(comparison.conductors, change_row));
  json.close();
  return json.finish();
}

std::string compare_csv(const Comparison& comparison) {
  return csv(rows_of(comparison.elements, change_row), {"id", "before", "after", "change", "verdict"});
}

}  // namespace ohmtrail::cli
