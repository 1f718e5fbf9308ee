#include "cli/text/rank.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "cli/text/notes.hpp"
#include "cli/text/sag.hpp"
#include "cli/text/words.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using diagnose::HotSpot;
using solve::CaseSolution;
using Align = Column::Align;
namespace u = units;

constexpr u::Format aligned{.significant = 3, .keep_zeros = true};

std::string volts(double si) {
  return u::print(u::Voltage{si}, aligned);
}

/// The case in which a hot spot was found; there is always one.
const CaseSolution& case_of(const std::vector<CaseSolution>& solved, const std::string& name) {
  return *std::find_if(solved.begin(), solved.end(),
                       [&](const CaseSolution& one) { return one.network.case_name == name; });
}

std::string place(const netlist::System& system, const std::vector<CaseSolution>& solved,
                  const HotSpot& spot) {
  const network::Network& network = case_of(solved, spot.in_case).network;
  return where_in_words(system, network,
                        network.elements[static_cast<std::size_t>(*network.element(spot.id))]);
}

std::string capitalised(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

/// How many times its sound value an element has, where that says something.
std::string times_sound(const HotSpot& spot) {
  if (!spot.sound_resistance || *spot.sound_resistance <= 0) return "";
  const double ratio = spot.resistance / *spot.sound_resistance;
  if (ratio < 1.05) return "";
  return fmt::format(", {} where {} is sound", u::print(u::Resistance{spot.resistance}),
                     u::print(u::Resistance{*spot.sound_resistance}));
}

std::string gain(const HotSpot& spot) {
  if (!spot.recoverable || spot.recoverable->volts <= 0) return "";
  return fmt::format(" Made good, \"{}\" gets {} back.", spot.recoverable->load,
                     volts(spot.recoverable->volts));
}

void show_verdict(Sheet& sheet, const netlist::System& system, const std::vector<CaseSolution>& solved,
                  const std::vector<HotSpot>& spots) {
  if (spots.empty()) {
    sheet.paragraph("Nothing here wastes more than it would in a sound system.", Ink::good);
    return;
  }
  const HotSpot& worst = spots.front();
  sheet.paragraph(
      fmt::format("{} is the worst: {}{}. In case \"{}\" it loses {} and makes {} of heat.{}",
                  capitalised(place(system, solved, worst)), cause_in_words(worst.cause), times_sound(worst),
                  worst.in_case, volts(std::abs(worst.drop)), u::print(u::Power{worst.heat}), gain(worst)),
      Ink::bad);
}

std::string gained(const HotSpot& spot) {
  return spot.recoverable ? volts(spot.recoverable->volts) : "–";
}

std::string temperature(const HotSpot& spot) {
  return spot.temperature ? fmt::format("{:.0f} °C", *spot.temperature) : "–";
}

/// What stands below a row: where exactly, what to do, and what is dangerous or costly about it.
void add_notes(Table& table, const std::string& where, const HotSpot& spot) {
  const std::string gauge = spot.better_gauge.empty() ? "" : fmt::format(" ({} will do)", spot.better_gauge);
  table.note(1, fmt::format("{}: {}{}", capitalised(where), spot.fix, gauge));
  if (spot.likelihood) table.note(1, fmt::format("Likely at fault: {:.0f} %", *spot.likelihood * 100));
  if (spot.heat_warning) table.note(1, *spot.heat_warning, Ink::warning);
  if (spot.waste)
    table.note(1, fmt::format("Wastes {} ({}) a day", u::print(u::Energy{spot.waste->watt_hours * 3600}),
                              u::print(u::Charge{spot.waste->ampere_hours * 3600})));
}

Table hot_spot_table(const netlist::System& system, const std::vector<CaseSolution>& solved,
                     const std::vector<HotSpot>& spots) {
  Table table({{"#", Align::right},
               {"where", Align::left, Narrow::cuts},
               {"what", Align::left},
               {"case", Align::left, Narrow::cuts},
               {"loses", Align::right},
               {"heat", Align::right},
               {"temp.", Align::right},
               {"comes back", Align::right}});
  for (const HotSpot& spot : spots) {
    table.row({std::to_string(spot.rank), Cell(spot.id, Ink::strong), cause_in_words(spot.cause),
               spot.in_case, volts(std::abs(spot.drop)), u::print(u::Power{spot.heat}, aligned),
               temperature(spot), gained(spot)});
    add_notes(table, place(system, solved, spot), spot);
  }
  return table;
}

}  // namespace

void show_ranking(Sheet& sheet, const netlist::System& system, const std::vector<CaseSolution>& solved,
                  const Ranking& ranking) {
  sheet.line(system.info.name, Ink::strong);
  show_verdict(sheet, system, solved, ranking.hot_spots);
  if (!ranking.hot_spots.empty()) {
    sheet.line();
    sheet.table(hot_spot_table(system, solved, ranking.hot_spots));
  }
  show_split(sheet, ranking.split);
  show_assumptions(sheet, solved);
  show_cautions(sheet);
}

}  // namespace ohmtrail::cli
