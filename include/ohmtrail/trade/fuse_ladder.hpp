#pragma once
#include <optional>
#include <string>
#include <vector>

#include "ohmtrail/trade/words.hpp"
#include "ohmtrail/units/quantity.hpp"

/// Fuse ratings as they are sold, and what a fuse of a form can stand.
namespace ohmtrail::trade {

/// Ratings of one form, rising. Blade: ISO 8820-3 types C and E; bolt-down: ISO 8820-5 strips; cartridge: NEC
/// 240.6(A) up to 600 A; in-line: glass tubes, common practice.
[[nodiscard]] const std::vector<units::Current>& fuse_ratings(FuseForm form);

/// Ratings of every form together, rising, each once.
[[nodiscard]] const std::vector<units::Current>& all_fuse_ratings();

/// The form usual for a rating: blade up to 40 A, bolt-down up to 500 A, cartridge above (common practice).
[[nodiscard]] FuseForm usual_fuse_form(units::Current rating);

/// The smallest rating not below `at_least`; empty if the ladder ends first.
[[nodiscard]] std::optional<units::Current> rating_at_least(const std::vector<units::Current>& ladder,
                                                            units::Current at_least);

/// The largest rating not above `at_most`; empty if the ladder starts above.
[[nodiscard]] std::optional<units::Current> rating_at_most(const std::vector<units::Current>& ladder,
                                                           units::Current at_most);

/// The current that a fuse of this form breaks and the voltage it is made for, where the body does not say.
struct FuseLimits {
  units::Current breaks;
  units::Voltage volts;
  std::string source;
};
[[nodiscard]] FuseLimits usual_fuse_limits(FuseForm form);

/// At so many per cent of its rating a blade fuse opens no sooner and no later than this.
struct TimeGate {
  double share_of_rating;  ///< 1.35 for 135 %
  units::Time no_sooner;
  std::optional<units::Time> no_later;
};
/// From memory: ISO 8820-3 / SAE J1284, blade types C and F, low confidence. Rising shares.
[[nodiscard]] const std::vector<TimeGate>& blade_time_gates();

/// Shortest and longest time to open at a current, between the gates by a power law; empty below 110 % of the
/// rating, where it need never open, and `no_later` empty below 135 %.
[[nodiscard]] std::optional<TimeGate> blade_opening_time(units::Current rating, units::Current current);

}  // namespace ohmtrail::trade
