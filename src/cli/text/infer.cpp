#include "cli/text/infer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "cli/text/notes.hpp"
#include "cli/text/words.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using namespace diagnose;
using Align = Column::Align;
namespace u = units;

constexpr double worth_a_row = 0.05;  // fault probability from which an element is shown
constexpr double worth_a_verdict = 0.5;

std::string ohms(double si) {
  return u::print(u::Resistance{si});
}
std::string volts(double si) {
  return u::print(u::Voltage{si});
}

// Never quite certain: 99.9 % is the most that is said.
std::string percent(double probability) {
  if (probability > 0.995) return "over 99 %";
  if (probability < 0.01) return "under 1 %";
  return fmt::format("{:.0f} %", probability * 100);
}

std::string where(const netlist::System& system, const network::Network& network, const std::string& id) {
  const auto index = network.element(id);
  return index ? where_in_words(system, network, network.elements[static_cast<std::size_t>(*index)]) : id;
}

std::string capitalised(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string element_verdict(const netlist::System& system, const network::Network& network,
                            const InferredElement& e) {
  return fmt::format("{}: about {} where {} is sound; {}.", capitalised(where(system, network, e.id)),
                     ohms(e.resistance), ohms(e.sound_resistance), percent(e.fault_probability));
}

std::string battery_verdict(const InferredBattery& b) {
  if (b.cell_missing_probability > 0.5 * b.fault_probability)
    return fmt::format("The battery \"{}\": one cell seems to be missing, {} open-circuit; {}.", b.id,
                       volts(b.emf), percent(b.fault_probability));
  return fmt::format("The battery \"{}\": about {} inside; {}.", b.id, ohms(b.resistance),
                     percent(b.fault_probability));
}

std::string joined(const std::vector<std::string>& ids) {
  return fmt::format("{}", fmt::join(ids, ", "));
}

// "Somewhere in this group" where the group is surely faulty, but no member of it is.
bool show_group_verdicts(Sheet& sheet, const InferResult& result) {
  bool said = false;
  for (const UnresolvedGroup& group : result.unresolved) {
    const bool one_is_named =
        std::any_of(result.elements.begin(), result.elements.end(), [&](const InferredElement& e) {
          return e.fault_probability >= worth_a_verdict &&
                 std::count(group.ids.begin(), group.ids.end(), e.id) > 0;
        });
    if (group.fault_probability >= worth_a_verdict && !one_is_named) {
      const std::string sum = std::isnan(group.sum) ? "" : ohms(group.sum) + " together; ";
      sheet.paragraph(
          fmt::format("Somewhere among {}: {}{}.", joined(group.ids), sum, percent(group.fault_probability)),
          Ink::bad);
      said = true;
    }
  }
  return said;
}

void show_verdicts(Sheet& sheet, const netlist::System& system, const network::Network& network,
                   const InferResult& result) {
  bool said = false;
  for (const std::string& id : result.suspects) {
    for (const InferredElement& e : result.elements)
      if (e.id == id && e.fault_probability >= worth_a_verdict) {
        sheet.paragraph(element_verdict(system, network, e), Ink::bad);
        said = true;
      }
    for (const InferredBattery& b : result.batteries)
      if (b.id == id && b.fault_probability >= worth_a_verdict) {
        sheet.paragraph(battery_verdict(b), Ink::bad);
        said = true;
      }
  }
  said = show_group_verdicts(sheet, result) || said;
  if (!said)
    sheet.paragraph(result.readings.empty()
                        ? "Nothing was read: this is what is usual for such a system, no more."
                        : "No single thing is more likely faulty than sound.",
                    Ink::good);
}

Ink ink_of(double probability) {
  if (probability >= worth_a_verdict) return Ink::bad;
  return probability >= worth_a_row ? Ink::warning : Ink::plain;
}

void add_row(Table& table, const InferResult& result, const std::string& id) {
  for (const InferredElement& e : result.elements)
    if (e.id == id && e.fault_probability >= worth_a_row)
      table.row({Cell(e.id, Ink::strong), ohms(e.resistance),
                 fmt::format("{} … {}", ohms(e.low), ohms(e.high)), ohms(e.sound_resistance),
                 Cell(percent(e.fault_probability), ink_of(e.fault_probability))});
  for (const InferredBattery& b : result.batteries)
    if (b.id == id && b.fault_probability >= worth_a_row)
      table.row({Cell(b.id, Ink::strong), ohms(b.resistance),
                 fmt::format("{} … {}", ohms(b.low), ohms(b.high)), "–",
                 Cell(percent(b.fault_probability), ink_of(b.fault_probability))});
}

void show_table(Sheet& sheet, const InferResult& result) {
  Table table({{"suspect", Align::left, Narrow::cuts},
               {"resistance", Align::right},
               {"90 % between", Align::right},
               {"sound", Align::right},
               {"faulty", Align::right}});
  for (const std::string& id : result.suspects) add_row(table, result, id);
  if (table.empty()) return;
  sheet.line();
  sheet.table(table);
}

void show_unresolved(Sheet& sheet, const InferResult& result) {
  const auto unread = std::count_if(result.elements.begin(), result.elements.end(),
                                    [](const InferredElement& e) { return !e.informed; });
  if (result.unresolved.empty() && unread == 0) return;
  sheet.line();
  sheet.line("What these readings cannot tell", Ink::strong);
  for (const UnresolvedGroup& group : result.unresolved) {
    const std::string sum = std::isnan(group.sum)
                                ? "cannot be told apart"
                                : fmt::format("together {} ({} … {}); the sum is sure, the split is not",
                                              ohms(group.sum), ohms(group.low), ohms(group.high));
    sheet.item("  - ", fmt::format("{}: {}.", joined(group.ids), sum));
    if (!group.separate_at.empty())
      sheet.item("    ",
                 fmt::format("A reading from \"{}\" to \"{}\" parts them.", group.separate_at.front().first,
                             group.separate_at.front().second),
                 Ink::faint);
  }
  if (unread > 0) sheet.item("  - ", fmt::format("{} elements that no reading says anything of.", unread));
}

std::string unit_value(const netlist::Reading& reading, double value) {
  if (std::holds_alternative<netlist::AmpsReading>(reading.what)) return u::print(u::Current{value});
  if (std::holds_alternative<netlist::OhmsReading>(reading.what)) return ohms(value);
  if (std::holds_alternative<netlist::TemperatureReading>(reading.what))
    return u::print(u::Temperature{value});
  return volts(value);
}

std::string what_was_read(const netlist::Reading& reading) {
  if (const auto* v = std::get_if<netlist::VoltsReading>(&reading.what))
    return fmt::format("\"{}\" to \"{}\"", v->red, v->black);
  if (const auto* a = std::get_if<netlist::AmpsReading>(&reading.what))
    return fmt::format("in \"{}\"", a->in);
  if (const auto* o = std::get_if<netlist::OhmsReading>(&reading.what))
    return fmt::format("across \"{}\"", o->across);
  return fmt::format("at \"{}\"", std::get<netlist::TemperatureReading>(reading.what).at);
}

std::string slip_in_words(const InferredReading& reading) {
  switch (reading.slip) {
    case Slip::swapped_probes:
      return " The probes look swapped.";
    case Slip::wrong_unit:
      return " It looks like millivolts entered as volts, or the like.";
    case Slip::load_off:
      return " It looks like a reading taken with the load off.";
    case Slip::wrong_case:
      return fmt::format(" It fits the case \"{}\".", reading.slip_case);
    case Slip::none:
      break;
  }
  return "";
}

void show_doubts(Sheet& sheet, const netlist::System& system, const InferResult& result) {
  bool titled = false;
  std::size_t critical = 0;
  for (const InferredReading& r : result.readings) {
    critical += r.critical ? 1 : 0;
    if (!r.suspect) continue;
    if (!titled) {
      sheet.line();
      sheet.line("Readings in doubt", Ink::strong);
      titled = true;
    }
    const netlist::Reading& reading = system.readings[r.index];
    sheet.item("  - ",
               fmt::format("Reading {} ({}): {} does not fit; going by the others it would be about {}.{}",
                           r.index + 1, what_was_read(reading), unit_value(reading, r.measured),
                           unit_value(reading, r.would_be), slip_in_words(r)),
               Ink::warning);
  }
  if (critical > 0) {
    sheet.line();
    sheet.paragraph(
        fmt::format("{} of {} readings stand alone: nothing else checks them, and an error in one could not "
                    "be found.",
                    critical, result.readings.size()),
        Ink::faint);
  }
}

void show_fit(Sheet& sheet, const InferResult& result) {
  if (result.fit.degrees_of_freedom == 0) return;
  sheet.line();
  sheet.paragraph(
      fmt::format("Fit: chi-square {:.1f} for {} readings, p = {:.2g}.{}", result.fit.chi_square,
                  result.fit.degrees_of_freedom, result.fit.p_value,
                  result.fit.p_value < 0.01 ? " The readings and this netlist do not agree well." : ""),
      Ink::faint);
}

void show_changes(Sheet& sheet, const netlist::System& system, const network::Network& network,
                  const char* title, const std::vector<std::string>& ids, const Comparison& comparison,
                  Ink ink) {
  if (ids.empty()) return;
  sheet.line();
  sheet.line(title, Ink::strong);
  for (const std::string& id : ids)
    for (const ElementChange& change : comparison.elements)
      if (change.id == id)
        sheet.item("  - ",
                   fmt::format("{}: {} before, {} after.", capitalised(where(system, network, id)),
                               ohms(change.before), ohms(change.after)),
                   ink);
}

}  // namespace

void show_inference(Sheet& sheet, const netlist::System& system, const network::Network& network,
                    const InferResult& result) {
  sheet.line(system.info.name, Ink::strong);
  show_verdicts(sheet, system, network, result);
  show_table(sheet, result);
  show_unresolved(sheet, result);
  show_doubts(sheet, system, result);
  show_fit(sheet, result);
  std::vector<network::Assumption> assumed = network.assumptions;
  for (const InferAssumption& one : result.assumptions) assumed.push_back({one.id, one.text, one.value});
  show_assumptions(sheet, assumed);
  show_cautions(sheet);
}

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
    table.row({load.id, load.in_case, volts(load.volts_before), volts(load.volts_after),
               volts(load.volts_after - load.volts_before)});
  if (!table.empty()) {
    sheet.line();
    sheet.line("Volts at the loads, at the same battery voltage and load", Ink::strong);
    sheet.table(table);
  }
  show_cautions(sheet);
}

}  // namespace ohmtrail::cli
