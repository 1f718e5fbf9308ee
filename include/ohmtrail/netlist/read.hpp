#pragma once
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::netlist {

/// One mistake or doubt in a file, with its place and its remedy.
struct Problem {
  enum class Severity { error, warning } severity = Severity::error;
  std::string name;     ///< stable kebab-case name of the kind of mistake
  std::string pointer;  ///< JSON pointer
  int line = 0, column = 0;  ///< from 1; 0: unknown
  std::string text;     ///< what is wrong and the value met
  std::string expected; ///< what was expected, and the nearest known name
};

/// A system and the doubts that came with it.
struct ReadSystem {
  System system;
  std::vector<Problem> warnings;
};

/// Reads and validates a whole netlist; on failure every mistake at once, in file order.
[[nodiscard]] tl::expected<ReadSystem, std::vector<Problem>> read(std::string_view json);

/// `FILE:line:column: /pointer: text, expected …`
[[nodiscard]] std::string format(const Problem& problem, std::string_view file);

}  // namespace ohmtrail::netlist
