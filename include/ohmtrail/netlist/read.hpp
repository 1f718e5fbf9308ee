#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::netlist {

/// One mistake or doubt in a file, with its place and its remedy.
struct Problem {
  enum class Severity { error, warning } severity = Severity::error;
  std::string name;          ///< stable kebab-case name of the kind of mistake
  std::string pointer;       ///< JSON pointer
  int line = 0, column = 0;  ///< from 1; 0: unknown
  std::string text;          ///< what is wrong and the value met
  std::string expected;      ///< what was expected
  std::string hint;          ///< the likely remedy, such as the nearest known name; may be empty

  friend bool operator==(const Problem&, const Problem&) = default;
};

/// A larger text is refused.
inline constexpr std::size_t largest_file_bytes = std::size_t{64} * 1024 * 1024;

/// A system and the doubts that came with it.
struct ReadSystem {
  System system;
  std::vector<Problem> warnings;
};

/// Reads and validates a whole netlist; on failure every mistake at once, in file order.
[[nodiscard]] tl::expected<ReadSystem, std::vector<Problem>> read(std::string_view json);

/// The one mistake of a text that is too large to read, for callers that know the size before the bytes.
[[nodiscard]] Problem too_large(std::size_t bytes);

/// One line without its end: `FILE:line:column: /pointer: text, expected …`. Control characters are left out.
[[nodiscard]] std::string format(const Problem& problem, std::string_view file);

/// The same for a terminal: below it the offending line of `json`, cut to `columns`, and a caret under the
/// place.
[[nodiscard]] std::string format_with_line(const Problem& problem, std::string_view file,
                                           std::string_view json, int columns = 80);

}  // namespace ohmtrail::netlist
