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

[[nodiscard]] inline std::array<NamedPart, 6> named(const diagnose::Parts& parts) {
  return {{{"battery", 'B', parts.battery},
           {"cables", 'C', parts.wires},
           {"lugs", 'L', parts.terminations},
           {"joints", 'J', parts.joints},
           {"switches and fuses", 'S', parts.switchgear},
           {"isolators", 'I', parts.isolators}}};
}

}  // namespace ohmtrail::cli
