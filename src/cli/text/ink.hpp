#pragma once
#include <string>
#include <string_view>

namespace ohmtrail::cli {

/// What a piece of text is, not which colour it has.
enum class Ink { plain, strong, faint, good, warning, bad };

/// `text` between the escape sequences of `ink`, or as it is without colour.
[[nodiscard]] inline std::string inked(std::string_view text, Ink ink, bool colour) {
  constexpr std::string_view codes[] = {"", "1", "2", "32", "33", "1;31"};
  const std::string_view code = codes[static_cast<int>(ink)];
  if (!colour || code.empty() || text.empty()) return std::string(text);
  return "\x1b[" + std::string(code) + "m" + std::string(text) + "\x1b[0m";
}

}  // namespace ohmtrail::cli
