#pragma once
#include <cstddef>
#include <string>
#include <string_view>

namespace ohmtrail::cli {

/// `text` broken at spaces into lines of at most `width` columns, each ended by a line feed. The first line
/// starts at column `indent` (whoever calls has filled it, up to the text of `first`, which is put in front);
/// the others are indented.
[[nodiscard]] std::string wrapped(std::string_view text, std::size_t width, std::size_t indent,
                                  std::string_view first);

/// `text` with a blank put into every word that is wider than `columns`, for what wraps afterwards.
[[nodiscard]] std::string with_words_broken(std::string_view text, std::size_t columns);

}  // namespace ohmtrail::cli
