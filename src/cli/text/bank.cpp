#include "cli/text/bank.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <utility>

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

/// Advice on what to measure next, which is gathered at the end.
bool is_next_test(const BankFinding& finding) {
  return finding.name.starts_with("next-");
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

/// What only has to be known stands without its source: the list at the end has it.
void show_findings(Sheet& sheet, const std::vector<BankFinding>& findings) {
  for (const BankFinding& finding : findings) {
    if (is_next_test(finding)) continue;
    sheet.item("  - ", finding.text, ink_of(finding));
    if (!finding.remedy.empty()) sheet.item("    ", finding.remedy);
    if (finding.severity)
      sheet.item("    ", fmt::format("[{}: {}]", finding.name, finding.source), Ink::faint);
  }
}

std::string basis(const BatteryVerdict& battery) {
  const auto resistance = fmt::format("resistance over seconds: {}", battery.resistance_from);
  if (battery.charge_from == battery.emf_from)
    return fmt::format("charge and open-circuit voltage: {}; {}", battery.emf_from, resistance);
  return fmt::format("charge: {}; open-circuit voltage: {}; {}", battery.charge_from, battery.emf_from,
                     resistance);
}

void show_battery(Sheet& sheet, const BatteryVerdict& battery) {
  sheet.line();
  sheet.item(battery.id + ": ", battery.in_words, ink_of(battery.verdict));
  sheet.item("    ", basis(battery), Ink::faint);
  show_findings(sheet, battery.findings);
}

/// Those with something against them first; file order among like ones.
std::vector<BatteryVerdict> worst_first(std::vector<BatteryVerdict> batteries) {
  const auto rank = [](const BatteryVerdict& battery) {
    const Ink ink = ink_of(battery.verdict);
    return ink == Ink::bad ? 0 : ink == Ink::warning ? 1 : 2;
  };
  std::stable_sort(batteries.begin(), batteries.end(),
                   [&](const BatteryVerdict& a, const BatteryVerdict& b) { return rank(a) < rank(b); });
  return batteries;
}

/// What is said alike of several, in order of first appearance: the text, and of whom.
using SaidOf = std::vector<std::pair<std::string, std::string>>;

void say(SaidOf& said, const std::string& text, const std::string& who) {
  const auto found =
      std::find_if(said.begin(), said.end(), [&](const auto& one) { return one.first == text; });
  if (found == said.end())
    said.emplace_back(text, who);
  else
    found->second += ", " + who;
}

void show_next_tests(Sheet& sheet, const std::vector<BatteryVerdict>& batteries) {
  SaidOf tests;
  for (const BatteryVerdict& battery : batteries)
    for (const BankFinding& finding : battery.findings)
      if (is_next_test(finding)) say(tests, fmt::format("{}. {}", finding.text, finding.remedy), battery.id);
  if (tests.empty()) return;
  sheet.line();
  sheet.line("Test next", Ink::strong);
  for (const auto& [test, ids] : tests) sheet.item("  - ", fmt::format("{}: {}", ids, test));
}

/// Every source of what stands without one, once, with the names of what rests on it.
void show_sources(Sheet& sheet, const std::vector<BatteryVerdict>& batteries) {
  SaidOf sources;
  std::set<std::string> told;
  for (const BatteryVerdict& battery : batteries)
    for (const BankFinding& finding : battery.findings)
      if (!finding.severity && told.insert(finding.name).second)
        say(sources, finding.source, spaced(finding.name));
  if (sources.empty()) return;
  sheet.line();
  sheet.line("What this rests on");
  for (const auto& [source, names] : sources)
    sheet.item("  - ", fmt::format("{}: {}", names, source), Ink::faint);
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
  for (const BatteryVerdict& battery : worst_first(bank.batteries)) show_battery(sheet, battery);
  for (const BatteryGroup& group : bank.groups) show_group(sheet, group);
  show_next_tests(sheet, bank.batteries);
  show_sources(sheet, bank.batteries);
  show_assumptions(sheet, bank.assumptions);
  sheet.line();
  sheet.line("Before you work on a battery", Ink::strong);
  for (const std::string_view caution : diagnose::battery_cautions()) sheet.item("  - ", caution);
}

}  // namespace ohmtrail::cli
