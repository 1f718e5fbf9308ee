#pragma once
#include <span>
#include <string>

#include "cli/doors/doors.hpp"

namespace ohmtrail::cli {

/// The whole program: what follows its name in, the exit code out, everything else through the doors.
[[nodiscard]] int run(std::span<const std::string> arguments, const Doors& doors);

}  // namespace ohmtrail::cli
