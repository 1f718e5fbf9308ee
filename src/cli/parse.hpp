#pragma once
#include <span>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "cli/call.hpp"
#include "cli/command.hpp"

namespace ohmtrail::cli {

/// Reads what follows the command's name; on failure every mistake found, one sentence each.
[[nodiscard]] tl::expected<Call, std::vector<std::string>> parse(const Command& command,
                                                                 std::span<const std::string> arguments);

}  // namespace ohmtrail::cli
