#include "cli/text/rank.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "cli/text/charging.hpp"
#include "cli/text/collapse.hpp"
#include "cli/text/infer_words.hpp"
#include "cli/text/notes.hpp"
#include "cli/text/sag.hpp"
#include "cli/text/words.hpp"
#include "ohmtrail/diagnose/doubt.hpp"
#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/diagnose/temperature_in_words.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using diagnose::HotSpot;
using solve::CaseSolution;
using Align = Column::Align;
namespace u = units;

/// Rows where --top does not say.
constexpr std::size_t rows_by_default = 10;

constexpr u::Format aligned{.significant = 3, .keep_zeros = true};

/// A day's waste below this is not told.
constexpr double least_watt_hours = 0.1;

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

/// "the lug of …, the fuse …"; the first four.
std::string rivals(const netlist::System& system, const network::Network& network, const HotSpot& spot) {
  constexpr std::size_t most = 4;
  std::string list;
  for (std::size_t k = 0; k < std::min(most, spot.rivals.size()); ++k)
    list += (k == 0 ? "" : ", ") + where_is(system, network, spot.rivals[k]);
  if (spot.rivals.size() > most) list += fmt::format(" or {} more", spot.rivals.size() - most);
  return list;
}

std::string worst_in_doubt(const netlist::System& system, const std::vector<CaseSolution>& solved,
                           const HotSpot& worst) {
  std::string text = fmt::format("The readings do not settle what is at fault. Perhaps {}, {}",
                                 place(system, solved, worst), percent_sure(*diagnose::odds_of(worst)));
  if (!worst.rivals.empty())
    text += "; as likely or half as likely " + rivals(system, case_of(solved, worst.in_case).network, worst);
  return text + ". Read on before you undo anything: ohmtrail next says where.";
}

void show_verdict(Sheet& sheet, const netlist::System& system, const std::vector<CaseSolution>& solved,
                  const std::vector<HotSpot>& spots, bool some_in_doubt) {
  if (spots.empty()) {
    sheet.paragraph(some_in_doubt
                        ? "Nothing here is more likely at fault than sound, and nothing costs volts worth a "
                          "repair."
                        : "Nothing here wastes more than it would in a sound system.",
                    Ink::good);
    return;
  }
  const auto sure = std::find_if_not(spots.begin(), spots.end(), diagnose::in_doubt);
  if (sure != spots.begin()) sheet.paragraph(worst_in_doubt(system, solved, spots.front()), Ink::warning);
  if (sure == spots.end()) return;
  const HotSpot& worst = *sure;
  sheet.paragraph(fmt::format("{}{} is the worst{}: {}{}. In case \"{}\" it loses {} and makes {} of heat.{}",
                              capitalised(place(system, solved, worst)),
                              worst.unparted ? ", or another part of that cable," : "",
                              sure == spots.begin() ? "" : " that is sure", cause_in_words(worst.cause),
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

std::string odds(const netlist::System& system, const network::Network& network, const HotSpot& spot) {
  if (diagnose::in_doubt(spot))
    return fmt::format(
        "Likely at fault: {}{}{}. Read on before you undo anything", percent_sure(*diagnose::odds_of(spot)),
        spot.rivals.empty() ? "" : "; as likely or half as likely: ", rivals(system, network, spot));
  std::string own = fmt::format("Likely at fault: {}", percent_sure(*spot.likelihood));
  if (!spot.unparted) return own;
  return fmt::format("{}; {}: {}. Read across each of its parts before you undo one", own,
                     diagnose::conductor_in_words(spot.unparted->conductor),
                     percent_sure(spot.unparted->probability));
}

/// What stands below a row: what is wrong where, what to do, and what is dangerous or costly about it.
void add_notes(Table& table, const netlist::System& system, const std::vector<CaseSolution>& solved,
               const HotSpot& spot) {
  const std::string what = cause_in_words(spot.cause), where = place(system, solved, spot);
  if (diagnose::in_doubt(spot))
    table.note(1, fmt::format("Suspected {}: {}", what, where));
  else
    table.note(1, fmt::format("{}: {}. {}", capitalised(what), where, spot.fix));
  if (diagnose::odds_of(spot)) table.note(1, odds(system, case_of(solved, spot.in_case).network, spot));
  if (spot.heat_warning) table.note(1, capitalised(*spot.heat_warning), Ink::warning);
  if (const auto other = hottest_elsewhere(spot)) table.note(1, *other, Ink::warning);
  if (spot.waste && spot.waste->watt_hours >= least_watt_hours)
    table.note(1,
               fmt::format("Wastes {} ({}) a day", u::print(u::Energy{spot.waste->watt_hours * 3600}),
                           u::print(u::Charge{spot.waste->ampere_hours * 3600})),
               Ink::faint);
}

/// Where the readings do not tell the part of a conductor, one row stands for all of it.
std::vector<HotSpot> each_conductor_once(const std::vector<HotSpot>& spots) {
  std::vector<HotSpot> kept;
  std::set<std::string> told;
  for (const HotSpot& spot : spots) {
    if (spot.unparted && !told.insert(spot.unparted->conductor).second) continue;
    kept.push_back(spot);
  }
  return kept;
}

/// "2, 4": the numbers of all parts of a conductor that its row stands for.
std::string ranks_in(const std::vector<HotSpot>& spots, const HotSpot& row) {
  std::string ranks = std::to_string(row.rank);
  for (const HotSpot& spot : spots)
    if (spot.rank > row.rank && spot.unparted && row.unparted &&
        spot.unparted->conductor == row.unparted->conductor)
      ranks += ", " + std::to_string(spot.rank);
  return ranks;
}

Table hot_spot_table(const netlist::System& system, const std::vector<CaseSolution>& solved,
                     const std::vector<HotSpot>& spots, const std::vector<HotSpot>& worth) {
  Table table({{"#", Align::right},
               {"where", Align::left, Narrow::cuts},
               {"case", Align::left, Narrow::cuts},
               {"loses", Align::right},
               {"heat", Align::right},
               {"temp.", Align::right},
               {"comes back", Align::right}});
  for (const HotSpot& spot : spots) {
    table.row({ranks_in(worth, spot), Cell(spot.id, Ink::strong), spot.in_case,
               volts(diagnose::lost_volts(spot)), u::print(u::Power{spot.heat}, aligned), temperature(spot),
               gained(spot)});
    add_notes(table, system, solved, spot);
  }
  return table;
}

}  // namespace

void show_ranking(Sheet& sheet, const netlist::System& system, const std::vector<CaseSolution>& solved,
                  const Ranking& ranking, bool all) {
  const std::vector<HotSpot> told =
      all ? std::vector<HotSpot>{} : diagnose::worth_telling(ranking.hot_spots, system.info.nominal);
  const std::vector<HotSpot> worth = all ? ranking.hot_spots : each_conductor_once(told);
  const std::size_t shown = std::min(all ? worth.size() : rows_by_default, worth.size());
  const std::vector<HotSpot> spots(worth.begin(), worth.begin() + static_cast<std::ptrdiff_t>(shown));
  sheet.line(system.info.name, Ink::strong);
  for (const CaseSolution& one : solved) show_collapse(sheet, one);
  show_verdict(sheet, system, solved, spots, !ranking.hot_spots.empty());
  if (!spots.empty()) {
    sheet.line();
    sheet.table(hot_spot_table(system, solved, spots, told));
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
