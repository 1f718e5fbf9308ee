#pragma once
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "ohmtrail/diagnose/bank_verdict.hpp"
#include "ohmtrail/diagnose/cause.hpp"
#include "ohmtrail/network/network.hpp"

namespace ohmtrail::diagnose {

/// What the running load that gains most gets back when one element alone is made good.
struct Recoverable {
  std::string load;
  double volts = 0;  ///< V
};

/// What a hot spot wastes above a sound element, over the hours a day that its cases are on.
struct DailyWaste {
  double watt_hours = 0;    ///< Wh a day
  double ampere_hours = 0;  ///< Ah a day at the system's nominal voltage
};

/// The case in which an element is hottest.
struct Hottest {
  std::string in_case;
  double celsius = 0;  ///< as `HotSpot::temperature`
};

/// The odds of an element are shared with the rest of its conductor: the readings do not tell which part it
/// is.
struct Unparted {
  std::string conductor;   ///< the run, or `RUN/return`
  double probability = 0;  ///< at least one part of it faulty
};

/// An element that wastes more than a sound one would. SI units; an empty optional is a value that does not
/// exist.
struct HotSpot {
  int rank = 0;    ///< from 1
  std::string id;  ///< of the element
  network::Role role = network::Role::wire;
  Cause cause = Cause::bad_joint;
  std::string in_case;                     ///< the case in which it recovers most
  double current = 0;                      ///< A, positive from `from` to `to`
  double drop = 0;                         ///< V, V(from) − V(to)
  double heat = 0;                         ///< W
  double resistance = 0;                   ///< Ω, the value used, after temperature
  std::optional<double> sound_resistance;  ///< Ω, at the same temperature
  std::optional<double> excess;            ///< Ω
  std::optional<Recoverable>
      recoverable;                    ///< empty: no load runs in the case, or no solution with it made good
  std::optional<double> temperature;  ///< °C; terminations, joints and contacts: an estimate, to 5 K
  std::optional<double> likelihood;   ///< 0 to 1; empty unless readings were inferred
  std::optional<Unparted> unparted;   ///< empty where the readings tell, or there are none
  /// Ids of elements and batteries that the readings hold for at fault with at least half of `likelihood`,
  /// where that is below one half and no other is more than twice as likely: the readings do not tell it from
  /// these.
  std::vector<std::string> rivals;
  /// What a battery's own checks say of it; empty: it has none, or is no battery.
  std::optional<BatteryState> own_tests;
  std::string fix;  ///< a short imperative sentence or two

  std::string better_gauge;  ///< undersized: smallest gauge that meets the limit, as printed; else empty
  std::optional<DailyWaste> waste;  ///< where a case says how many hours a day it lasts
  std::optional<Hottest> hottest;   ///< of all cases: the full load that the file knows of
  std::optional<std::string>
      heat_warning;  ///< too hot to touch, or above the insulation's rating; with the source
};

/// V that a hot spot loses. A battery's drop is its terminal voltage; what it loses is across its own
/// resistance.
[[nodiscard]] inline double lost_volts(const HotSpot& spot) {
  return std::abs(spot.role == network::Role::battery ? spot.current * spot.resistance : spot.drop);
}

}  // namespace ohmtrail::diagnose
