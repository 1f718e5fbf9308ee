#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "ohmtrail/units/quantity.hpp"

namespace ohmtrail::cli {

/// What came of waiting for a line.
struct Typed {
  enum class How { line, end_of_input, nothing };
  How how = How::nothing;
  std::string text;
};

/// The door to whoever reads along. What comes from a file passes `printable` (text/printable.hpp) before it
/// goes through here.
class Terminal {
 public:
  virtual ~Terminal() = default;
  virtual void out(std::string_view text) = 0;
  virtual void err(std::string_view text) = 0;
  /// Shows everything given to `out` so far; false when some of it could not be written, now or before.
  [[nodiscard]] virtual bool flush() = 0;
  /// The next line typed, without its end; empty at the end of the input.
  virtual std::optional<std::string> read_line() = 0;
  /// The same, but waits no longer than that.
  virtual Typed read_line_within(units::Time most) = 0;
  /// A clock that never goes back.
  [[nodiscard]] virtual units::Time now() const = 0;
  /// Whether a terminal echoes what is typed; a pipe or a file does not.
  [[nodiscard]] virtual bool typed_by_hand() const { return false; }
  /// True on a terminal that shows colours, unless NO_COLOR forbids them (https://no-color.org).
  [[nodiscard]] virtual bool colour() const = 0;
  /// True where what goes to `err` stands on a terminal, so that a line may be written over.
  [[nodiscard]] virtual bool errors_are_seen() const { return false; }
};

}  // namespace ohmtrail::cli
