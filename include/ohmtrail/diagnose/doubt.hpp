#pragma once
#include <optional>
#include <vector>

#include "ohmtrail/diagnose/hot_spot.hpp"
#include "ohmtrail/units/quantity.hpp"

/// How far the readings bear out a hot spot, and which are worth a person's time.
namespace ohmtrail::diagnose {

/// Beyond these a chance is told as "over 99 %" and "under 1 %": readings always leave a rest of doubt.
inline constexpr double nearly_sure = 0.995, hardly = 0.01;

/// Whether a battery's own tests leave nothing but to replace it, or to keep off it.
[[nodiscard]] bool condemned(BatteryState state);

/// The chance that this is at fault, 0 to 1: of its whole conductor where the readings do not tell the part.
/// Empty where no readings were inferred, and of a cable too thin, a battery not full or one that its own
/// tests condemn, which no reading has to bear out.
[[nodiscard]] std::optional<double> odds_of(const HotSpot& spot);

/// More likely sound than at fault, as far as the readings tell.
[[nodiscard]] bool in_doubt(const HotSpot& spot);

/// Those that a person has to be told of, in their order, ranked anew from 1. Left out is what is less likely
/// than 5 %; what is in doubt, not too hot and would give back less than 0.1 % of `nominal`; and a battery
/// that has more resistance than a new one, yet passes its tests.
[[nodiscard]] std::vector<HotSpot> worth_telling(const std::vector<HotSpot>& spots, units::Voltage nominal);

}  // namespace ohmtrail::diagnose
