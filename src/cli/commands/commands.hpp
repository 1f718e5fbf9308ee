#pragma once
#include <span>

#include "cli/command.hpp"

namespace ohmtrail::cli {

/// One line a command: add it here and in registry.cpp, and write commands/NAME.cpp.
namespace commands {
extern const Command starter;
extern const Command check;
extern const Command solve;
extern const Command rank;
extern const Command infer;
extern const Command compare;
extern const Command size;
extern const Command next;
extern const Command trace;
extern const Command bank;
extern const Command draw;
extern const Command report;
extern const Command tables;
extern const Command schema;
}  // namespace commands

/// Every command, in the order of the help.
[[nodiscard]] std::span<const Command* const> all_commands();

}  // namespace ohmtrail::cli
