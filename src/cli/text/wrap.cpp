#include "cli/text/wrap.hpp"

#include "cli/text/printable.hpp"

namespace ohmtrail::cli {

std::string with_words_broken(std::string_view text, std::size_t columns) {
  std::string result;
  std::size_t used = 0;
  while (!text.empty()) {
    const Character character = take_character(text);
    const std::size_t width = columns_of(character.bytes);
    if (used + width > columns && character.code != ' ') {
      result += ' ';
      used = 0;
    }
    used = character.code == ' ' ? 0 : used + width;
    result += character.bytes;
  }
  return result;
}

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
