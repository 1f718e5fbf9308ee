#pragma once
#include <optional>
#include <string>

#include "cure.hpp"
#include "ohmtrail/diagnose/cause.hpp"

namespace ohmtrail::diagnose {

/// What is wrong with one element in one case, and what it would be like made good.
struct Fault {
  Cause cause = Cause::bad_joint;
  std::optional<double> sound_resistance;  ///< Ω at the element's temperature in this case
  std::optional<double> excess;            ///< Ω at the same temperature
  Cure cure;
  std::string better_gauge;  ///< undersized only
};

/// The cure of one element: its sound resistance, for a wire of table value at the temperature it then takes.
/// The precondition is that its sound resistance is known.
[[nodiscard]] Cure made_good(const netlist::System& system, const network::Element& element, int index);

/// Sound resistance at the temperature that the element has in this case; empty: not known.
[[nodiscard]] std::optional<double> sound_now(const netlist::System& system,
                                              const solve::CaseSolution& solved, int element);

/// Above its sound resistance, or a battery low in charge; empty: neither, or not known, or not in use.
[[nodiscard]] std::optional<Fault> fault_of(const netlist::System& system, const solve::CaseSolution& solved,
                                            int element);

}  // namespace ohmtrail::diagnose
