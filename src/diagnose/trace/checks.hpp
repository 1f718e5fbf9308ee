#pragma once
#include <cstddef>
#include <optional>
#include <string>

#include "ohmtrail/diagnose/next.hpp"
#include "ohmtrail/netlist/system.hpp"

/// The readings that are taken again while the search goes on.
namespace ohmtrail::diagnose {

inline constexpr std::size_t opening_readings = 3;
inline constexpr std::size_t between_checks = 5;

/// After the opening and after every five readings the current and then the battery's voltage in `in_case`
/// are due again, each where it was first read; empty where neither is. Told by how many readings the file
/// holds, so that an interrupted search goes on at the same place.
[[nodiscard]] std::optional<NextOption> check_due(const netlist::System& system, const std::string& in_case);

}  // namespace ohmtrail::diagnose
