#include "cli/text/check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace ohmtrail::cli {
namespace {

using diagnose::Finding;
using diagnose::Severity;

struct Heading {
  Severity severity;
  std::string_view text;
  Ink ink;
};

constexpr std::array headings{Heading{Severity::before_further_use, "Before further use", Ink::bad},
                              Heading{Severity::soon, "Soon", Ink::warning},
                              Heading{Severity::improvement, "Would be better", Ink::plain}};

std::string count(std::size_t number, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", number, number == 1 ? one : many);
}

void show_contents(Sheet& sheet, const netlist::System& s) {
  sheet.paragraph(
      fmt::format("The file is right: {}, {}, {}, {}, {}, {}.",
                  count(s.batteries.size(), "battery", "batteries"), count(s.runs.size(), "run", "runs"),
                  count(s.joints.size(), "joint", "joints"),
                  count(s.switches.size() + s.fuses.size(), "switch or fuse", "switches and fuses"),
                  count(s.loads.size(), "load", "loads"), count(s.cases.size(), "case", "cases")),
      Ink::good);
}

/// Findings of which the same is said, told once with all they are about.
struct Told {
  const Finding* finding;
  std::string subjects;
};

bool same(const Finding& a, const Finding& b) {
  return a.rule == b.rule && a.in_case == b.in_case && a.text == b.text && a.remedy == b.remedy &&
         a.source == b.source;
}

std::vector<Told> told_once(const std::vector<Finding>& findings, Severity severity) {
  std::vector<Told> all;
  for (const Finding& finding : findings) {
    if (finding.severity != severity) continue;
    const auto like =
        std::find_if(all.begin(), all.end(), [&](const Told& told) { return same(*told.finding, finding); });
    if (like == all.end())
      all.push_back({&finding, finding.subject});
    else
      like->subjects += ", " + finding.subject;
  }
  return all;
}

void show_finding(Sheet& sheet, const Told& told) {
  const Finding& finding = *told.finding;
  const std::string in_case = finding.in_case.empty() ? "" : fmt::format(" (case \"{}\")", finding.in_case);
  sheet.item("  - ", fmt::format("{}{}: {}", told.subjects, in_case, finding.text));
  sheet.item("    ", fmt::format("{} [{}: {}]", finding.remedy, finding.rule, finding.source), Ink::faint);
}

}  // namespace

void show_findings(Sheet& sheet, const std::vector<Finding>& findings) {
  for (const Heading& heading : headings) {
    const auto all = told_once(findings, heading.severity);
    if (all.empty()) continue;
    sheet.line();
    sheet.line(heading.text, heading.ink);
    for (const Told& told : all) show_finding(sheet, told);
  }
}

void show_check(Sheet& sheet, const netlist::System& system, plan::RuleSet rules,
                const std::vector<Finding>& findings) {
  sheet.line(system.info.name, Ink::strong);
  show_contents(sheet, system);
  if (findings.empty()) sheet.paragraph("Nothing was found wrong with the system itself.");
  show_findings(sheet, findings);
  sheet.line();
  sheet.paragraph(fmt::format("Judged by the rules for {}; --rules chooses others. {}", plan::title(rules),
                              plan::advice_line),
                  Ink::faint);
}

}  // namespace ohmtrail::cli
