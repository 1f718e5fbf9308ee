#pragma once
#include "ohmtrail/diagnose/split.hpp"
#include "render/scene.hpp"

namespace ohmtrail::render {

/// A sag as one bar, `width` wide: what each kind of part takes of it, to scale, largest first, each named
/// below with its volts.
[[nodiscard]] Scene split_bar(const diagnose::Parts& parts, double width, bool from_charger = false);

struct NamedPart {
  std::string_view name;
  double volts;
};

/// In words, largest first. `from_charger`: the supply is a charger, not a battery.
[[nodiscard]] std::vector<NamedPart> named_parts(const diagnose::Parts& parts, bool from_charger = false);

}  // namespace ohmtrail::render
