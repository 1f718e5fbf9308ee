#include "cli/text/feeding.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cli/text/supplies.hpp"
#include "ohmtrail/diagnose/feeding.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using diagnose::Circulation;
using diagnose::Fed;
using Align = Column::Align;
namespace u = units;

/// A smaller share of a current is not worth a line.
constexpr double least_share = 0.005;
/// Below this the batteries stand at the same volts for all that matters.
constexpr double least_circulating_amperes = 0.1;

std::string amperes(double si) {
  return u::print(u::Current{si}, {.significant = 3, .keep_zeros = true});
}

bool one_source_feeds_all(const std::vector<Fed>& feeding) {
  std::string only;
  for (const Fed& fed : feeding) {
    if (fed.role == network::Role::battery) return false;
    for (const auto& one : fed.from) {
      if (!only.empty() && one.source != only) return false;
      only = one.source;
    }
  }
  return true;
}

Table table_of(const solve::CaseSolution& solved, const std::vector<Fed>& feeding) {
  Table table({{"fed", Align::left, Narrow::cuts},
               {"from", Align::left, Narrow::cuts},
               {"with", Align::right},
               {"share", Align::right}});
  for (const Fed& fed : feeding) {
    std::string name = supply_in_words(solved, fed.taker);
    if (fed.role == network::Role::battery) name += " (charging)";
    for (const auto& one : fed.from) {
      if (one.share < least_share) continue;
      table.row({name, supply_in_words(solved, one.source), amperes(one.current),
                 fmt::format("{:.0f} %", one.share * 100)});
      name.clear();
    }
  }
  return table;
}

void show_circulation(Sheet& sheet, const solve::CaseSolution& solved, const Circulation& one) {
  if (one.current < least_circulating_amperes) return;
  sheet.item(
      "  ",
      fmt::format("\"{}\" drives {} through \"{}\": it circulates between the batteries and feeds "
                  "nothing.",
                  supply_in_words(solved, one.from), amperes(one.current), supply_in_words(solved, one.to)),
      Ink::warning);
}

}  // namespace

void show_feeding(Sheet& sheet, const solve::CaseSolution& solved) {
  const auto feeding = diagnose::feeding(solved);
  if (one_source_feeds_all(feeding)) return;
  const Table table = table_of(solved, feeding);
  if (table.empty()) return;
  sheet.line();
  sheet.table(table);
  for (const Circulation& one : diagnose::circulating(solved, feeding)) show_circulation(sheet, solved, one);
  sheet.item("  ", "Where currents meet, what leaves is counted as mixed like what arrives.", Ink::faint);
}

}  // namespace ohmtrail::cli
