#include "cli/json/bank.hpp"

#include "cli/json/common.hpp"
#include "cli/json/csv.hpp"

namespace ohmtrail::cli {
namespace {

using diagnose::BankFinding;
using diagnose::BatteryGroup;
using diagnose::BatteryVerdict;

Value severity_value(const BankFinding& finding) {
  if (!finding.severity) return {};
  std::string word(diagnose::words(*finding.severity));
  for (char& c : word)
    if (c == ' ') c = '-';
  return word;
}

Row finding_row(const BankFinding& finding) {
  return {{"name", finding.name},
          {"severity", severity_value(finding)},
          {"text", finding.text},
          {"source", text_or_null(finding.source)},
          {"remedy", text_or_null(finding.remedy)}};
}

std::vector<Row> finding_rows(const std::vector<BankFinding>& findings) {
  std::vector<Row> rows;
  for (const BankFinding& finding : findings) rows.push_back(finding_row(finding));
  return rows;
}

Value ohms(const std::optional<units::Resistance>& resistance) {
  return resistance ? number(resistance->si()) : Value();
}

Row battery_row(const BatteryVerdict& battery) {
  return {{"id", battery.id},
          {"soc", number(battery.charge.of_one())},
          {"soc_from", battery.charge_from},
          {"emf", number(battery.emf.si())},
          {"emf_from", battery.emf_from},
          {"resistance", number(battery.resistance.si())},
          {"resistance_from", battery.resistance_from},
          {"sound_resistance", ohms(battery.sound_resistance)},
          {"lost_per_100_A", number(battery.lost_per_100_amperes.si())},
          {"verdict", std::string(word(battery.verdict))},
          {"in_words", battery.in_words}};
}

void write_battery(JsonWriter& json, const BatteryVerdict& battery) {
  json.open_object();
  for (const Field& field : battery_row(battery)) json.field(field.name, field.value);
  json.rows("findings", finding_rows(battery.findings));
  json.close();
}

void write_group(JsonWriter& json, const BatteryGroup& group) {
  json.open_object();
  json.field("kind", std::string(word(group.kind)));
  json.key("members");
  json.open_array();
  for (const auto& member : group.members) json.value(member);
  json.close();
  json.field("weakest", text_or_null(group.weakest));
  std::vector<Row> at_rest;
  for (std::size_t i = 0; i < group.at_rest.size(); ++i)
    at_rest.push_back({{"member", group.members[i]}, {"current", number(group.at_rest[i])}});
  json.rows("at_rest", at_rest);
  json.rows("findings", finding_rows(group.findings));
  json.close();
}

/// "A1+A2, B1+B2"
std::string members_in_words(const BatteryGroup& group) {
  std::string text;
  for (const auto& member : group.members) {
    if (!text.empty()) text += ", ";
    for (std::size_t i = 0; i < member.size(); ++i) text += (i > 0 ? "+" : "") + member[i];
  }
  return text;
}

void add_lines(std::vector<Row>& lines, const Row& begin, const std::vector<BankFinding>& findings) {
  if (findings.empty()) lines.push_back(begin);
  for (const BankFinding& finding : findings) {
    Row line = begin;
    line.push_back({"finding", finding_row(finding)});
    lines.push_back(std::move(line));
  }
}

}  // namespace

std::string bank_json(const netlist::System& system, const diagnose::Bank& bank) {
  JsonWriter json;
  open_result(json, "bank", system, bank.assumptions);
  json.key("batteries");
  json.open_array();
  for (const BatteryVerdict& battery : bank.batteries) write_battery(json, battery);
  json.close();
  json.key("groups");
  json.open_array();
  for (const BatteryGroup& group : bank.groups) write_group(json, group);
  json.close();
  json.close();
  return json.finish();
}

std::string bank_csv(const diagnose::Bank& bank) {
  std::vector<Row> lines;
  for (const BatteryVerdict& battery : bank.batteries)
    add_lines(lines, battery_row(battery), battery.findings);
  for (const BatteryGroup& group : bank.groups)
    add_lines(lines, {{"id", members_in_words(group)}, {"verdict", std::string(word(group.kind))}},
              group.findings);
  return csv(lines, {"id", "verdict", "soc", "soc_from", "emf", "emf_from", "resistance", "resistance_from",
                     "sound_resistance", "lost_per_100_A", "finding_name", "finding_severity", "finding_text",
                     "finding_remedy", "finding_source"});
}

}  // namespace ohmtrail::cli
