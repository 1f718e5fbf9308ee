#include "cli/text/next.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "cli/text/infer_words.hpp"
#include "cli/text/notes.hpp"
#include "cli/text/words.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using diagnose::NextOption;
using diagnose::NextResult;
using diagnose::Verdict;

constexpr std::size_t suspects_shown = 3;
constexpr double least_bits = 0.005;  // what would print as 0.00

std::string switched_on(const netlist::System& system, const NextOption& option) {
  const auto found = std::find_if(system.cases.begin(), system.cases.end(),
                                  [&](const netlist::Case& one) { return one.name == option.in_case; });
  std::string loads;
  if (found != system.cases.end() && !found->all_on) {
    for (const std::string& load : found->on) loads += (loads.empty() ? "" : ", ") + load;
    loads = found->on.empty() ? " (nothing on)" : " (on: " + loads + ")";
  }
  return fmt::format("{}case \"{}\"{}", option.switching ? "switch to " : "", option.in_case, loads);
}

void show_option(Sheet& sheet, const netlist::System& system, const NextOption& option, std::size_t number) {
  sheet.item(fmt::format("{}. ", number), capitalised(option.where) + ".",
             number == 1 ? Ink::strong : Ink::plain);
  std::string how = switched_on(system, option);
  if (option.tools) how += "; needs tools to get there";
  if (option.leads > 1.5 && option.in.empty())
    how +=
        fmt::format("; long leads, about {}", units::print(units::Length{option.leads}, {.significant = 2}));
  sheet.item("   ", capitalised(how) + ".");
  sheet.item("   ", option.why);
  if (option.gain_bits >= least_bits)
    sheet.item("   ",
               fmt::format("Worth {:.2f} bits{}.", option.gain_bits,
                           number == 1 ? "; one bit halves the suspects" : ""),
               Ink::faint);
}

void show_suspects(Sheet& sheet, const NextResult& result) {
  if (result.repairs.empty()) return;
  sheet.line();
  sheet.line("Leading suspects", Ink::strong);
  for (std::size_t k = 0; k < std::min(suspects_shown, result.repairs.size()); ++k) {
    const auto& repair = result.repairs[k];
    sheet.item("  - ", fmt::format("{}: {}", repair.words, percent_sure(repair.probability)));
  }
}

}  // namespace

void show_next(Sheet& sheet, const netlist::System& system, const NextResult& result) {
  sheet.line(system.info.name, Ink::strong);
  if (!result.verdict_text.empty()) {
    sheet.paragraph(result.verdict_text, result.verdict == Verdict::go_on ? Ink::faint : Ink::good);
  }
  if (result.verdict != Verdict::found && !result.options.empty()) {
    sheet.line();
    sheet.line(result.verdict == Verdict::go_on ? "Read next, best first" : "If you read on all the same",
               Ink::strong);
    for (std::size_t k = 0; k < result.options.size(); ++k)
      show_option(sheet, system, result.options[k], k + 1);
  }
  show_suspects(sheet, result);
  show_cautions(sheet);
}

}  // namespace ohmtrail::cli
