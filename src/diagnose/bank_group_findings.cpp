#include "diagnose/bank_group_findings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "ohmtrail/trade/battery_facts.hpp"

namespace ohmtrail::diagnose::bank {
namespace {

constexpr const char* practice = "common practice";
// Common practice: strings side by side should share a load to within a quarter.
constexpr double fair_share = 1.25;
// Common practice: rested batteries of one string that differ by more than a tenth of charge.
constexpr double unequal_charge = 0.10;
// Less than this between strings is not worth a word.
constexpr double least_circulating_amperes = 1;

// Of nominal: 0.05 V for 12 V, what rested batteries of one bank differ by at any time; common practice.
constexpr double readable_gap = 0.004;

using Indices = std::vector<std::size_t>;

std::string_view chemistry_word(trade::Chemistry chemistry) {
  switch (chemistry) {
    case trade::Chemistry::agm:
      return "AGM";
    case trade::Chemistry::gel:
      return "gel";
    case trade::Chemistry::lfp:
      return "lithium iron phosphate";
    case trade::Chemistry::flooded:
      break;
  }
  return "flooded";
}

void judge_chemistry(BatteryGroup& group, const Members& members, const Indices& batteries) {
  std::set<trade::Chemistry> kinds;
  std::vector<std::string> words;
  for (const auto i : batteries)
    if (kinds.insert(members.system.batteries[i].chemistry).second)
      words.emplace_back(chemistry_word(members.system.batteries[i].chemistry));
  if (kinds.size() < 2) return;
  const bool lithium = kinds.count(trade::Chemistry::lfp) > 0;
  group.findings.push_back({"unlike-chemistry", lithium ? Severity::before_further_use : Severity::soon,
                            fmt::format("{} batteries work together", fmt::join(words, " and ")), practice,
                            "They need unlike charging voltages: use one kind throughout."});
}

/// Batteries whose label values differ by more than a tenth.
template <class Value>
void judge_label(BatteryGroup& group, const Members& members, const Indices& batteries, const char* name,
                 const char* what, Severity severity, const char* remedy, Value value) {
  double least = 0, most = 0;
  std::string least_id, most_id;
  for (const auto i : batteries) {
    const double size = value(members.system.batteries[i]);
    if (size <= 0) continue;
    if (least == 0 || size < least) least = size, least_id = members.system.batteries[i].id;
    if (size > most) most = size, most_id = members.system.batteries[i].id;
  }
  if (least == 0 || most < least * 1.1) return;
  group.findings.push_back(
      {name, severity,
       fmt::format("{} has {:.0f} {}, {} {:.0f} {}", least_id, least, what, most_id, most, what), practice,
       remedy});
}

double ampere_hours(const netlist::Battery& battery) {
  return battery.capacity ? battery.capacity->si() / 3600 : 0;
}

void judge_age(BatteryGroup& group, const Members& members, const Indices& batteries) {
  std::set<std::string> years;
  for (const auto i : batteries)
    if (const auto& made = members.system.batteries[i].made; made.size() >= 4)
      years.insert(made.substr(0, 4));
  if (years.size() < 2) return;
  group.findings.push_back({"unlike-age", Severity::improvement,
                            fmt::format("made in {}", fmt::join(years, ", ")), practice,
                            "The oldest pulls the new ones down to its age: replace a bank as a whole."});
}

double times_sound(const BatteryVerdict& verdict) {
  return verdict.sound_resistance ? ratio(verdict.resistance, *verdict.sound_resistance) : 1;
}

/// How far a state stands against a battery: the larger, the worse.
int badness(BatteryState state) {
  switch (state) {
    case BatteryState::do_not_test:
      return 7;
    case BatteryState::dry_plates:
      return 6;
    case BatteryState::weak_cell:
      return 5;
    case BatteryState::sulphated_or_worn:
      return 4;
    case BatteryState::exposed_plates:
      return 3;
    case BatteryState::contradictory:
      return 2;
    case BatteryState::suspect:
    case BatteryState::uneven_cells:
      return 1;
    default:
      return 0;
  }
}

/// Worse verdict first, then more resistance over sound, then less charge.
bool weaker(const BatteryVerdict& a, const BatteryVerdict& b) {
  if (badness(a.verdict) != badness(b.verdict)) return badness(a.verdict) > badness(b.verdict);
  if (std::abs(times_sound(a) - times_sound(b)) > 0.25) return times_sound(a) > times_sound(b);
  return a.charge < b.charge;
}

const BatteryVerdict& weakest_of(const Members& members, const Indices& batteries) {
  std::size_t weakest = batteries.front();
  for (const auto i : batteries)
    if (weaker(members.verdicts[i], members.verdicts[weakest])) weakest = i;
  return members.verdicts[weakest];
}

struct Others {
  double charge = 0, times_sound = 0;  ///< means
};

Others others_than(const Members& members, const Indices& batteries, const BatteryVerdict& one) {
  Others others;
  double count = 0;
  for (const auto i : batteries) {
    if (&members.verdicts[i] == &one) continue;
    others.charge += members.verdicts[i].charge.of_one();
    others.times_sound += times_sound(members.verdicts[i]);
    ++count;
  }
  return {others.charge / count, others.times_sound / count};
}

void name_weakest(BatteryGroup& group, const Members& members, const Indices& batteries) {
  const auto& weakest = weakest_of(members, batteries);
  const auto others = others_than(members, batteries, weakest);
  const bool lower = others.charge - weakest.charge.of_one() > unequal_charge;
  const bool stiffer = times_sound(weakest) > 1.5 * others.times_sound;
  if (badness(weakest.verdict) == 0 && !lower && !stiffer) return;
  group.weakest = weakest.id;
  group.findings.push_back(
      {"weakest-of-string", Severity::soon,
       fmt::format("{} is the weakest: {} at {:.0f} % charge and {:.1f} times its sound resistance, the "
                   "others {:.0f} % "
                   "and {:.1f} times; the whole string gives no more than it",
                   weakest.id, word(weakest.verdict), weakest.charge.percent(), times_sound(weakest),
                   100 * others.charge, others.times_sound),
       practice, "See to it first; a new battery among old ones of a string is soon as weak as they are."});
}

struct StringSource {
  double volts = 0, ohms = 0, nominal = 0;
};

StringSource source_of(const Members& members, const Indices& string) {
  StringSource source;
  for (const auto i : string) {
    source.volts += members.verdicts[i].emf.si();
    source.ohms += members.verdicts[i].resistance.si();
    source.nominal += members.system.batteries[i].nominal.si();
  }
  return source;
}

std::string named(const BatteryGroup& group, std::size_t string) {
  return fmt::format("{}", fmt::join(group.members[string], "+"));
}

bool judge_nominal(BatteryGroup& group, const std::vector<StringSource>& sources) {
  for (std::size_t i = 1; i < sources.size(); ++i) {
    if (std::abs(sources[i].nominal - sources[0].nominal) < 0.1 * sources[0].nominal) continue;
    group.findings.push_back({"unlike-nominal", Severity::before_further_use,
                              fmt::format("{} makes {:.3g} V, {} {:.3g} V, side by side", named(group, 0),
                                          sources[0].nominal, named(group, i), sources[i].nominal),
                              "Kirchhoff's voltage law",
                              "Part them at once: one drives its current through the other."});
    return false;
  }
  return true;
}

void judge_circulation(BatteryGroup& group, const std::vector<StringSource>& sources) {
  std::size_t low = 0, high = 0;
  for (std::size_t i = 1; i < sources.size(); ++i) {
    if (sources[i].volts < sources[low].volts) low = i;
    if (sources[i].volts > sources[high].volts) high = i;
  }
  const double apart = sources[high].volts - sources[low].volts;
  const double amperes = apart / (sources[high].ohms + sources[low].ohms);
  if (apart < readable_gap * sources[0].nominal || amperes < least_circulating_amperes) return;
  group.findings.push_back(
      {"circulating-current", apart > 0.02 * sources[0].nominal ? Severity::soon : Severity::improvement,
       fmt::format("{} stands at {:.2f} V, {} at {:.2f} V: up to {:.0f} A flow from one into the other "
                   "with nothing on, until they are level",
                   named(group, high), sources[high].volts, named(group, low), sources[low].volts, amperes),
       "Kirchhoff's voltage law, cables left out",
       "Charge them apart until they rest alike, then join them."});
}

void judge_sharing(BatteryGroup& group, const std::vector<StringSource>& sources) {
  double conductance = 0;
  std::size_t lazy = 0;
  for (std::size_t i = 0; i < sources.size(); ++i) {
    conductance += 1 / sources[i].ohms;
    if (sources[i].ohms > sources[lazy].ohms) lazy = i;
  }
  const double share = 1 / sources[lazy].ohms / conductance;
  const double fair = 1 / static_cast<double>(sources.size());
  if (fair < share * fair_share) return;
  if (group.members[lazy].size() == 1) group.weakest = group.members[lazy].front();
  group.findings.push_back(
      {"unequal-sharing", Severity::improvement,
       fmt::format("of a load {} carries {:.0f} % where {:.0f} % would be its part: the others work harder "
                   "and age sooner",
                   named(group, lazy), 100 * share, 100 * fair),
       "current divides as 1/R, cables left out",
       "See to its resistance, or to unlike batteries side by side."});
}

}  // namespace

void judge_series(BatteryGroup& group, const Members& members, const Indices& batteries) {
  judge_chemistry(group, members, batteries);
  judge_label(group, members, batteries, "unlike-capacity", "Ah", Severity::soon,
              "The smallest is emptied and reversed by the others: use equal batteries in a string.",
              ampere_hours);
  judge_age(group, members, batteries);
  name_weakest(group, members, batteries);
}

void judge_parallel(BatteryGroup& group, const Members& members, const std::vector<Indices>& strings) {
  Indices all;
  std::vector<StringSource> sources;
  for (const auto& string : strings) {
    all.insert(all.end(), string.begin(), string.end());
    sources.push_back(source_of(members, string));
  }
  const bool alike = judge_nominal(group, sources);
  judge_chemistry(group, members, all);
  if (strings.front().size() == 1)
    judge_label(group, members, all, "unlike-capacity", "Ah", Severity::improvement,
                "They share neither load nor charge evenly: use equal batteries.", ampere_hours);
  judge_age(group, members, all);
  if (!alike) return;
  judge_circulation(group, sources);
  judge_sharing(group, sources);
}

}  // namespace ohmtrail::diagnose::bank
