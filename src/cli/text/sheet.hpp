#pragma once
#include <cstddef>
#include <string>
#include <string_view>

#include "cli/text/ink.hpp"
#include "cli/text/table.hpp"

namespace ohmtrail::cli {

/// The widest line of a text for people.
inline constexpr std::size_t page_columns = 80;

/// What a command tells a person, put together line by line. Everything added is made safe to show.
class Sheet {
 public:
  explicit Sheet(bool colour) : colour_(colour) {}
  /// One line, as long as it is.
  void line(std::string_view text = "", Ink ink = Ink::plain);
  /// Wrapped at the page's width, every line indented.
  void paragraph(std::string_view text, Ink ink = Ink::plain, std::size_t indent = 0);
  /// A paragraph whose first line starts with `mark`; the others line up behind it.
  void item(std::string_view mark, std::string_view text, Ink ink = Ink::plain);
  void table(const Table& table);
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  bool colour_;
  std::string text_;
};

}  // namespace ohmtrail::cli
