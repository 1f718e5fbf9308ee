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
};

/// A terminal that remembers.
class MemoryTerminal : public cli::Terminal {
 public:
  std::string shown, complaints;
  std::deque<std::string> typed;
  bool colours = false;
  bool full = false;  ///< output cannot be written

  void out(std::string_view text) override { shown += text; }
  void err(std::string_view text) override { complaints += text; }
  bool flush() override { return !full; }
  std::optional<std::string> read_line() override {
    if (typed.empty()) return std::nullopt;
    std::string line = typed.front();
    typed.pop_front();
    return line;
  }
  [[nodiscard]] bool colour() const override { return colours; }
};

/// The whole program in memory.
struct Program {
  MemoryFiles files;
  MemoryTerminal terminal;

  int run(const std::vector<std::string>& arguments) { return cli::run(arguments, {files, terminal}); }
};

}  // namespace ohmtrail::test
