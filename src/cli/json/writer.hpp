#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "cli/json/row.hpp"

namespace ohmtrail::cli {

/// Writes one JSON text piece by piece, two spaces a level, each row on one line. Numbers read back to the
/// same double; characters that a terminal would obey are written as \u escapes; bytes that are not UTF-8
/// become �.
class JsonWriter {
 public:
  void open_object() { open('{'); }
  void open_array() { open('['); }
  /// Closes the innermost object or array.
  void close();
  void key(std::string_view name);
  void value(const Value& value);
  void field(std::string_view name, const Value& value) {
    key(name);
    this->value(value);
  }
  /// `name: [row, …]`
  void rows(std::string_view name, const std::vector<Row>& rows);
  /// The whole text, ended by a line feed; everything must have been closed.
  [[nodiscard]] std::string finish();

 private:
  void open(char bracket);
  void next();
  void new_line();

  std::string text_;
  std::vector<char> open_;
  bool first_ = true, after_key_ = false;
};

/// "…" with everything escaped that JSON or a terminal could take for a command.
[[nodiscard]] std::string json_string(std::string_view text);

}  // namespace ohmtrail::cli
