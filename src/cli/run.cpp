#include "cli/run.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "cli/commands/commands.hpp"
#include "cli/completion.hpp"
#include "cli/exit.hpp"
#include "cli/help.hpp"
#include "cli/manual.hpp"
#include "cli/nearest.hpp"
#include "cli/parse.hpp"

namespace ohmtrail::cli {
namespace {

const Command* find_command(std::string_view name) {
  const auto all = all_commands();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Command* c) { return c->name == name; });
  return found == all.end() ? nullptr : *found;
}

bool asks_for_help(std::span<const std::string> arguments) {
  const auto end = std::find(arguments.begin(), arguments.end(), "--");
  return std::any_of(arguments.begin(), end, [](const std::string& a) { return a == "--help" || a == "-h"; });
}

Exit unknown_command(const std::string& word, const Doors& doors) {
  std::vector<std::string> known{"--help", "--version"};
  for (const Command* command : all_commands()) known.emplace_back(command->name);
  const std::string near = nearest(word, known);
  doors.complain(
      fmt::format("ohmtrail: unknown {} \"{}\"; {}", word.starts_with('-') ? "option" : "command", word,
                  near.empty() ? "ohmtrail --help lists the commands" : "did you mean " + near + "?"));
  return Exit::mistake;
}

Exit run_command(const Command& command, std::span<const std::string> arguments, const Doors& doors) {
  if (asks_for_help(arguments)) {
    doors.terminal.out(help(command));
    return Exit::done;
  }
  const auto call = parse(command, arguments);
  if (call) return command.run(*call, doors);
  for (const std::string& mistake : call.error())
    doors.complain(fmt::format("ohmtrail {}: {}", command.name, mistake));
  return Exit::mistake;
}

Exit run_program(std::span<const std::string> arguments, const Doors& doors) {
  if (arguments.empty()) {
    doors.terminal.err(help());
    return Exit::mistake;
  }
  const std::string& first = arguments.front();
  const auto rest = arguments.subspan(1);
  if (first == "--version") {
    doors.terminal.out("ohmtrail " OHMTRAIL_VERSION "\n");
    return Exit::done;
  }
  if (first == "--man-page" || first == "--bash-completion") {
    doors.terminal.out(first == "--man-page" ? manual() : bash_completion());
    return Exit::done;
  }
  if (const Command* command = find_command(first)) return run_command(*command, rest, doors);
  if (first != "--help" && first != "-h" && first != "help") return unknown_command(first, doors);
  const Command* asked = rest.empty() ? nullptr : find_command(rest.front());
  if (!rest.empty() && asked == nullptr) return unknown_command(rest.front(), doors);
  doors.terminal.out(asked == nullptr ? help() : help(*asked));
  return Exit::done;
}

}  // namespace

int run(std::span<const std::string> arguments, const Doors& doors) {
  const Exit exit = run_program(arguments, doors);
  if (doors.terminal.flush()) return static_cast<int>(exit);
  doors.complain("ohmtrail: the output could not be written to the end");
  return static_cast<int>(Exit::not_written);
}

}  // namespace ohmtrail::cli
