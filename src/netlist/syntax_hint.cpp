#include "netlist/syntax_hint.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

namespace ohmtrail::netlist {

namespace {

bool says(const SyntaxStop& stop, std::string_view words) {
  return stop.message.find(words) != std::string_view::npos;
}

/// First byte after the last good token and the separators that follow it.
std::uint32_t next_token(const SyntaxStop& stop) {
  const auto at = stop.text.find_first_not_of(" \t\r\n,:", stop.done);
  return static_cast<std::uint32_t>(std::min(at, stop.text.size()));
}

char last_separator(const SyntaxStop& stop) {
  const auto between = stop.text.substr(stop.done, next_token(stop) - stop.done);
  const auto at = between.find_last_of(",:");
  return at == std::string_view::npos ? ' ' : between[at];
}

bool is_word_start(char c) {
  return std::isalpha(static_cast<unsigned char>(c)) != 0 || c == '_';
}

/// The bare word, number or single sign that stands at a place.
std::string_view met(const SyntaxStop& stop) {
  const std::string_view rest = stop.text.substr(next_token(stop), 40);
  if (rest.starts_with('"')) return rest.substr(0, std::min(rest.find('"', 1), rest.size() - 1) + 1);
  const auto length = rest.find_first_of(" \t\r\n,:{}[]\"");
  return rest.substr(0, std::max<std::size_t>(1, std::min(length, rest.size())));
}

std::string printable(std::string_view text) {
  const auto plain = [](char c) { return c >= 0x20 && c < 0x7f; };
  if (std::all_of(text.begin(), text.end(), plain)) return std::string(text);
  return fmt::format("the byte 0x{:02X}", static_cast<unsigned char>(text.front()));
}

SyntaxError not_utf8(const SyntaxStop& stop) {
  const std::uint32_t at = stop.read_to == 0 ? 0 : stop.read_to - 1;
  return {"not-utf-8",
          at,
          stop.pointer,
          "the file is not UTF-8 text here",
          "UTF-8",
          "save it as UTF-8; other encodings write Ω, µ and letters with accents as different bytes"};
}

SyntaxError truncated(const SyntaxStop& stop) {
  const bool in_string = says(stop, "missing closing quote");
  return {"truncated-file",
          static_cast<std::uint32_t>(stop.text.size()),
          stop.pointer,
          in_string ? "the file ends inside a string" : "the file ends too early",
          stop.inside == Kind::array ? "\",\" or \"]\"" : "\",\" or \"}\"",
          in_string ? "a closing quote is missing" : "a closing bracket is missing, or the file was cut off"};
}

SyntaxError bad_string(const SyntaxStop& stop) {
  const std::uint32_t at = stop.read_to == 0 ? 0 : stop.read_to - 1;
  if (says(stop, "control character")) {
    return {"control-character",    at,
            stop.pointer,           "a string holds a line break, a tab or another control character",
            "a string on one line", "a closing quote may be missing; write \\n for a line break"};
  }
  return {"bad-escape",
          at,
          stop.pointer,
          "a backslash is followed by something that is no escape",
          R"(one of \" \\ \/ \b \f \n \r \t \uXXXX)",
          R"(a backslash itself is written \\)"};
}

std::string hint_for_value(std::string_view word) {
  std::string lower(word);
  std::transform(lower.begin(), lower.end(), lower.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  if (lower == "nan" || lower == "-nan" || lower.starts_with("inf") || lower.starts_with("-inf"))
    return "JSON has no such number: leave the key out if the value is not known";
  if (lower == "true" || lower == "yes") return "write true";
  if (lower == "false" || lower == "no") return "write false";
  if (lower == "none" || lower == "nil" || lower == "undefined")
    return "leave the key out if there is no value";
  if (word.front() == '\'') return "JSON takes double quotes only";
  if (word.starts_with("//") || word.starts_with("/*") || word.front() == '#')
    return R"(JSON has no comments: use "note")";
  if (word.starts_with("\xE2\x80")) return "curly quotes: JSON takes straight double quotes only";
  if (word.front() == '+' || word.front() == '.') return "write 0.5, not .5 or +0.5";
  if (std::isdigit(static_cast<unsigned char>(word.front())) != 0)
    return R"(a value with a unit stands in quotes: "6 ft"; decimals have a point)";
  if (is_word_start(word.front())) return "words stand in double quotes";
  return "";
}

SyntaxError bad_token(const SyntaxStop& stop) {
  const std::uint32_t at = next_token(stop);
  const std::string_view word = met(stop);
  const bool wants_key = stop.inside == Kind::object && last_separator(stop) != ':';
  SyntaxError error{"bad-syntax", at, stop.pointer, fmt::format("{} cannot stand here", printable(word)),
                    "",           ""};
  error.expected = wants_key ? "a key in double quotes" : "a value";
  error.hint = hint_for_value(word);
  const bool after_number =
      stop.done > 0 && std::isdigit(static_cast<unsigned char>(stop.text[stop.done - 1])) != 0;
  if (after_number && last_separator(stop) == ' ' && (is_word_start(word.front()) || word.front() == '%')) {
    error.expected = stop.inside == Kind::array ? "\",\" or \"]\"" : "\",\" or \"}\"";
    error.hint = "a value with its unit stands in quotes: \"6 ft\"";
  }
  return error;
}

SyntaxError unexpected_token(const SyntaxStop& stop) {
  SyntaxError error = bad_token(stop);
  const char separator = last_separator(stop);
  const char next = stop.text[error.offset];
  if (stop.inside == Kind::null) {
    error.text = "something follows after the end of the netlist";
    error.expected = "the end of the file";
    error.hint = "one bracket too many, or two netlists in one file";
  } else if (separator == ',' && (next == '}' || next == ']')) {
    error.hint = "the last one in a list has no comma after it";
  } else if (separator == ' ' && next != '}' && next != ']') {
    const bool after_key = says(stop, "object separator");
    error.expected = after_key ? "\":\"" : stop.inside == Kind::array ? "\",\" or \"]\"" : "\",\" or \"}\"";
    const bool plain_value =
        next == '"' || next == '{' || next == '[' || std::isdigit(static_cast<unsigned char>(next)) != 0;
    if (after_key)
      error.hint = "a colon stands between a key and its value";
    else if (plain_value)
      error.hint.clear();
    if (error.hint.empty()) error.hint = "a comma is missing before it";
  }
  return error;
}

}  // namespace

SyntaxError explain_syntax(const SyntaxStop& stop) {
  if (stop.text.starts_with("\xFF\xFE") || stop.text.starts_with("\xFE\xFF")) return not_utf8(stop);
  const bool at_end = next_token(stop) >= stop.text.size() || says(stop, "missing closing quote") ||
                      says(stop, "unexpected end of input");
  if (says(stop, "UTF-8") || says(stop, "BOM")) return not_utf8(stop);
  if (at_end) return truncated(stop);
  if (says(stop, "number overflow")) {
    return {"number-out-of-range",
            next_token(stop),
            stop.pointer,
            fmt::format("{} is too large a number", met(stop)),
            "a number below 1.8e308",
            "check the exponent"};
  }
  if (says(stop, "invalid string")) return bad_string(stop);
  if (says(stop, "invalid")) return bad_token(stop);
  return unexpected_token(stop);
}

}  // namespace ohmtrail::netlist
