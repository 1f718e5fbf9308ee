#include <array>
#include <cstdint>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "cli/text/printable.hpp"
#include "fuzz/promise.hpp"
#include "unit/cli/memory_doors.hpp"

// The whole program on a netlist whose values run wild: read, solved, ranked, drawn, reported; or refused.

using namespace ohmtrail;
using fuzz::promise;

namespace {

const std::vector<std::vector<std::string>> calls{{"check", "f"},
                                                  {"solve", "f"},
                                                  {"solve", "f", "--json"},
                                                  {"solve", "f", "--csv"},
                                                  {"rank", "f"},
                                                  {"rank", "f", "--json"},
                                                  {"bank", "f"},
                                                  {"draw", "f", "-o", "a.svg"},
                                                  {"draw", "f", "-o", "a.svg", "--staircase"},
                                                  {"report", "f", "-o", "a.html"},
                                                  {"report", "f", "-o", "a.pdf"}};

/// FNV-1a: which call an input makes depends on its bytes alone.
std::size_t hash(const std::string& text) {
  std::uint64_t value = 14695981039346656037U;
  for (const char c : text) value = (value ^ static_cast<unsigned char>(c)) * 1099511628211U;
  return static_cast<std::size_t>(value >> 20U);
}

bool safe_to_show(std::string_view text) {
  while (!text.empty()) {
    const cli::Character character = cli::take_character(text);
    if (character.code != '\n' && character.code != '\r' && !cli::may_be_shown(character)) return false;
  }
  return true;
}

void check_json(const std::string& text) {
  const auto result = nlohmann::json::parse(text, nullptr, false);
  promise(!result.is_discarded(), "--json is JSON");
  if (result["result"] != "solve") return;
  for (const auto& one : result["cases"]) {
    promise(one["check"]["current_residual"] <= 1e-9, "currents add up");
    promise(one["check"]["power_residual"] <= 1e-9, "power in is power out");
  }
}

void check_outcome(const test::Program& program, int exit, bool json) {
  promise(exit == 0 || exit == 2 || exit == 3, "done, a mistake, or no solution");
  promise(exit != 2 || (program.terminal.shown.empty() && program.files.written.empty()),
          "a mistake shows no result");
  promise(exit != 2 || !program.terminal.complaints.empty(), "a mistake is told");
  promise(json || safe_to_show(program.terminal.shown), "nothing a terminal obeys is shown");
  promise(safe_to_show(program.terminal.complaints), "nothing a terminal obeys is complained");
  if (json && !program.terminal.shown.empty()) check_json(program.terminal.shown);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(reinterpret_cast<const char*>(data), size);
  const std::vector<std::string>& call = calls[hash(text) % calls.size()];
  test::Program program;
  program.files.content["f"] = text;
  const int exit = program.run(call);
  check_outcome(program, exit, call.back() == "--json");
  return 0;
}
