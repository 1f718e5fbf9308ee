#pragma once
#include "render/wiring.hpp"

namespace ohmtrail::render {

/// Finds the banks that `wiring.ties` join, puts each in an order in which every tie joins neighbours, and
/// turns the ties from left to right. False where there is no such order, or where strings differ in shape,
/// so that they cannot stand side by side.
[[nodiscard]] bool order_banks(Wiring& wiring);

}  // namespace ohmtrail::render
