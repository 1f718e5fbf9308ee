#pragma once
#include <optional>
#include <vector>

#include "ohmtrail/trade/words.hpp"
#include "ohmtrail/units/quantity.hpp"

/// What was written down about one battery: its label and what was measured on it. An empty optional: not
/// known.
namespace ohmtrail::trade {

/// Volts at the posts with nothing drawn.
struct RestFact {
  units::Voltage volts;
  std::optional<units::Time> rested;
  std::optional<units::Temperature> temperature;
  bool charging = false;  ///< a charger was on: the reading says nothing of the battery
};

/// Volts at the posts under a carbon pile or another known load.
struct LoadTestFact {
  std::optional<units::Voltage> before;
  units::Current amps;
  units::Voltage volts;
  std::optional<units::Time> duration;
  std::optional<units::Temperature> temperature;
  bool charging = false;
};

/// What a conductance tester shows.
struct TesterFact {
  std::optional<units::Current> cca;
  std::optional<units::Resistance> resistance;  ///< at the tester's frequency: less than over seconds
  std::optional<units::Temperature> temperature;
};

enum class CellLevel { above, at, below, dry };

struct CellFact {
  std::optional<double> specific_gravity;  ///< as read, not corrected
  std::optional<units::Voltage> volts;
  std::optional<units::Temperature> temperature;
  std::optional<CellLevel> level;
};

struct BatteryFacts {
  units::Voltage nominal;
  Chemistry chemistry = Chemistry::flooded;
  std::optional<units::Charge> capacity;  ///< at the 20 h rate
  std::optional<units::Current> cca;      ///< rated, SAE
  std::optional<units::Voltage> emf;
  std::optional<units::Resistance> resistance;
  std::optional<units::Fraction> state_of_charge;
  std::optional<RestFact> rest;
  std::optional<LoadTestFact> load_test;
  std::optional<TesterFact> tester;
  std::vector<CellFact> cells;
  std::optional<units::Temperature> temperature;  ///< of its surroundings, where no check names one
};

/// Cells in series: 2 V each for lead-acid; for lithium iron phosphate four in every 12 or 12.8 V.
[[nodiscard]] int cells_in(Chemistry chemistry, units::Voltage nominal);

/// The battery's own temperature: of the load test, the tester, the rest reading, the mean of its cells, its
/// surroundings, in this order; 25 °C where nothing is known.
[[nodiscard]] units::Temperature temperature_of(const BatteryFacts& facts);

}  // namespace ohmtrail::trade
