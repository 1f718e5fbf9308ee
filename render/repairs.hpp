#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "ohmtrail/diagnose/doubt.hpp"
#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::render {

/// Hot spots that one job cures: what is done to them is the same, word for word (both conductors of a run),
/// or the readings do not tell which part of a conductor it is.
struct Repair {
  std::vector<const diagnose::HotSpot*> parts;  ///< by rank; never empty
  [[nodiscard]] const diagnose::HotSpot& first() const { return *parts.front(); }
  /// Several parts that are cured alike, each with figures of its own.
  [[nodiscard]] bool of_each() const { return parts.size() > 1 && !unparted(); }
  /// The readings do not bear it out: more likely sound than at fault.
  [[nodiscard]] bool in_doubt() const { return diagnose::in_doubt(first()); }
  [[nodiscard]] bool unparted() const { return first().unparted.has_value(); }
};

/// In the order of their worst parts. Points into `spots`.
[[nodiscard]] std::vector<Repair> repairs(const std::vector<diagnose::HotSpot>& spots);

[[nodiscard]] std::string where(const netlist::System& system, const Repair& repair);

/// What is wrong there; no more than is known.
[[nodiscard]] std::string_view what_it_is(const Repair& repair);

/// What is to be done, as on the hot spot; where the readings do not tell the part, to read first; where they
/// do not bear it out, to read on and not to undo it.
[[nodiscard]] std::string what_to_do(const netlist::System& system, const Repair& repair);

/// "1, 2"
[[nodiscard]] std::string ranks(const Repair& repair);

}  // namespace ohmtrail::render
