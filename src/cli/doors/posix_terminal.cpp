#include "cli/doors/posix_terminal.hpp"

#include <poll.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <cmath>
#include <cstdlib>
#include <utility>

namespace ohmtrail::cli {
namespace {

bool write_all(int file, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(file, text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return false;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

/// Empty where it is not set.
std::string_view value_of(const char* variable) {
  const char* value = std::getenv(variable);
  return value == nullptr ? std::string_view() : value;
}

bool shows_colour() {
  if (::isatty(STDOUT_FILENO) == 0 || !value_of("NO_COLOR").empty()) return false;
  const std::string_view terminal = value_of("TERM");
  return !terminal.empty() && terminal != "dumb";
}

}  // namespace

PosixTerminal::PosixTerminal() : colour_(shows_colour()) {}

PosixTerminal::~PosixTerminal() {
  PosixTerminal::flush();
}

void PosixTerminal::out(std::string_view text) {
  gathered_ += text;
  if (gathered_.size() > (1 << 16)) PosixTerminal::flush();
}

void PosixTerminal::err(std::string_view text) {
  PosixTerminal::flush();
  write_all(STDERR_FILENO, text);
}

bool PosixTerminal::flush() {
  if (!write_all(STDOUT_FILENO, gathered_)) failed_ = true;
  gathered_.clear();
  return !failed_;
}

bool PosixTerminal::typed_by_hand() const {
  return ::isatty(STDIN_FILENO) != 0;
}

bool PosixTerminal::errors_are_seen() const {
  return ::isatty(STDERR_FILENO) != 0;
}

units::Time PosixTerminal::now() const {
  const auto since = std::chrono::steady_clock::now().time_since_epoch();
  return units::Time{std::chrono::duration<double>(since).count()};
}

void PosixTerminal::read_more() {
  std::array<char, 4096> block;
  const ssize_t got = ::read(STDIN_FILENO, block.data(), block.size());
  if (got < 0 && errno == EINTR) return;
  if (got <= 0)
    ended_ = true;
  else
    typed_.append(block.data(), static_cast<std::size_t>(got));
}

std::optional<std::string> PosixTerminal::take_line() {
  const std::size_t end = typed_.find('\n');
  if (typed_.empty() || (end == std::string::npos && !ended_)) return std::nullopt;
  std::string line = typed_.substr(0, end);
  typed_.erase(0, end == std::string::npos ? end : end + 1);
  return line;
}

std::optional<std::string> PosixTerminal::read_line() {
  PosixTerminal::flush();
  auto line = take_line();
  for (; !line && !ended_; line = take_line()) read_more();
  return line;
}

Typed PosixTerminal::read_line_within(units::Time most) {
  PosixTerminal::flush();
  const units::Time until = now() + most;
  for (;;) {
    if (auto line = take_line()) return {Typed::How::line, std::move(*line)};
    if (ended_) return {Typed::How::end_of_input, {}};
    const double left = std::ceil((until - now()).si() * 1000);
    if (left <= 0) return {Typed::How::nothing, {}};
    pollfd input{STDIN_FILENO, POLLIN, 0};
    if (::poll(&input, 1, static_cast<int>(std::min(left, 1e9))) > 0) read_more();
  }
}

}  // namespace ohmtrail::cli
