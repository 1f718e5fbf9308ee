#pragma once
#include <deque>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "cli/doors/doors.hpp"
#include "cli/run.hpp"

namespace ohmtrail::test {

/// A disk in memory. "-" is standard input.
class MemoryFiles : public cli::Files {
 public:
  std::map<std::string, std::string> content;
  std::vector<std::string> written;          ///< paths, in order
  std::optional<std::string> write_failure;  ///< reason that every write fails with
  units::Time idle;                          ///< how long ago everything was written

  tl::expected<std::string, std::string> read(const std::string& path) override {
    const auto found = content.find(path);
    if (found == content.end()) return tl::unexpected(std::string("cannot be read: no such file"));
    return found->second;
  }
  tl::expected<void, std::string> write(const std::string& path, std::string_view bytes,
                                        cli::Overwrite) override {
    if (write_failure) return tl::unexpected(*write_failure);
    content[path] = std::string(bytes);
    written.push_back(path);
    return {};
  }
  [[nodiscard]] units::Time age(const std::string&) const override { return idle; }
};

/// A terminal that remembers, with a clock that only thinking moves: `"@61 0.3"` is typed after 61 s.
class MemoryTerminal : public cli::Terminal {
 public:
  std::string shown, complaints;
  std::deque<std::string> typed;
  bool colours = false;
  bool full = false;  ///< output cannot be written
  units::Time clock;

  void out(std::string_view text) override { shown += text; }
  void err(std::string_view text) override { complaints += text; }
  bool flush() override { return !full; }
  std::optional<std::string> read_line() override {
    cli::Typed typed_now = read_line_within(units::Time{1e9});
    return typed_now.how == cli::Typed::How::line ? std::optional(typed_now.text) : std::nullopt;
  }
  cli::Typed read_line_within(units::Time most) override {
    if (typed.empty()) return {cli::Typed::How::end_of_input, {}};
    double thinks = 0;
    std::string line = typed.front();
    if (line.starts_with('@')) {
      const std::size_t space = line.find(' ');
      thinks = std::stod(line.substr(1, space));
      line = space == std::string::npos ? "" : line.substr(space + 1);
    }
    if (thinks > most.si()) {
      typed.front() = "@" + std::to_string(thinks - most.si()) + " " + line;
      clock += most;
      return {cli::Typed::How::nothing, {}};
    }
    typed.pop_front();
    clock += units::Time{thinks};
    return {cli::Typed::How::line, line};
  }
  [[nodiscard]] units::Time now() const override { return clock; }
  [[nodiscard]] bool colour() const override { return colours; }
};

/// The whole program in memory.
struct Program {
  MemoryFiles files;
  MemoryTerminal terminal;

  int run(const std::vector<std::string>& arguments) { return cli::run(arguments, {files, terminal}); }
};

}  // namespace ohmtrail::test
