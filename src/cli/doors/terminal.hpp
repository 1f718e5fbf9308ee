#pragma once
#include <optional>
#include <string>
#include <string_view>

namespace ohmtrail::cli {

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
  /// Whether a terminal echoes what is typed; a pipe or a file does not.
  [[nodiscard]] virtual bool typed_by_hand() const { return false; }
  /// True on a terminal that shows colours, unless NO_COLOR forbids them (https://no-color.org).
  [[nodiscard]] virtual bool colour() const = 0;
  /// True where what goes to `err` stands on a terminal, so that a line may be written over.
  [[nodiscard]] virtual bool errors_are_seen() const { return false; }
};

}  // namespace ohmtrail::cli
