#pragma once
#include <string_view>
#include <vector>

#include "cli/call.hpp"
#include "cli/doors/doors.hpp"
#include "cli/exit.hpp"
#include "cli/option.hpp"

namespace ohmtrail::cli {

/// One command of the program. Each lives in commands/NAME.cpp: its options, then read → build → solve →
/// print → exit code; it does no arithmetic. commands/registry.cpp lists them in the order of the help.
struct Command {
  std::string_view name;
  std::string_view summary;                ///< one line of the list of commands
  std::string_view description;            ///< one paragraph of its own help
  std::vector<Option> options;             ///< positional arguments first
  std::vector<std::string_view> examples;  ///< complete calls; a test runs each of them
  Exit (*run)(const Call&, const Doors&);
};

}  // namespace ohmtrail::cli
