#pragma once
#include <string>

#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::diagnose {

/// The given point that a derived one belongs to, `M@from` to where M begins; empty for a plain name.
[[nodiscard]] std::string stud_of(const netlist::System& system, const std::string& point);

/// Where a point is, for whoever holds the probe: `"bus+" (behind the panel)`, `the barrel of "M" at "bus+"`.
[[nodiscard]] std::string point_in_words(const netlist::System& system, const std::string& point);

/// `clamp round "M"`. Where the current runs against what the file counts as plus, from one end of an element
/// to the other, also which way the clamp's arrow points. `amperes` as the file counts them.
[[nodiscard]] std::string clamp_in_words(const netlist::System& system, const std::string& element,
                                         double amperes);

}  // namespace ohmtrail::diagnose
