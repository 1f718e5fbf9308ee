#pragma once
#include <cstddef>
#include <string>
#include <string_view>

namespace ohmtrail::cli {

/// `text` as it may be shown on a terminal: one line, without control characters, escape sequences, marks that change
/// the direction of writing, or bytes that are not UTF-8. Line feeds and tabs become spaces, all else of the kind �.
[[nodiscard]] std::string printable(std::string_view text);

/// Columns that `text` fills on a terminal: none for combining marks, two for wide characters.
[[nodiscard]] std::size_t columns_of(std::string_view text);

/// `text` cut to at most `columns`, its end replaced by … where something was cut.
[[nodiscard]] std::string fitted(std::string_view text, std::size_t columns);

}  // namespace ohmtrail::cli
