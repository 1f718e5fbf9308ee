#pragma once
#include <string_view>

#include "netlist/key.hpp"

namespace ohmtrail::netlist {

/// The doubt about a load that has an efficiency or an idle draw, but takes amperes or ohms.
[[nodiscard]] Remark efficiency_unused(std::string_view load);

}  // namespace ohmtrail::netlist
