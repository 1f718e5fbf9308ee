#pragma once
#include <vector>

#include "render/wiring.hpp"

namespace ohmtrail::render {

/// How far along the way from supply to load every bar stands: the voltage it would have if every lane were
/// the same resistor, supplies stood at 1 and loads at 0. Every bar on such a way has neighbours on both
/// sides, so that drawing in falling order leads each lane onwards. Bars apart from any supply or load: 0.5.
[[nodiscard]] std::vector<double> potentials(const Wiring& wiring);

/// All bars from supply to load: by falling potential, then by distance from the nearest supply, then by
/// number. Returns the place of each bar in that order.
[[nodiscard]] std::vector<int> flow_order(const Wiring& wiring);

}  // namespace ohmtrail::render
