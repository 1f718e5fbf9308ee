#include "cli/completion.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cli/commands/commands.hpp"

namespace ohmtrail::cli {
namespace {

/// Both spellings of an option, parted by `between`.
std::string spellings(const Option& option, std::string_view between) {
  std::string text(option.name);
  if (const std::size_t comma = text.find(','); comma != std::string::npos) text.replace(comma, 1, between);
  return text;
}

std::string options_of(const Command& command) {
  std::string words = "--help";
  for (const Option& option : command.options)
    if (!option.positional()) words += " " + spellings(option, " ");
  return words;
}

/// What may follow an option: its words, nothing where only the user knows, or a file.
std::string value_cases(const Command& command) {
  std::string lines;
  for (const Option& option : command.options) {
    if (option.positional() || option.is_switch() || option.name == options::output.name) continue;
    std::string words(option.value);
    std::replace(words.begin(), words.end(), '|', ' ');
    const std::string reply =
        option.has_choices() ? fmt::format("$(compgen -W '{}' -- \"$cur\")", words) : "";
    lines += fmt::format("        {}) COMPREPLY=({}); compopt +o default; return ;;\n",
                         spellings(option, "|"), reply);
  }
  return lines;
}

std::string case_of(const Command& command) {
  std::string lines = fmt::format("    {})\n", command.name);
  const std::string values = value_cases(command);
  if (!values.empty()) lines += fmt::format("      case $prev in\n{}      esac\n", values);
  return lines + fmt::format("      words='{}' ;;\n", options_of(command));
}

}  // namespace

std::string bash_completion() {
  std::string names, cases;
  for (const Command* command : all_commands()) {
    names += std::string(command->name) + " ";
    cases += case_of(*command);
  }
  return fmt::format(
      "_ohmtrail() {{\n"
      "  local cur=${{COMP_WORDS[COMP_CWORD]}} prev=${{COMP_WORDS[COMP_CWORD-1]}} words=\n"
      "  COMPREPLY=()\n"
      "  if [ \"$COMP_CWORD\" -eq 1 ]; then\n"
      "    COMPREPLY=($(compgen -W '{}help --help --version' -- \"$cur\"))\n"
      "    return\n"
      "  fi\n"
      "  case ${{COMP_WORDS[1]}} in\n{}"
      "    help) COMPREPLY=($(compgen -W '{}' -- \"$cur\")); return ;;\n"
      "  esac\n"
      "  case $cur in -*) COMPREPLY=($(compgen -W \"$words\" -- \"$cur\")) ;; esac\n"
      "}}\n"
      "complete -o default -F _ohmtrail ohmtrail\n",
      names, cases, names);
}

}  // namespace ohmtrail::cli
