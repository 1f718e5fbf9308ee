#include "cli/text/compare.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cli/text/infer_words.hpp"
#include "cli/text/notes.hpp"
#include "cli/text/words.hpp"
#include "ohmtrail/netlist/names.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using namespace diagnose;
using Align = Column::Align;

/// With the digits that a hand meter shows, so that the gain can be seen in them.
std::string at_the_load(double volts) {
  return units::print(units::Voltage{volts}, {.significant = 4, .keep_zeros = true});
}

void show_changes(Sheet& sheet, const netlist::System& system, const network::Network& network,
                  const char* title, const std::vector<std::string>& ids, const Comparison& comparison,
                  Ink ink) {
  if (ids.empty()) return;
  sheet.line();
  sheet.line(title, Ink::strong);
  const auto tell = [&](const ElementChange& change, const std::string& where) {
    if (std::count(ids.begin(), ids.end(), change.id) > 0)
      sheet.item("  - ",
                 fmt::format("{}: {} before, {} after.", capitalised(where), print_ohms(change.before),
                             print_ohms(change.after)),
                 ink);
  };
  for (const ElementChange& change : comparison.elements) tell(change, where_is(system, network, change.id));
  for (const ElementChange& change : comparison.conductors) tell(change, conductor_in_words(change.id));
}

/// By the run, joint, switch, fuse or battery, each once.
void show_unmatched(Sheet& sheet, const char* where, const std::vector<std::string>& ids) {
  std::vector<std::string> owners;
  for (const std::string& id : ids) {
    const std::string owner(netlist::split_element_name(id).owner);
    if (std::count(owners.begin(), owners.end(), owner) == 0) owners.push_back(owner);
  }
  if (!owners.empty())
    sheet.paragraph(fmt::format("Only in the survey {}, so not compared: {}.", where, listed(owners)),
                    Ink::faint);
}

}  // namespace

void show_comparison(Sheet& sheet, const netlist::System& system, const network::Network& network,
                     const Comparison& comparison) {
  sheet.line(system.info.name, Ink::strong);
  if (comparison.cured.empty() && comparison.left.empty() && comparison.fresh.empty())
    sheet.paragraph("Nothing was faulty before, and nothing is now.");
  show_changes(sheet, system, network, "Cured", comparison.cured, comparison, Ink::good);
  show_changes(sheet, system, network, "Left", comparison.left, comparison, Ink::warning);
  show_changes(sheet, system, network, "New", comparison.fresh, comparison, Ink::bad);
  Table table({{"load", Align::left, Narrow::cuts},
               {"case", Align::left, Narrow::cuts},
               {"before", Align::right},
               {"after", Align::right},
               {"gained", Align::right}});
  for (const LoadChange& load : comparison.loads)
    table.row({load.id, load.in_case, at_the_load(load.volts_before), at_the_load(load.volts_after),
               print_volts(load.volts_after - load.volts_before)});
  if (!table.empty()) {
    sheet.line();
    sheet.line("Volts at the loads, at the same battery voltage and load", Ink::strong);
    sheet.table(table);
  }
  if (!comparison.gone.empty() || !comparison.added.empty()) sheet.line();
  show_unmatched(sheet, "before", comparison.gone);
  show_unmatched(sheet, "after", comparison.added);
  show_cautions(sheet);
}

}  // namespace ohmtrail::cli
