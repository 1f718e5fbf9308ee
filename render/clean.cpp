#include "render/clean.hpp"

#include <cstddef>
#include <cstdint>

namespace ohmtrail::render {
namespace {

struct Decoded {
  std::uint32_t code = 0xFFFD;
  std::size_t length = 1;
};

/// One character of UTF-8 (RFC 3629): no overlong forms, no surrogates.
Decoded decode(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned lead = byte(at);
  if (lead < 0x80) return {lead, 1};
  const std::size_t length = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : lead >= 0xC2 ? 2 : 0;
  if (length == 0 || lead > 0xF4 || at + length > text.size()) return {};
  std::uint32_t code = lead & (0x7Fu >> length);
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(at + i) & 0xC0u) != 0x80) return {};
    code = code << 6 | (byte(at + i) & 0x3Fu);
  }
  constexpr std::uint32_t smallest[] = {0, 0, 0x80, 0x800, 0x10000};
  if (code < smallest[length] || code > 0x10FFFF || (code >= 0xD800 && code <= 0xDFFF)) return {};
  return {code, length};
}

bool is_control(std::uint32_t code) {
  return code < 0x20 || (code >= 0x7F && code < 0xA0);
}

/// Embeddings, overrides and isolates would reach beyond the name that holds them; line and paragraph
/// separators would break a line; non-characters are not allowed in XML.
bool is_dropped(std::uint32_t code) {
  return (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069) || code == 0x2028 ||
         code == 0x2029 || code == 0xFEFF || (code & 0xFFFE) == 0xFFFE;
}

}  // namespace

std::string clean(std::string_view text) {
  std::string shown;
  for (std::size_t at = 0; at < text.size();) {
    const Decoded next = decode(text, at);
    if (is_control(next.code))
      shown += ' ';
    else if (next.code == 0xFFFD)
      shown += "\xEF\xBF\xBD";
    else if (!is_dropped(next.code))
      shown += text.substr(at, next.length);
    at += next.length;
  }
  return shown;
}

std::string escaped(std::string_view text) {
  std::string safe;
  for (const char c : clean(text)) {
    switch (c) {
      case '&':
        safe += "&amp;";
        break;
      case '<':
        safe += "&lt;";
        break;
      case '>':
        safe += "&gt;";
        break;
      case '"':
        safe += "&quot;";
        break;
      case '\'':
        safe += "&#39;";
        break;
      default:
        safe += c;
    }
  }
  return safe;
}

}  // namespace ohmtrail::render
