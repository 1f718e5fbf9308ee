#include "cli/text/sheet.hpp"

#include "cli/text/printable.hpp"
#include "cli/text/wrap.hpp"

namespace ohmtrail::cli {
namespace {

std::string_view without_end(std::string_view text) {
  return text.substr(0, text.size() - 1);
}

}  // namespace

void Sheet::line(std::string_view text, Ink ink) {
  text_ += inked(printable(text), ink, colour_) + '\n';
}

void Sheet::paragraph(std::string_view text, Ink ink, std::size_t indent) {
  item(std::string(indent, ' '), text, ink);
}

void Sheet::item(std::string_view mark, std::string_view text, Ink ink) {
  const std::size_t indent = columns_of(mark);
  const std::string words = with_words_broken(printable(text), page_columns - indent);
  const std::string lines = wrapped(words, page_columns, indent, "");
  text_ += std::string(mark) + inked(without_end(lines), ink, colour_) + '\n';
}

void Sheet::table(const Table& table) {
  text_ += table.text(page_columns, colour_);
}

}  // namespace ohmtrail::cli
