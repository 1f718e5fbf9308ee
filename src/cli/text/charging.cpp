#include "cli/text/charging.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

#include "cli/text/words.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using diagnose::ChargeSplit;
using Align = Column::Align;
namespace u = units;

constexpr std::size_t elements_shown = 5;
/// What loses less than this share of all that is lost is not worth a line.
constexpr double least_share = 0.02;

std::string volts(double si) {
  return u::print(u::Voltage{si}, {.significant = 3, .keep_zeros = true});
}

std::string standing(double si) {
  return u::print(u::Voltage{si}, {.significant = 4, .keep_zeros = true});
}

std::string batteries(const ChargeSplit& split) {
  return fmt::format("\"{}\"", fmt::join(split.batteries, "+"));
}

std::string flow(const ChargeSplit& split) {
  const auto amperes = u::print(u::Current{std::abs(split.current)});
  return split.current >= 0 ? fmt::format("it takes {}", amperes)
                            : fmt::format("it is not charged at all, it gives {}", amperes);
}

std::string judged(const ChargeSplit& split) {
  if (!split.within) return ": TOO MUCH";
  return split.current > 0 ? ": ok" : "";
}

Table element_table(const ChargeSplit& split) {
  Table table({{"loses on the way", Align::left, Narrow::cuts},
               {"what", Align::left},
               {"loses", Align::right},
               {"comes back", Align::right}});
  std::size_t shown = 0;
  for (const auto& loss : split.elements) {
    if (shown == elements_shown || loss.lost < least_share * split.lost) break;
    table.row({loss.element, role_in_words(loss.role), volts(loss.lost),
               loss.comes_back && *loss.comes_back >= 1e-6 ? volts(*loss.comes_back) : "–"});
    ++shown;
  }
  return table;
}

std::string end_of(const ChargeSplit& split) {
  return fmt::format(
      "{} never gets beyond {} of the {} that the charger is set to: {}. Undercharge sulphates.",
      batteries(split), standing(*split.reaches), standing(split.set_point),
      split.charger_is_spent
          ? fmt::format("the charger gives all it can, {}", u::print(u::Current{split.limit}))
          : std::string("the way there loses the rest"));
}

void show(Sheet& sheet, const ChargeSplit& split) {
  sheet.item(
      "  ",
      fmt::format("\"{}\" to {} in \"{}\": {} lost, {} of rated (limit {}){}. {} at the charger (set to "
                  "{}), {} at the battery's posts; {}",
                  split.charger, batteries(split), split.in_case, volts(split.lost),
                  u::print(u::Fraction{split.fraction}), u::print(u::Fraction{diagnose::most_charging_drop}),
                  judged(split), standing(split.charger_volts), u::print(u::Voltage{split.set_point}),
                  standing(split.battery_volts), flow(split)),
      split.within ? Ink::plain : Ink::bad);
  if (!split.full) sheet.item("  ", end_of(split), Ink::warning);
  if (const Table table = element_table(split); !table.empty()) sheet.table(table);
}

}  // namespace

void show_charging(Sheet& sheet, const std::vector<ChargeSplit>& splits) {
  if (splits.empty()) return;
  sheet.line();
  sheet.line("Where the volts go, from the charger to the battery", Ink::strong);
  for (const ChargeSplit& split : splits) show(sheet, split);
}

}  // namespace ohmtrail::cli
