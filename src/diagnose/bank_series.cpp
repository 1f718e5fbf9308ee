#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "diagnose/bank_alike.hpp"

/// Batteries in one string: which of them gives out first.

namespace ohmtrail::diagnose::bank {
namespace {

constexpr const char* practice = "common practice";
// Common practice: rested batteries of one string that differ by more than a tenth of charge.
constexpr double unequal_charge = 0.10;

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

std::string verdict_in_words(const BatteryVerdict& verdict) {
  std::string text(word(verdict.verdict));
  std::replace(text.begin(), text.end(), '-', ' ');
  return text;
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
                   weakest.id, verdict_in_words(weakest), weakest.charge.percent(), times_sound(weakest),
                   100 * others.charge, others.times_sound),
       practice, "See to it first; a new battery among old ones of a string is soon as weak as they are."});
}

}  // namespace

void judge_series(BatteryGroup& group, const Members& members, const Indices& batteries) {
  judge_chemistry(group, members, batteries);
  judge_capacity(group, members, batteries, Severity::soon,
                 "The smallest is emptied and reversed by the others: use equal batteries in a string.");
  judge_age(group, members, batteries);
  name_weakest(group, members, batteries);
}

}  // namespace ohmtrail::diagnose::bank
