#pragma once
#include <cstddef>
#include <string>
#include <string_view>

namespace ohmtrail::cli {

/// One character taken off the front of a text.
struct Character {
  std::string_view bytes;
  char32_t code = 0;
  bool valid = false;  ///< false: one byte that is not UTF-8
};

/// The first character of `text`, which must not be empty; `text` loses it.
[[nodiscard]] Character take_character(std::string_view& text);

/// False for what a terminal would obey or could not show: controls, marks of direction, unassigned
/// characters.
[[nodiscard]] bool may_be_shown(const Character& character);

/// `text` as it may be shown on a terminal: one line, without control characters, escape sequences, marks
/// that change the direction of writing, or bytes that are not UTF-8. Line feeds and tabs become spaces, all
/// else of the kind �.
[[nodiscard]] std::string printable(std::string_view text);

/// `printable` with the end of a line.
[[nodiscard]] inline std::string printable_line(std::string_view text) {
  return printable(text) + '\n';
}

/// Columns that `text` fills on a terminal: none for combining marks, two for wide characters.
[[nodiscard]] std::size_t columns_of(std::string_view text);

/// `text` cut to at most `columns`, its end replaced by … where something was cut.
[[nodiscard]] std::string fitted(std::string_view text, std::size_t columns);

}  // namespace ohmtrail::cli
