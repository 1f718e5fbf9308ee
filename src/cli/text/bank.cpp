#include "cli/text/bank.hpp"

#include <fmt/format.h>

#include "cli/text/notes.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using diagnose::BankFinding;
using diagnose::BatteryGroup;
using diagnose::BatteryState;
using diagnose::BatteryVerdict;
using Align = Column::Align;

Ink ink_of(BatteryState state) {
  switch (state) {
    case BatteryState::healthy:
      return Ink::good;
    case BatteryState::not_enough_checks:
      return Ink::plain;
    case BatteryState::do_not_test:
    case BatteryState::dry_plates:
    case BatteryState::weak_cell:
    case BatteryState::sulphated_or_worn:
      return Ink::bad;
    default:
      return Ink::warning;
  }
}

Ink ink_of(const BankFinding& finding) {
  if (finding.severity == diagnose::Severity::before_further_use) return Ink::bad;
  return finding.severity ? Ink::warning : Ink::plain;
}

std::string spaced(std::string_view word) {
  std::string text(word);
  for (char& c : text)
    if (c == '-') c = ' ';
  return text;
}

Table battery_table(const std::vector<BatteryVerdict>& batteries) {
  Table table({{"battery", Align::left, Narrow::cuts},
               {"verdict", Align::left},
               {"charge", Align::right},
               {"open-circuit", Align::right},
               {"inside", Align::right},
               {"sound", Align::right},
               {"per 100 A", Align::right}});
  for (const BatteryVerdict& battery : batteries)
    table.row(
        {Cell(battery.id, Ink::strong), Cell(spaced(word(battery.verdict)), ink_of(battery.verdict)),
         fmt::format("{:.0f} %", battery.charge.percent()), fmt::format("{:.2f} V", battery.emf.si()),
         fmt::format("{:.2f} mΩ", battery.resistance.si() * 1000),
         battery.sound_resistance ? fmt::format("{:.2f} mΩ", battery.sound_resistance->si() * 1000) : "–",
         fmt::format("{:.2f} V", battery.lost_per_100_amperes.si())});
  return table;
}

void show_findings(Sheet& sheet, const std::vector<BankFinding>& findings) {
  for (const BankFinding& finding : findings) {
    sheet.item("  - ", finding.text, ink_of(finding));
    if (!finding.remedy.empty()) sheet.item("    ", finding.remedy);
    sheet.item("    ", fmt::format("[{}: {}]", finding.name, finding.source), Ink::faint);
  }
}

void show_battery(Sheet& sheet, const BatteryVerdict& battery) {
  sheet.line();
  sheet.item(battery.id + ": ", battery.in_words, ink_of(battery.verdict));
  sheet.item("    ",
             fmt::format("charge: {}; open-circuit voltage: {}; resistance over seconds: {}",
                         battery.charge_from, battery.emf_from, battery.resistance_from),
             Ink::faint);
  show_findings(sheet, battery.findings);
}

std::string heading(const BatteryGroup& group) {
  std::vector<std::string> members;
  for (const auto& member : group.members) members.push_back(fmt::format("{}", fmt::join(member, "+")));
  return group.kind == BatteryGroup::Kind::series
             ? fmt::format("In series: {}", fmt::join(members, ", "))
             : fmt::format("Side by side: {}", fmt::join(members, " and "));
}

void show_group(Sheet& sheet, const BatteryGroup& group) {
  sheet.line();
  sheet.paragraph(heading(group), Ink::strong);
  if (group.findings.empty()) sheet.item("  - ", "nothing found against how they work together", Ink::good);
  show_findings(sheet, group.findings);
}

}  // namespace

void show_bank(Sheet& sheet, const netlist::System& system, const diagnose::Bank& bank) {
  sheet.line(system.info.name, Ink::strong);
  if (bank.batteries.empty()) {
    sheet.paragraph("There is no battery in this file.");
    return;
  }
  sheet.line();
  sheet.table(battery_table(bank.batteries));
  for (const BatteryVerdict& battery : bank.batteries) show_battery(sheet, battery);
  for (const BatteryGroup& group : bank.groups) show_group(sheet, group);
  show_assumptions(sheet, bank.assumptions);
  sheet.line();
  sheet.line("Before you work on a battery", Ink::strong);
  for (const std::string_view caution : diagnose::battery_cautions()) sheet.item("  - ", caution);
}

}  // namespace ohmtrail::cli
