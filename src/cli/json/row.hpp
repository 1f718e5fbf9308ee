#pragma once
#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace ohmtrail::cli {

struct Field;
/// Named values in order: one object of a JSON result and one line of a CSV table.
using Row = std::vector<Field>;

/// Nothing (null), true or false, a number, a text, a row of its own, or a list of texts.
using Value =
    std::variant<std::monostate, bool, double, std::int64_t, std::string, Row, std::vector<std::string>>;

struct Field {
  std::string name;
  Value value;
};

/// A number, or nothing where there is none (NaN and infinities stand for "does not exist").
[[nodiscard]] inline Value number(double value) {
  return std::isfinite(value) ? Value(value + 0.0) : Value();  // + 0.0 turns −0 into 0
}
[[nodiscard]] inline Value number(std::optional<double> value) {
  return value ? number(*value) : Value();
}
/// A text, or nothing where it is empty.
[[nodiscard]] inline Value text_or_null(std::string text) {
  return text.empty() ? Value() : Value(std::move(text));
}

}  // namespace ohmtrail::cli
