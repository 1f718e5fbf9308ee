#pragma once
#include <string_view>

#include "cli/doors/files.hpp"
#include "cli/doors/terminal.hpp"

namespace ohmtrail::cli {

/// Everything outside that a command may touch; tests put memory in their place.
struct Doors {
  Files& files;
  Terminal& terminal;

  /// One line on standard error, made safe to show.
  void complain(std::string_view line) const;
};

}  // namespace ohmtrail::cli
