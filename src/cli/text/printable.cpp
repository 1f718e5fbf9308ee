#include "cli/text/printable.hpp"

#include <clocale>
#include <cwchar>

namespace ohmtrail::cli {
namespace {

constexpr std::string_view replacement = "\xEF\xBF\xBD";
constexpr std::string_view ellipsis = "…";

std::size_t length_by_first_byte(unsigned char first) {
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first <= 0xDF) return 2;
  if (first >= 0xE0 && first <= 0xEF) return 3;
  return first >= 0xF0 && first <= 0xF4 ? 4 : 0;
}

bool overlong_or_surrogate(char32_t code, std::size_t length) {
  return (length == 3 && (code < 0x800 || (code >= 0xD800 && code <= 0xDFFF))) ||
         (length == 4 && (code < 0x10000 || code > 0x10FFFF));
}

bool changes_direction(char32_t code) {
  return code == 0x061C || code == 0x200E || code == 0x200F || (code >= 0x202A && code <= 0x202E) ||
         (code >= 0x2066 && code <= 0x2069);
}

/// Terminals agree with the C library's table; C.UTF-8 is built into it.
int columns_of(char32_t code) {
  if (code < 0x20 || (code >= 0x7F && code < 0xA0)) return -1;
  if (code < 0x7F) return 1;
  static const locale_t utf8 = newlocale(LC_CTYPE_MASK, "C.UTF-8", nullptr);
  if (utf8 == nullptr) return code < 0x300 ? 1 : -1;
  const locale_t before = uselocale(utf8);
  const int columns = wcwidth(static_cast<wchar_t>(code));
  uselocale(before);
  return columns;
}

bool is_blank(char32_t code) {
  return code == '\n' || code == '\t' || code == '\r';
}

}  // namespace

Character take_character(std::string_view& text) {
  const auto first = static_cast<unsigned char>(text[0]);
  const std::size_t length = length_by_first_byte(first);
  Character character{text.substr(0, 1)};
  if (length == 1) {
    character.code = first;
    character.valid = true;
  } else if (length > 1 && length <= text.size()) {
    char32_t code = first & (0xFFU >> (length + 1));
    bool whole = true;
    for (std::size_t i = 1; i < length; ++i) {
      const auto next = static_cast<unsigned char>(text[i]);
      whole = whole && (next & 0xC0U) == 0x80U;
      code = (code << 6U) | (next & 0x3FU);
    }
    if (whole && !overlong_or_surrogate(code, length)) character = {text.substr(0, length), code, true};
  }
  text.remove_prefix(character.bytes.size());
  return character;
}

bool may_be_shown(const Character& character) {
  return character.valid && columns_of(character.code) >= 0 && !changes_direction(character.code);
}

std::string printable(std::string_view text) {
  std::string result;
  result.reserve(text.size());
  while (!text.empty()) {
    const Character character = take_character(text);
    if (may_be_shown(character))
      result += character.bytes;
    else if (character.valid && is_blank(character.code))
      result += ' ';
    else
      result += replacement;
  }
  return result;
}

std::size_t columns_of(std::string_view text) {
  std::size_t columns = 0;
  while (!text.empty()) {
    const int width = columns_of(take_character(text).code);
    columns += width < 0 ? 1 : static_cast<std::size_t>(width);
  }
  return columns;
}

std::string fitted(std::string_view text, std::size_t columns) {
  if (columns_of(text) <= columns) return std::string(text);
  if (columns == 0) return "";
  std::string result;
  std::size_t used = 0;
  while (!text.empty()) {
    const Character character = take_character(text);
    const int width = columns_of(character.code);
    used += width < 0 ? 1 : static_cast<std::size_t>(width);
    if (used > columns - 1) break;
    result += character.bytes;
  }
  return result + std::string(ellipsis);
}

}  // namespace ohmtrail::cli
