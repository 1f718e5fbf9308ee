#include "cli/text/sag.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "cli/text/parts.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using diagnose::SagSplit;

constexpr std::size_t most_shown = 6;
constexpr double bar_columns = 60;

std::string volts(double si) {
  return units::print(units::Voltage{si}, {.significant = 3, .keep_zeros = true});
}

std::vector<SagSplit> worst_first(std::vector<SagSplit> splits) {
  std::stable_sort(splits.begin(), splits.end(),
                   [](const SagSplit& a, const SagSplit& b) { return a.sag > b.sag; });
  if (splits.size() > most_shown) splits.resize(most_shown);
  return splits;
}

/// One letter a share of the largest sag. Ends are rounded, not lengths, so that the whole bar keeps its
/// length.
std::string bar(const SagSplit& split, double full) {
  std::string text;
  double end = 0;
  for (const NamedPart& part : named(split.parts, split.supply)) {
    end += std::max(0.0, part.volts);
    const auto columns = static_cast<std::size_t>(std::lround(std::min(1.0, end / full) * bar_columns));
    text.append(columns - std::min(columns, text.size()), part.letter);
  }
  return text;
}

std::string numbers(const SagSplit& split) {
  std::string text;
  for (const NamedPart& part : named(split.parts, split.supply))
    if (std::abs(part.volts) >= 5e-4)
      text += fmt::format("{}{} {}", text.empty() ? "" : ", ", part.name, volts(part.volts));
  return text.empty() ? "nothing worth naming" : text;
}

}  // namespace

void show_split(Sheet& sheet, const std::vector<SagSplit>& splits) {
  if (splits.empty()) return;
  const std::vector<SagSplit> worst = worst_first(splits);
  const double full = std::max(worst.front().sag, 1e-12);
  sheet.line();
  sheet.line("Where the volts go, from the supply at rest to the load", Ink::strong);
  for (const SagSplit& split : worst) {
    sheet.item("  ", fmt::format("\"{}\" in \"{}\" is {} down: {}", split.load, split.in_case,
                                 volts(split.sag), numbers(split)));
    if (const std::string drawn = bar(split, full); !drawn.empty()) sheet.line("  " + drawn, Ink::warning);
  }
  sheet.line("  B supply, C cables, L lugs, J joints, S switches and fuses, I isolators", Ink::faint);
  if (splits.size() > worst.size())
    sheet.line(fmt::format("  {} more, less far down: ohmtrail rank --json", splits.size() - worst.size()),
               Ink::faint);
}

}  // namespace ohmtrail::cli
