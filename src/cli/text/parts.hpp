#pragma once
#include <array>
#include <string_view>

#include "ohmtrail/diagnose/split.hpp"

namespace ohmtrail::cli {

/// One share of a sag: its name, the letter that stands for it in bars, and its volts.
struct NamedPart {
  std::string_view name;
  char letter;
  double volts;
};

/// A charger that cannot hold its set point gives all it can: what it lacks is its own.
[[nodiscard]] inline std::array<NamedPart, 6> named(const diagnose::Parts& parts,
                                                    network::Role supply = network::Role::battery) {
  return {{{supply == network::Role::charger ? "charger below its set point" : "battery", 'B', parts.battery},
           {"cables", 'C', parts.wires},
           {"lugs", 'L', parts.terminations},
           {"joints", 'J', parts.joints},
           {"switches and fuses", 'S', parts.switchgear},
           {"isolators", 'I', parts.isolators}}};
}

}  // namespace ohmtrail::cli
