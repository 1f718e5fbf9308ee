#include "cli/help.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cli/commands/commands.hpp"
#include "cli/text/wrap.hpp"

namespace ohmtrail::cli {
namespace {

constexpr std::size_t page_width = 80;

std::string shown(const Option& option) {
  std::string text(option.name);
  if (const std::size_t comma = text.find(','); comma != std::string::npos)
    text.insert(text.begin() + static_cast<std::ptrdiff_t>(comma) + 1, ' ');
  if (!option.value.empty()) text += fmt::format(" {}", option.value);
  return text;
}

std::string option_lines(const Command& command) {
  std::size_t widest = 0;
  for (const Option& option : command.options) widest = std::max(widest, shown(option).size());
  widest = std::min<std::size_t>(widest, 26);
  std::string text;
  for (const Option& option : command.options) {
    const std::string name = shown(option);
    text += fmt::format("  {:<{}}", name, widest);
    if (name.size() > widest) text += fmt::format("\n  {:<{}}", "", widest);
    text += wrapped(option.sentence, page_width, widest + 4, "  ");
  }
  return text;
}

std::string usage(const Command& command) {
  std::string text = fmt::format("  ohmtrail {}", command.name);
  bool others = false;
  for (const Option& option : command.options) {
    if (option.positional())
      text += option.required ? fmt::format(" {}", option.name) : fmt::format(" [{}]", option.name);
    else if (option.required)
      text += fmt::format(" {} {}", option.name.substr(0, option.name.find(',')), option.value);
    else
      others = true;
  }
  return text + (others ? " [options]\n" : "\n");
}

}  // namespace

std::string help() {
  std::string text =
      "Ohmtrail finds where a DC system loses its volts.\n\n"
      "  ohmtrail COMMAND FILE [options]\n\n";
  for (const Command* command : all_commands())
    text += fmt::format("  {:<9}{}", command->name, wrapped(command->summary, page_width, 11, ""));
  return text +
         "\n  --help, --version; ohmtrail COMMAND --help shows its options and an example.\n"
         "\nExit: 0 done; 1 a limit is broken (with --strict); 2 wrong call or wrong file;\n"
         "3 the network has no solution; 4 an output could not be written.\n"
         "\nExample\n  ohmtrail rank boat.json\n";
}

std::string help(const Command& command) {
  std::string text = fmt::format("ohmtrail {}: {}\n\n{}\n", command.name, command.summary, usage(command));
  text += wrapped(command.description, page_width, 0, "") + "\n";
  text += option_lines(command);
  text += command.examples.size() > 1 ? "\nExamples\n" : "\nExample\n";
  for (const std::string_view example : command.examples) text += fmt::format("  {}\n", example);
  return text;
}

}  // namespace ohmtrail::cli
