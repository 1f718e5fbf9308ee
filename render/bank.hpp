#pragma once
#include "ohmtrail/diagnose/bank.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "render/scene.hpp"

namespace ohmtrail::render {

/// Whether any battery was tested at all.
[[nodiscard]] bool has_checks(const netlist::System& system);

/// The batteries' tests side by side, `width` wide: voltage at rest and under load, whether the load test was
/// passed, the specific gravity of each cell against the band of a healthy charged one, temperature.
[[nodiscard]] Scene bank_picture(const netlist::System& system, const diagnose::Bank& judged, double width);

/// The same as a page of its own, with its heading and margins.
[[nodiscard]] Scene bank_page(const netlist::System& system, const diagnose::Bank& judged);

}  // namespace ohmtrail::render
