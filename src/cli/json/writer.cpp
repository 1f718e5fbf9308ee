#include "cli/json/writer.hpp"

#include <fmt/format.h>

#include "cli/text/printable.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

struct ValueText {
  std::string operator()(std::monostate) const { return "null"; }
  std::string operator()(bool value) const { return value ? "true" : "false"; }
  std::string operator()(double value) const { return units::exact(value); }
  std::string operator()(std::int64_t value) const { return std::to_string(value); }
  std::string operator()(const std::string& value) const { return json_string(value); }
  std::string operator()(const Row& row) const {
    std::string text = "{";
    for (const Field& field : row) {
      if (text.size() > 1) text += ", ";
      text += json_string(field.name) + ": " + std::visit(*this, field.value);
    }
    return text + "}";
  }
  std::string operator()(const std::vector<std::string>& list) const {
    std::string text = "[";
    for (const std::string& item : list) {
      if (text.size() > 1) text += ", ";
      text += json_string(item);
    }
    return text + "]";
  }
};

/// What JSON demands to be escaped.
std::string escaped(char32_t code, std::string_view bytes) {
  switch (code) {
    case '"':
      return "\\\"";
    case '\\':
      return "\\\\";
    case '\n':
      return "\\n";
    case '\t':
      return "\\t";
    case '\r':
      return "\\r";
    default:
      return code >= 0x10000 ? std::string(bytes) : fmt::format("\\u{:04x}", static_cast<unsigned>(code));
  }
}

}  // namespace

std::string json_string(std::string_view text) {
  std::string result = "\"";
  for (std::string_view rest = text; !rest.empty();) {
    const Character character = take_character(rest);
    if (!character.valid)
      result += "\xEF\xBF\xBD";
    else if (may_be_shown(character) && character.code != '"' && character.code != '\\')
      result += character.bytes;
    else
      result += escaped(character.code, character.bytes);
  }
  return result + '"';
}

void JsonWriter::new_line() {
  text_ += '\n';
  text_.append(2 * open_.size(), ' ');
}

void JsonWriter::next() {
  if (after_key_) {
    after_key_ = false;
    return;
  }
  if (open_.empty()) return;
  if (!first_) text_ += ',';
  new_line();
  first_ = false;
}

void JsonWriter::open(char bracket) {
  next();
  text_ += bracket;
  open_.push_back(bracket == '{' ? '}' : ']');
  first_ = true;
}

void JsonWriter::close() {
  const char bracket = open_.back();
  open_.pop_back();
  if (!first_) new_line();
  text_ += bracket;
  first_ = false;
}

void JsonWriter::key(std::string_view name) {
  next();
  text_ += json_string(name) + ": ";
  after_key_ = true;
}

void JsonWriter::value(const Value& value) {
  next();
  text_ += std::visit(ValueText{}, value);
}

void JsonWriter::rows(std::string_view name, const std::vector<Row>& rows) {
  key(name);
  open_array();
  for (const Row& row : rows) value(row);
  close();
}

std::string JsonWriter::finish() {
  return std::move(text_) + "\n";
}

}  // namespace ohmtrail::cli
