#pragma once
#include <functional>
#include <string>

#include "cli/doors/terminal.hpp"

namespace ohmtrail::cli {

/// How far something slow is, on standard error: nothing in the first second, then at most one line a second,
/// which writes over itself on a terminal.
class ProgressLine {
 public:
  /// `seconds`: a clock that only goes on.
  ProgressLine(Terminal& terminal, std::function<double()> seconds);
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;
  ~ProgressLine() { end(); }

  void tell(const std::string& text);
  /// Takes the line off the terminal again.
  void end();

 private:
  Terminal& terminal_;
  std::function<double()> seconds_;
  double last_;
  bool stands_ = false;
};

/// Seconds since some fixed moment.
[[nodiscard]] double steady_seconds();

}  // namespace ohmtrail::cli
