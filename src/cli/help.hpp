#pragma once
#include <string>

#include "cli/command.hpp"

namespace ohmtrail::cli {

/// The list of commands.
[[nodiscard]] std::string help();
/// One command: what it does, its options, an example.
[[nodiscard]] std::string help(const Command& command);

}  // namespace ohmtrail::cli
