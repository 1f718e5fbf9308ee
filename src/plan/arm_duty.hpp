#pragma once
#include "plan/radial.hpp"

namespace ohmtrail::plan {

/// Narrows how warm loads of short duty leave each wire. Of its heat the part of the lasting current counts
/// in full and the rest by the share of its turn: with kept = (lasting current / whole current)² the rise is
/// kept + (1 − kept) · share of the steady one (`solve/short_duty`). Where a wire carries such loads alone
/// that is the share itself. Cases with several unlike duties stay as they are.
void narrow_by_duty(const network::Network& network, RadialCase& radial);

}  // namespace ohmtrail::plan
