#include "cli/text/rank.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "cli/text/charging.hpp"
#include "cli/text/collapse.hpp"
#include "cli/text/infer_words.hpp"
#include "cli/text/notes.hpp"
#include "cli/text/sag.hpp"
#include "cli/text/words.hpp"
#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/diagnose/temperature_in_words.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using diagnose::HotSpot;
using solve::CaseSolution;
using Align = Column::Align;
namespace u = units;

constexpr u::Format aligned{.significant = 3, .keep_zeros = true};

/// A millionth of a volt is rounding, not a gain or a loss.
std::string volts(double si) {
  return std::abs(si) < 1e-6 ? "0 V" : u::print(u::Voltage{si}, aligned);
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

/// How many times its sound value an element has, where that says something.
std::string times_sound(const HotSpot& spot) {
  if (!spot.sound_resistance || *spot.sound_resistance <= 0) return "";
  const double ratio = spot.resistance / *spot.sound_resistance;
  if (ratio < 1.05) return "";
  return fmt::format(", {} where {} is sound", u::print(u::Resistance{spot.resistance}),
                     u::print(u::Resistance{*spot.sound_resistance}));
}

std::string gain(const HotSpot& spot) {
  if (!spot.recoverable || spot.recoverable->volts < 1e-6) return "";
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
      fmt::format("{}{} is the worst: {}{}. In case \"{}\" it loses {} and makes {} of heat.{}",
                  capitalised(place(system, solved, worst)),
                  worst.unparted ? ", or another part of that cable," : "", cause_in_words(worst.cause),
                  times_sound(worst), worst.in_case, volts(diagnose::lost_volts(worst)),
                  u::print(u::Power{worst.heat}), gain(worst)),
      Ink::bad);
}

std::string gained(const HotSpot& spot) {
  return spot.recoverable ? volts(spot.recoverable->volts) : "–";
}

std::string temperature(const HotSpot& spot) {
  return spot.temperature ? diagnose::temperature_in_short(*spot.temperature) : "–";
}

/// Where another case makes it hotter by more than the estimate can tell apart.
std::optional<std::string> hottest_elsewhere(const HotSpot& spot) {
  constexpr double told_apart = 5;
  if (!spot.hottest || spot.hottest->in_case == spot.in_case || !spot.temperature ||
      spot.hottest->celsius < *spot.temperature + told_apart)
    return std::nullopt;
  return fmt::format("Hottest in case \"{}\": {}", spot.hottest->in_case,
                     diagnose::reaches_in_words(spot.hottest->celsius));
}

std::string odds(const HotSpot& spot) {
  const std::string own = fmt::format("Likely at fault: {}", percent_sure(*spot.likelihood));
  if (!spot.unparted) return own;
  return fmt::format("{}; {}: {}. Read across each of its parts before you undo one", own,
                     diagnose::conductor_in_words(spot.unparted->conductor),
                     percent_sure(spot.unparted->probability));
}

/// What stands below a row: what is wrong where, what to do, and what is dangerous or costly about it.
void add_notes(Table& table, const std::string& where, const HotSpot& spot) {
  table.note(1, fmt::format("{}: {}. {}", capitalised(cause_in_words(spot.cause)), where, spot.fix));
  if (spot.likelihood) table.note(1, odds(spot));
  if (spot.heat_warning) table.note(1, capitalised(*spot.heat_warning), Ink::warning);
  if (const auto other = hottest_elsewhere(spot)) table.note(1, *other, Ink::warning);
  if (spot.waste)
    table.note(1,
               fmt::format("Wastes {} ({}) a day", u::print(u::Energy{spot.waste->watt_hours * 3600}),
                           u::print(u::Charge{spot.waste->ampere_hours * 3600})),
               Ink::faint);
}

Table hot_spot_table(const netlist::System& system, const std::vector<CaseSolution>& solved,
                     const std::vector<HotSpot>& spots) {
  Table table({{"#", Align::right},
               {"where", Align::left, Narrow::cuts},
               {"case", Align::left, Narrow::cuts},
               {"loses", Align::right},
               {"heat", Align::right},
               {"temp.", Align::right},
               {"comes back", Align::right}});
  for (const HotSpot& spot : spots) {
    table.row({std::to_string(spot.rank), Cell(spot.id, Ink::strong), spot.in_case,
               volts(diagnose::lost_volts(spot)), u::print(u::Power{spot.heat}, aligned), temperature(spot),
               gained(spot)});
    add_notes(table, place(system, solved, spot), spot);
  }
  return table;
}

}  // namespace

void show_ranking(Sheet& sheet, const netlist::System& system, const std::vector<CaseSolution>& solved,
                  const Ranking& ranking, std::size_t most) {
  const std::size_t shown = std::min(most, ranking.hot_spots.size());
  const std::vector<HotSpot> spots(ranking.hot_spots.begin(),
                                   ranking.hot_spots.begin() + static_cast<std::ptrdiff_t>(shown));
  sheet.line(system.info.name, Ink::strong);
  for (const CaseSolution& one : solved) show_collapse(sheet, one);
  show_verdict(sheet, system, solved, spots);
  if (!spots.empty()) {
    sheet.line();
    sheet.table(hot_spot_table(system, solved, spots));
  }
  if (const std::size_t more = ranking.hot_spots.size() - shown; more > 0)
    sheet.line(fmt::format("  {} more that matter less: --top {} shows them", more, ranking.hot_spots.size()),
               Ink::faint);
  show_split(sheet, ranking.split);
  show_charging(sheet, ranking.charging);
  show_assumptions(sheet, solved);
  show_cautions(sheet);
}

}  // namespace ohmtrail::cli
