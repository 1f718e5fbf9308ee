#pragma once
#include <map>
#include <string>
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/units/quantity.hpp"

/// How long loads of short duty have run and must rest. Every `now` is of one clock that never goes back.
namespace ohmtrail::diagnose {

class DutyClock {
 public:
  using Ids = std::vector<std::string>;

  DutyClock() = default;
  explicit DutyClock(const netlist::System& system);

  /// Loads that the case runs and that may run for a short time only, file order.
  [[nodiscard]] Ids short_duty(const netlist::System& system, const netlist::Case& one) const;

  /// What all of them may still run, a hand's reaction kept back; several together are stopped together.
  [[nodiscard]] units::Time left(const Ids& loads, units::Time now) const;
  /// Until all of them may be switched on again; 0: at once.
  [[nodiscard]] units::Time rest(const Ids& loads, units::Time now) const;
  /// Their longest rest, and the shortest time that any of them may run.
  [[nodiscard]] units::Time whole_rest(const Ids& loads) const;
  [[nodiscard]] units::Time whole_run(const Ids& loads) const;

  /// Whether any of them has run since the search began.
  [[nodiscard]] bool has_run(const Ids& loads) const;
  /// Those that run at present.
  [[nodiscard]] const Ids& running() const { return running_; }
  void start(const Ids& loads, units::Time now);
  /// Stops whatever runs. A load whose time is used up rests from now on; any load has rested once it stood
  /// still for its whole rest.
  void stop(units::Time now);
  /// Counts a run that was heard of only afterwards.
  void spend(const Ids& loads, units::Time from, units::Time to);

 private:
  struct Load {
    units::Time on_for, rest_for;
    units::Time used;      ///< since it last rested
    units::Time rested;    ///< when what it has used counts no longer
    bool resting = false;  ///< its time is used up
  };
  [[nodiscard]] units::Time used(const Load& load, units::Time now) const;

  std::map<std::string, Load> loads_;
  Ids running_;
  units::Time since_;
};

/// "43 s", "8 min 50 s": above 90 s in steps of 10 s. What may run is rounded down, what must rest up.
[[nodiscard]] std::string run_in_words(units::Time left);
[[nodiscard]] std::string rest_in_words(units::Time rest);

}  // namespace ohmtrail::diagnose
