#pragma once
#include <optional>
#include <string>
#include <vector>

#include "ohmtrail/trade/words.hpp"
#include "ohmtrail/units/quantity.hpp"

/// How much current a wire may carry, and how warm a current makes it.
namespace ohmtrail::trade {

/// A wire as it lies.
struct WirePlace {
  Gauge gauge;
  units::Temperature insulation{105};  ///< temperature rating of the insulation
  bool engine_space = false;
  int bundle = 1;  ///< current-carrying conductors together
  ConductorKind conductor = ConductorKind::tinned_copper;
  std::optional<units::Voltage> system =
      std::nullopt;  ///< decides whether the bundling factor binds by regulation
};

struct Ampacity {
  units::Current amps;                         ///< with every factor applied
  units::Current table;                        ///< before the factors
  units::Temperature reference_ambient;        ///< ambient at which `amps` brings the wire to its rating
  units::TemperatureDifference rise_at_rated;  ///< insulation rating − reference ambient
  double engine_space_factor = 1;
  double bundling_factor = 1;
  /// 33 CFR 183.435(b) makes bundling binding only at 50 V and up; below it is good practice and applied all
  /// the same.
  bool bundling_binds = false;
  std::string basis;  ///< table, column, interpolation and factors, in words
};

/// Allowable current: 33 CFR 183.425 Table 5 for AWG and (by area) SAE, ISO 10133 Table A.1 for mm². Sizes
/// off the table are interpolated by area, aluminium is scaled to equal heat; `basis` says so.
[[nodiscard]] Ampacity ampacity(const WirePlace& place);

/// The AWG sizes of 33 CFR 183.425 Table 5, 18 to 4/0, thinnest first: those that a rewire may use where no
/// list of cable says otherwise.
[[nodiscard]] const std::vector<Gauge>& awg_with_ampacity();

/// T = ambient + (T_rated − T_ref) (I / I_ampacity)².
[[nodiscard]] units::Temperature wire_temperature(const Ampacity& rating, units::Temperature ambient,
                                                  units::Current current);

/// Time constant of a wire's warming: its heat capacity over what it gives off per kelvin, I²R over the rise
/// at its ampacity. R as the warming begins, so that short turns come out right: for them the stored heat is
/// all there is.
[[nodiscard]] units::Time thermal_time_constant(const WirePlace& place, const Ampacity& rating);

/// Share of its steady rise that a wire has at the end of each turn, once turns have repeated for long:
/// (1 − e^(−on/τ)) / (1 − e^(−(on + rest)/τ)); without a rest (1 − e^(−on/τ)), once from cold. Between 0 and
/// 1; 1 where the time constant is not positive: no heat is stored.
[[nodiscard]] double duty_share(units::Time on, std::optional<units::Time> rest, units::Time time_constant);

}  // namespace ohmtrail::trade
