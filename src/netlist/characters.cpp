#include "netlist/characters.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace ohmtrail::netlist {

std::size_t character_count(std::string_view utf8) {
  return static_cast<std::size_t>(std::count_if(
      utf8.begin(), utf8.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

bool has_control_character(std::string_view utf8) {
  for (std::size_t i = 0; i < utf8.size(); ++i) {
    const auto c = static_cast<unsigned char>(utf8[i]);
    if (c < 0x20 || c == 0x7F) return true;
    const auto next = i + 1 < utf8.size() ? static_cast<unsigned char>(utf8[i + 1]) : 0U;
    if (c == 0xC2 && next < 0xA0) return true;  // U+0080 to U+009F
    if (c == 0xE2 && (utf8.compare(i, 3, "\u2028") == 0 || utf8.compare(i, 3, "\u2029") == 0)) return true;
  }
  return false;
}

namespace {

/// Short, and of letters, digits and marks of ASCII that no name reserves: nearly every name there is.
bool is_plain(std::string_view name) {
  return name.size() <= longest_name && !name.empty() && std::all_of(name.begin(), name.end(), [](char c) {
           return c >= 0x20 && c < 0x7F && c != '/' && c != '@';
         });
}

}  // namespace

bool tell_bad_name(Reader& reader, Value value, std::string_view name, NameUse use) {
  if (is_plain(name)) return true;
  const auto tell = [&](std::string_view kind, std::string text, std::string expected) {
    reader.problems.error(value, {kind, std::move(text), std::move(expected), ""});
    return false;
  };
  if (name.empty()) return tell("empty-name", "the name is empty", "at least one character");
  if (character_count(name) > longest_name) {
    return tell("name-too-long", fmt::format("the name has {} characters", character_count(name)),
                fmt::format("at most {}", longest_name));
  }
  if (has_control_character(name)) {
    return tell("control-character", "the name holds a control character",
                "text that can be seen on one line");
  }
  if (use == NameUse::definition && name.find_first_of("/@") != std::string_view::npos) {
    return tell("reserved-character", fmt::format("the name {} holds / or @", shown(value)),
                "a name without them: they are reserved for derived names such as M/wire and M@from");
  }
  return true;
}

}  // namespace ohmtrail::netlist
