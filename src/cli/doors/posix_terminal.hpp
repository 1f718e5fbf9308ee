#pragma once
#include "cli/doors/terminal.hpp"

namespace ohmtrail::cli {

/// Standard input, output and error of the process. Output is gathered and written in large pieces.
class PosixTerminal : public Terminal {
 public:
  PosixTerminal();
  ~PosixTerminal() override;
  void out(std::string_view text) override;
  void err(std::string_view text) override;
  bool flush() override;
  std::optional<std::string> read_line() override;
  Typed read_line_within(units::Time most) override;
  [[nodiscard]] units::Time now() const override;
  [[nodiscard]] bool typed_by_hand() const override;
  [[nodiscard]] bool colour() const override { return colour_; }
  [[nodiscard]] bool errors_are_seen() const override;

 private:
  void read_more();
  /// The next line of what has been read; empty where none is complete.
  std::optional<std::string> take_line();

  std::string gathered_, typed_;
  bool colour_ = false, failed_ = false, ended_ = false;
};

}  // namespace ohmtrail::cli
