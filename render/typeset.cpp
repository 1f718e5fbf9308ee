#include "render/typeset.hpp"

#include <algorithm>
#include <array>

namespace ohmtrail::render {
namespace {

constexpr std::string_view narrow_space = "\u202F", firm_space = "\u00A0";

constexpr std::array<std::string_view, 34> units{"%",  "V",  "mV", "µV",  "A",   "mA",  "kA",  "Ah",  "W",
                                                 "mW", "kW", "Wh", "Ω",   "mΩ",  "µΩ",  "mm2", "mm²", "mm",
                                                 "cm", "m",  "in", "ft",  "°C",  "K",   "h",   "min", "s",
                                                 "kg", "g",  "Nm", "AWG", "SAE", "CFR", "CCA"};
constexpr std::array<std::string_view, 8> bodies{"ISO", "IEC", "NEC", "CFR", "ABYC", "ASTM", "MIL", "AC"};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

/// The word that begins at `at`: letters, digits and signs up to a space or punctuation.
std::string_view word_at(std::string_view text, std::size_t at) {
  std::size_t end = at;
  while (end < text.size() && (is_letter(text[end]) || is_digit(text[end]) || text[end] == '%')) ++end;
  return text.substr(at, end - at);
}

std::string_view word_before(std::string_view text, std::size_t end) {
  std::size_t begin = end;
  while (begin > 0 && is_letter(text[begin - 1])) --begin;
  return text.substr(begin, end - begin);
}

template <std::size_t count>
bool is_one_of(const std::array<std::string_view, count>& list, std::string_view word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

/// What stands for the space at `at`.
std::string_view space_at(std::string_view text, std::size_t at) {
  if (at > 0 && is_digit(text[at - 1]) && is_one_of(units, word_at(text, at + 1))) return narrow_space;
  const bool number_follows = at + 1 < text.size() && is_digit(text[at + 1]);
  return number_follows && is_one_of(bodies, word_before(text, at)) ? firm_space : " ";
}

}  // namespace

std::string typeset(std::string_view text) {
  std::string set;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const bool square = text[at] == '2' && set.ends_with("mm") && word_at(text, at) == "2";
    if (text[at] == ' ')
      set += space_at(text, at);
    else if (square)
      set += "²";
    else
      set += text[at];
  }
  return set;
}

}  // namespace ohmtrail::render
