#include "cli/manual.hpp"

#include <fmt/format.h>

#include "cli/commands/commands.hpp"

namespace ohmtrail::cli {
namespace {

/// Text as roff shows it: backslashes and dashes stay, no line begins a request.
std::string roff(std::string_view text) {
  std::string safe;
  for (const char c : text) {
    if (c == '\\')
      safe += "\\e";
    else if (c == '-')
      safe += "\\-";
    else
      safe += c;
  }
  return safe.starts_with('.') || safe.starts_with('\'') ? "\\&" + safe : safe;
}

std::string synopsis(const Command& command) {
  std::string line = fmt::format(".B ohmtrail {}\n", roff(command.name));
  bool others = false;
  for (const Option& option : command.options) {
    if (option.positional())
      line += option.required ? fmt::format(".I {}\n", roff(option.name))
                              : fmt::format(".RI [ {} ]\n", roff(option.name));
    else if (option.required)
      line += fmt::format(".B {}\n.I {}\n", roff(option.name.substr(0, option.name.find(','))),
                          roff(option.value));
    else
      others = true;
  }
  return line + (others ? ".RI [ options ]\n" : "");
}

std::string option_entry(const Option& option) {
  std::string name;
  for (const char c : option.name) name += c == ',' ? std::string(", ") : std::string(1, c);
  const std::string value = option.value.empty() ? "" : fmt::format(" \\fI{}\\fR", roff(option.value));
  return fmt::format(".TP\n\\fB{}\\fR{}\n{}\n", roff(name), value, roff(option.sentence));
}

std::string section_of(const Command& command) {
  std::string text =
      fmt::format(".SS {}\n{}.PP\n{}\n", roff(command.name), synopsis(command), roff(command.description));
  for (const Option& option : command.options) text += option_entry(option);
  for (const std::string_view example : command.examples)
    text += fmt::format(".PP\n.EX\n{}\n.EE\n", roff(example));
  return text;
}

constexpr std::string_view start =
    ".TH OHMTRAIL 1 \"\" \"ohmtrail " OHMTRAIL_VERSION
    "\" \"User Commands\"\n"
    ".SH NAME\n"
    "ohmtrail \\- find where a DC system loses its volts\n"
    ".SH SYNOPSIS\n"
    ".B ohmtrail\n"
    ".I command\n"
    ".RI [ file ]\n"
    ".RI [ options ]\n"
    ".SH DESCRIPTION\n"
    "Holds the DC system of a boat, camper or cart as a graph of batteries, lugs, cables, switches and "
    "loads. Solves its\n"
    "currents and voltage drops, works out from a few meter readings what each connection\\(aqs resistance "
    "really is, ranks\n"
    "what wastes voltage and heat, chooses cable, draws and reports.\n"
    ".PP\n"
    "Its results advise. They replace neither the local code nor a licensed electrician.\n"
    ".SH COMMANDS\n";

constexpr std::string_view end =
    ".SH EXIT STATUS\n"
    ".TP\n0\ndone\n"
    ".TP\n1\ndone, and with \\fB\\-\\-strict\\fR a limit is broken\n"
    ".TP\n2\nwrong call or wrong file\n"
    ".TP\n3\nthe network has no solution\n"
    ".TP\n4\nan output could not be written\n"
    ".SH ENVIRONMENT\n"
    ".TP\n.B NO_COLOR\nif set and not empty, no colours are shown\n"
    ".TP\n.B TERM\nno colours where it is unset or \\(lqdumb\\(rq\n";

}  // namespace

std::string manual() {
  std::string text(start);
  for (const Command* command : all_commands()) text += section_of(*command);
  return text.append(end);
}

}  // namespace ohmtrail::cli
