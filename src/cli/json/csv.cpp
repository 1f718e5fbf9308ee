#include "cli/json/csv.hpp"

#include <charconv>

#include "cli/text/printable.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

bool is_number(std::string_view text) {
  if (text.starts_with('+')) text.remove_prefix(1);
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  return error == std::errc{} && end == text.data() + text.size() && std::isfinite(value);
}

bool is_blank(const Character& character) {
  return character.code <= ' ' || character.code == 0xA0 || character.code == 0x3000 ||
         columns_of(character.bytes) == 0;
}

/// Whether a spreadsheet could take the text for a formula: by its first character that is seen, in either
/// width, or by a tab or line end before it.
bool begins_a_formula(std::string_view text) {
  if (!text.empty() && std::string_view("\t\r\n").find(text.front()) != std::string_view::npos) return true;
  while (!text.empty()) {
    const Character first = take_character(text);
    if (!is_blank(first))
      return std::u32string_view(U"=+-@＝＋－＠").find(first.code) != std::u32string_view::npos;
  }
  return false;
}

std::string quoted(std::string_view text) {
  std::string safe = printable(text);
  if (begins_a_formula(text) && !is_number(text)) safe.insert(safe.begin(), '\'');
  if (safe.find_first_of(",\"") == std::string::npos) return safe;
  std::string cell = "\"";
  for (const char c : safe) cell += c == '"' ? std::string("\"\"") : std::string(1, c);
  return cell + '"';
}

/// Cells and headings of one row, flattened.
struct Flat {
  std::vector<std::string> names, cells;

  void add(const std::string& name, const Value& value) {
    if (const auto* inner = std::get_if<Row>(&value)) {
      for (const Field& field : *inner) add(name + "_" + field.name, field.value);
      return;
    }
    names.push_back(name);
    cells.push_back(cell(value));
  }

  static std::string cell(const Value& value) {
    if (const auto* number = std::get_if<double>(&value)) return units::exact(*number);
    if (const auto* integer = std::get_if<std::int64_t>(&value)) return std::to_string(*integer);
    if (const auto* truth = std::get_if<bool>(&value)) return *truth ? "true" : "false";
    if (const auto* text = std::get_if<std::string>(&value)) return quoted(*text);
    if (const auto* list = std::get_if<std::vector<std::string>>(&value)) return quoted(joined(*list));
    return "";
  }

  static std::string joined(const std::vector<std::string>& list) {
    std::string text;
    for (const std::string& item : list) {
      if (!text.empty()) text += "; ";
      text += item;
    }
    return text;
  }
};

std::string line(const std::vector<std::string>& cells) {
  std::string text;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (i > 0) text += ',';
    text += cells[i];
  }
  return text + "\r\n";
}

/// The cells in the order of `names`; a null where others have a row in a row leaves its cells empty.
std::string ordered(const Flat& flat, const std::vector<std::string>& names) {
  std::vector<std::string> cells(names.size());
  for (std::size_t i = 0; i < names.size(); ++i)
    for (std::size_t j = 0; j < flat.names.size(); ++j)
      if (flat.names[j] == names[i]) cells[i] = flat.cells[j];
  return line(cells);
}

}  // namespace

std::string csv(const std::vector<Row>& rows, const std::vector<std::string>& names) {
  std::string text = line(names);
  for (const Row& row : rows) {
    Flat flat;
    for (const Field& field : row) flat.add(field.name, field.value);
    text += ordered(flat, names);
  }
  return text;
}

}  // namespace ohmtrail::cli
