#pragma once
#include <optional>
#include <span>

#include "ohmtrail/trade/fin.hpp"

/// How warm a joint becomes whose load runs for a while and then rests: the cables' metal must be warmed
/// before it gives anything off. Lug, stud and jacket store heat too; they are left out, on the hot side.
namespace ohmtrail::trade {

/// ρ c A / (h p): what a fin stores over what it gives off.
[[nodiscard]] units::Time fin_time_constant(const Fin& fin, units::HeatTransferCoefficient h);

/// Share of its steady rise that the root of a cold infinite fin has after steady heat for `time`: erf
/// √(t/τ). From memory: Carslaw and Jaeger, Conduction of Heat in Solids: rod with loss at its surface,
/// constant flux.
[[nodiscard]] double fin_warming(units::Time time, units::Time time_constant);

/// The same at the end of each turn, once turns have repeated for long: Σ erf √((on + kT)/τ) − erf √(kT/τ)
/// with T = on + rest. Empty rest: one turn, from cold.
[[nodiscard]] double fin_turn_share(units::Time on, std::optional<units::Time> rest,
                                    units::Time time_constant);

/// What heats a joint: some of it lasts, the rest comes in turns.
struct TurnHeat {
  units::Power lasting, in_turns;
  units::Time on;
  std::optional<units::Time> rest;  ///< empty: one turn, from cold
};

/// As `joint_rise`, at the end of a turn. Of unlike fins the mean √τ counts, weighted by what each conducts:
/// that is exact for a short turn and for a long one.
[[nodiscard]] units::TemperatureDifference joint_rise_in_turns(const TurnHeat& heat,
                                                               std::span<const Fin> fins,
                                                               units::Temperature ambient);

}  // namespace ohmtrail::trade
