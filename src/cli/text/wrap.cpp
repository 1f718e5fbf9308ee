#include "cli/text/wrap.hpp"

#include "cli/text/printable.hpp"

namespace ohmtrail::cli {

std::string wrapped(std::string_view text, std::size_t width, std::size_t indent, std::string_view first) {
  std::string result(first);
  std::size_t column = indent;
  bool line_is_empty = true;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (word.empty()) continue;
    const std::size_t columns = columns_of(word);
    if (!line_is_empty && column + 1 + columns > width) {
      result += '\n';
      result.append(indent, ' ');
      column = indent;
      line_is_empty = true;
    }
    if (!line_is_empty) result += ' ';
    result += word;
    column += columns + (line_is_empty ? 0 : 1);
    line_is_empty = false;
  }
  return result + '\n';
}

}  // namespace ohmtrail::cli
