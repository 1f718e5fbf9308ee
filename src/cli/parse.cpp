#include "cli/parse.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>

#include "cli/nearest.hpp"

namespace ohmtrail::cli {
namespace {

using Mistakes = std::vector<std::string>;

std::vector<std::string> split(std::string_view text, char at) {
  std::vector<std::string> parts;
  std::size_t start = 0;
  for (std::size_t end; (end = text.find(at, start)) != std::string_view::npos; start = end + 1)
    parts.emplace_back(text.substr(start, end - start));
  parts.emplace_back(text.substr(start));
  return parts;
}

/// The name a person would type: the long one.
std::string spelled(const Option& option) {
  return split(option.name, ',').back();
}

std::string did_you_mean(std::string_view word, const std::vector<std::string>& known) {
  const std::string near = nearest(word, known);
  return near.empty() ? "" : fmt::format("; did you mean {}?", near);
}

std::string not_understood(const Command& command, const std::string& argument) {
  if (!argument.starts_with('-') || argument == "-")
    return fmt::format("\"{}\" is one argument too many", argument);
  std::vector<std::string> known{"--help"};
  for (const Option& option : command.options)
    if (!option.positional()) known.push_back(spelled(option));
  const std::string name = argument.substr(0, argument.find('='));
  const std::string hint = did_you_mean(name, known);
  return fmt::format("unknown option {}{}", name,
                     hint.empty() ? fmt::format("; ohmtrail {} --help lists them", command.name) : hint);
}

std::string wrong_word(const Option& option, const std::string& value) {
  const std::vector<std::string> words = split(option.value, '|');
  if (std::find(words.begin(), words.end(), value) != words.end()) return "";
  return fmt::format("{} \"{}\" is not one of {}{}", spelled(option), value, fmt::join(words, ", "),
                     did_you_mean(value, words));
}

std::string wrong_number(const Option& option, const Call& call) {
  const std::optional<double> number = call.number(option);
  if (!number || !std::isfinite(*number))
    return fmt::format("{} \"{}\" is not a number", spelled(option), call.text(option));
  if (option.whole && *number != std::floor(*number))
    return fmt::format("{} {} is not a whole number", spelled(option), call.text(option));
  if (*number >= option.lowest && *number <= option.highest) return "";
  const std::string limit = *number < option.lowest ? fmt::format("at least {}", option.lowest)
                                                    : fmt::format("at most {}", option.highest);
  return fmt::format("{} {} is out of range, expected {}", spelled(option), call.text(option), limit);
}

/// The option that was given although `option` excludes it, or nothing.
std::string wrong_company(const Command& command, const Option& option, const Call& call) {
  if (option.excludes.empty() || !call.has(option)) return "";
  for (const Option& other : command.options)
    if (spelled(other) == option.excludes && call.has(other))
      return fmt::format("{} and {} exclude each other", spelled(option), option.excludes);
  return "";
}

std::string wrong_value(const Option& option, const Call& call) {
  if (!call.has(option)) return option.required ? fmt::format("{} is missing", spelled(option)) : "";
  if (option.has_choices()) return wrong_word(option, call.text(option));
  if (option.number) return wrong_number(option, call);
  for (const std::string& value : call.texts(option))
    if (value.empty() && !option.is_switch()) return fmt::format("{} is empty", spelled(option));
  return "";
}

std::string in_our_words(const CLI::ParseError& error, const Command& command) {
  for (const Option& option : command.options) {
    // CLI11 names an option with its dashes in some messages and without in others.
    const std::string bare = spelled(option).substr(spelled(option).find_first_not_of('-'));
    if (option.positional() || std::string_view(error.what()).find(bare) == std::string_view::npos) continue;
    if (option.is_switch()) return fmt::format("{} takes no value", spelled(option));
    return fmt::format("{0} wants {1}, once: {0} {2}", spelled(option),
                       option.values == 1 ? "one value" : fmt::format("{} values", option.values),
                       option.value);
  }
  return error.what();
}

/// One CLI11 option a record.
std::vector<CLI::Option*> declare(CLI::App& app, const Command& command) {
  std::vector<CLI::Option*> declared;
  for (const Option& option : command.options) {
    const std::string name(option.name);
    if (option.is_switch()) {
      declared.push_back(
          app.add_flag(name)->disable_flag_override()->multi_option_policy(CLI::MultiOptionPolicy::TakeLast));
    } else {
      CLI::Option* one = app.add_option(name);
      if (option.repeats)
        one->expected(1, CLI::detail::expected_max_vector_size)->allow_extra_args(false);
      else
        one->expected(option.values);
      declared.push_back(one);
    }
  }
  return declared;
}

}  // namespace

tl::expected<Call, Mistakes> parse(const Command& command, std::span<const std::string> arguments) {
  CLI::App app;
  app.set_help_flag();
  app.allow_extras();
  const std::vector<CLI::Option*> declared = declare(app, command);
  try {
    app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::ParseError& error) {
    return tl::unexpected(Mistakes{in_our_words(error, command)});
  }

  Mistakes mistakes;
  for (const std::string& extra : app.remaining())
    if (extra != "--") mistakes.push_back(not_understood(command, extra));
  Call call;
  for (std::size_t i = 0; i < declared.size(); ++i)
    if (declared[i]->count() > 0) call.give(command.options[i], declared[i]->results());
  for (const Option& option : command.options) {
    if (std::string wrong = wrong_value(option, call); !wrong.empty()) mistakes.push_back(std::move(wrong));
    if (std::string wrong = wrong_company(command, option, call); !wrong.empty())
      mistakes.push_back(std::move(wrong));
  }
  if (!mistakes.empty()) return tl::unexpected(std::move(mistakes));
  return call;
}

}  // namespace ohmtrail::cli
