#include <fmt/format.h>

#include <algorithm>

#include "netlist/characters.hpp"
#include "ohmtrail/netlist/read.hpp"

namespace ohmtrail::netlist {

namespace {

/// Nothing that a terminal would take for a command, and no end of line.
std::string visible(std::string_view text) {
  if (!has_control_character(text)) return std::string(text);
  std::string shown;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    const auto next = i + 1 < text.size() ? static_cast<unsigned char>(text[i + 1]) : 0U;
    if (c == 0xC2 && next < 0xA0) {
      ++i;
      shown += ' ';
    } else if (text.compare(i, 3, "\u2028") == 0 || text.compare(i, 3, "\u2029") == 0) {
      i += 2;
      shown += ' ';
    } else {
      shown += c < 0x20 || c == 0x7F ? ' ' : text[i];
    }
  }
  return shown;
}

std::string_view line_of(std::string_view text, int line) {
  for (; line > 1; --line) {
    const auto end = text.find('\n');
    if (end == std::string_view::npos) return {};
    text.remove_prefix(end + 1);
  }
  text = text.substr(0, text.find('\n'));
  if (text.ends_with('\r')) text.remove_suffix(1);
  return text;
}

/// Byte where the n-th character begins (from 0), or the end.
std::size_t byte_of_character(std::string_view text, std::size_t n) {
  std::size_t at = 0;
  for (; at < text.size(); ++at) {
    if ((static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U) continue;
    if (n-- == 0) break;
  }
  return at;
}

}  // namespace

std::string format(const Problem& problem, std::string_view file) {
  const std::string_view pointer = problem.pointer.empty() ? "/" : std::string_view(problem.pointer);
  std::string line = problem.line > 0
                         ? fmt::format("{}:{}:{}: {}: ", file, problem.line, problem.column, pointer)
                         : fmt::format("{}: ", file);
  if (problem.severity == Problem::Severity::warning) line += "warning: ";
  line += problem.text;
  if (!problem.expected.empty()) line += ", expected " + problem.expected;
  if (!problem.hint.empty()) line += "; " + problem.hint;
  return visible(line);
}

std::string format_with_line(const Problem& problem, std::string_view file, std::string_view json,
                             int columns) {
  std::string text = format(problem, file);
  if (problem.line <= 0 || problem.column <= 0) return text;
  const std::string_view line = line_of(json, problem.line);
  const auto width = static_cast<std::size_t>(std::max(columns, 20)) - 4;
  const auto caret = static_cast<std::size_t>(problem.column) - 1;
  // Cut so that the caret stands at most at two thirds of the width.
  const std::size_t skipped = caret > width * 2 / 3 ? caret - width * 2 / 3 : 0;
  const std::size_t first = byte_of_character(line, skipped);
  const std::string_view rest = line.substr(first);
  const std::string shown = visible(rest.substr(0, byte_of_character(rest, width)));
  return fmt::format("{}\n    {}\n    {}^", text, shown, std::string(caret - skipped, ' '));
}

}  // namespace ohmtrail::netlist
