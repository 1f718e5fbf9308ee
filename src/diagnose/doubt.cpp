#include "ohmtrail/diagnose/doubt.hpp"

namespace ohmtrail::diagnose {
namespace {

/// A hundredth of a volt at 12 V: no load feels it.
constexpr double least_share_of_nominal = 0.001;

/// In one of twenty cases it is this.
constexpr double least_odds = 0.05;

bool passed_its_tests(const HotSpot& spot) {
  return spot.cause == Cause::weak_battery && spot.own_tests == BatteryState::healthy;
}

bool not_worth_a_word(const HotSpot& spot, units::Voltage nominal) {
  const std::optional<double> odds = odds_of(spot);
  if (!odds) return passed_its_tests(spot);
  if (!in_doubt(spot)) return false;
  if (passed_its_tests(spot)) return true;
  const double back = spot.recoverable ? spot.recoverable->volts : 0;
  return *odds < least_odds || (!spot.heat_warning && back < least_share_of_nominal * nominal.si());
}

}  // namespace

bool condemned(BatteryState state) {
  return state == BatteryState::weak_cell || state == BatteryState::dry_plates ||
         state == BatteryState::do_not_test || state == BatteryState::sulphated_or_worn;
}

std::optional<double> odds_of(const HotSpot& spot) {
  if (spot.cause == Cause::undersized || spot.cause == Cause::discharged_battery) return std::nullopt;
  if (spot.own_tests && condemned(*spot.own_tests)) return std::nullopt;
  if (spot.unparted) return spot.unparted->probability;
  return spot.likelihood;
}

bool in_doubt(const HotSpot& spot) {
  constexpr double more_likely_than_not = 0.5;
  const std::optional<double> odds = odds_of(spot);
  return odds && *odds < more_likely_than_not;
}

std::vector<HotSpot> worth_telling(const std::vector<HotSpot>& spots, units::Voltage nominal) {
  std::vector<HotSpot> told;
  for (const HotSpot& spot : spots) {
    if (not_worth_a_word(spot, nominal)) continue;
    told.push_back(spot);
    told.back().rank = static_cast<int>(told.size());
  }
  return told;
}

}  // namespace ohmtrail::diagnose
