#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ohmtrail/diagnose/finding.hpp"
#include "ohmtrail/units/quantity.hpp"

namespace ohmtrail::diagnose {

/// One thing that a check says about a battery.
struct BankFinding {
  std::string name;                  ///< stable kebab-case name
  std::optional<Severity> severity;  ///< empty: nothing is wrong, it only has to be known
  std::string text;                  ///< with its numbers
  std::string source;
  std::string remedy;  ///< empty: nothing to do
};

enum class BatteryState {
  healthy,
  discharged,         ///< nothing else is known to be wrong: charge, then test again
  charge_first,       ///< a test under load was made, but too low a charge robs it of meaning
  sulphated_or_worn,  ///< full at rest, fails under load
  suspect,            ///< more resistance than a sound one, not yet failed
  weak_cell,          ///< one cell is dead or dying
  uneven_cells,       ///< cells differ: charge or equalise, then test again
  exposed_plates,     ///< moist plates above the acid: top up, charge, test again
  dry_plates,         ///< plates stood dry: replace
  do_not_test,        ///< frozen, bulged, melted or hot: hands off
  contradictory,      ///< the checks cannot all be right: repeat them
  not_enough_checks
};

/// The word of the results: "sulphated-or-worn" …
[[nodiscard]] std::string_view word(BatteryState state);

struct BatteryVerdict {
  std::string id;
  units::Fraction charge;
  std::string charge_from;
  units::Voltage emf;  ///< open-circuit voltage
  std::string emf_from;
  units::Resistance resistance;  ///< on the scale of seconds
  std::string resistance_from;
  std::optional<units::Resistance> sound_resistance;
  units::Voltage lost_per_100_amperes;
  BatteryState verdict = BatteryState::not_enough_checks;
  std::string in_words;  ///< one or two plain sentences
  std::vector<BankFinding> findings;
};

/// Whether a check said this of the battery: "load-test-failed" …
[[nodiscard]] bool has_finding(const BatteryVerdict& verdict, std::string_view name);

}  // namespace ohmtrail::diagnose
