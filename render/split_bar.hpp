#pragma once
#include "ohmtrail/diagnose/split.hpp"
#include "render/scene.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {

/// A sag as one bar, `width` wide: what each kind of part takes of it, to scale, largest first, each named
/// below with its volts.
[[nodiscard]] Scene split_bar(const diagnose::Parts& parts, double width, Source from = Source::battery);

struct NamedPart {
  std::string_view name;
  double volts;
};

/// In words, largest first. `from`: what feeds the load.
[[nodiscard]] std::vector<NamedPart> named_parts(const diagnose::Parts& parts, Source from = Source::battery);

}  // namespace ohmtrail::render
