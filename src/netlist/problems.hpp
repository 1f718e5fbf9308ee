#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "netlist/tree.hpp"
#include "ohmtrail/netlist/read.hpp"

namespace ohmtrail::netlist {

/// What is said of one value.
struct Remark {
  std::string_view name;  ///< stable kebab-case name, a literal
  std::string text;       ///< what is wrong and the value met
  std::string expected;   ///< what was expected
  std::string hint;       ///< the likely remedy, the nearest known name
};

/// Gathers mistakes and doubts while a tree is read; their places are worked out only at the end.
class Problems {
 public:
  explicit Problems(const Tree& tree) : tree_(tree) {}

  void error(Value at, Remark remark) { add(Problem::Severity::error, at, Spot::value, std::move(remark)); }
  void warning(Value at, Remark remark) {
    add(Problem::Severity::warning, at, Spot::value, std::move(remark));
  }
  /// The key itself is the mistake.
  void error_at_key(Value at, Remark remark) {
    add(Problem::Severity::error, at, Spot::key, std::move(remark));
  }
  /// `key` is missing in an object.
  void missing(Value object, std::string_view key, Remark remark);

  [[nodiscard]] bool any_error() const { return errors_ > 0; }
  /// Whether one more would still be listed: texts and nearest names for the others need not be made.
  [[nodiscard]] bool listing() const { return found_.size() < most_kept; }

  /// In file order, with places; at most `most_listed` and one that counts the rest.
  [[nodiscard]] std::vector<Problem> errors() const { return listed(Problem::Severity::error); }
  [[nodiscard]] std::vector<Problem> warnings() const { return listed(Problem::Severity::warning); }

  static constexpr std::size_t most_listed = 100;

 private:
  enum class Spot { value, key, missing_key };
  struct Found {
    Problem::Severity severity;
    Value at;
    Spot spot;
    std::string missing_key;
    Remark remark;
    [[nodiscard]] std::uint32_t offset() const { return spot == Spot::key ? at.key_begin() : at.begin(); }
  };
  void add(Problem::Severity severity, Value at, Spot spot, Remark remark, std::string_view missing_key = {});
  [[nodiscard]] std::vector<Problem> listed(Problem::Severity severity) const;
  [[nodiscard]] Problem placed(const Found& found) const;

  static constexpr std::size_t most_kept = 2000;

  const Tree& tree_;
  std::vector<Found> found_;
  std::size_t errors_ = 0, warnings_ = 0;
};

/// Line and column of a byte, both from 1; a column is one character of UTF-8.
struct LineColumn {
  int line = 1, column = 1;
};
[[nodiscard]] LineColumn line_column(std::string_view text, std::uint32_t offset);

/// Puts line and column to problems whose byte offsets are known, in one pass over the text.
class LineCounter {
 public:
  explicit LineCounter(std::string_view text) : text_(text) {}
  /// Offsets must not fall.
  [[nodiscard]] LineColumn at(std::uint32_t offset);

 private:
  std::string_view text_;
  std::size_t counted_to_ = 0;
  LineColumn place_;
};

/// A value as it is quoted in a message: its source, cut to 40 characters, without control characters.
[[nodiscard]] std::string shown(Value value);
[[nodiscard]] std::string shown(std::string_view text);

}  // namespace ohmtrail::netlist
