#include <gmock/gmock.h>

#include "cli/commands/commands.hpp"
#include "support/process.hpp"

// The manual page and the completion, which are made of the same records as the help.
namespace {

using namespace ohmtrail::test;
using ohmtrail::cli::all_commands;
using testing::HasSubstr;

TEST(Manual, IsRightInTheEyesOfAManualReader) {
  const TemporaryFolder folder;
  const Ended ended = run_shell("ohmtrail --man-page >a.1 && mandoc -T lint -W error a.1", folder.path());
  EXPECT_EQ(ended.exit, 0) << ended.out << ended.err;
}

TEST(Manual, TellsOfEveryCommandOptionAndExample) {
  const std::string source = run_shell("ohmtrail --man-page", "/").out;
  for (const auto* command : all_commands()) {
    EXPECT_THAT(source, HasSubstr(".SS " + std::string(command->name) + "\n"));
    for (const auto& option : command->options) {
      std::string name(option.name.substr(0, option.name.find(',')));
      for (std::size_t at = 0; (at = name.find('-', at)) != std::string::npos; at += 2)
        name.replace(at, 1, "\\-");
      EXPECT_THAT(source, HasSubstr("\\fB" + name)) << command->name;
    }
  }
}

/// What bash offers for the last of these words.
std::string completed(const std::string& words, int last) {
  const Ended ended =
      run_shell("bash -c 'compopt() { :; }; . <(ohmtrail --bash-completion); COMP_WORDS=(" + words +
                    "); COMP_CWORD=" + std::to_string(last) + "; _ohmtrail; echo \"${COMPREPLY[*]}\"'",
                "/");
  EXPECT_EQ(ended.exit, 0) << ended.err;
  EXPECT_EQ(ended.err, "");
  return ended.out.substr(0, ended.out.find('\n'));
}

TEST(Completion, KnowsCommandsOptionsAndTheirWords) {
  EXPECT_EQ(completed("ohmtrail so", 1), "solve");
  EXPECT_EQ(completed("ohmtrail solve --c", 2), "--case --csv");
  EXPECT_EQ(completed("ohmtrail rank boat.json --by h", 4), "heat");
  EXPECT_EQ(completed("ohmtrail help dr", 2), "draw");
  EXPECT_EQ(completed("ohmtrail draw boat.json --paper \"\"", 4), "a4 letter");
}

TEST(Completion, LeavesFilesToTheShell) {
  EXPECT_EQ(completed("ohmtrail solve bo", 2), "");
  EXPECT_EQ(completed("ohmtrail draw boat.json -o bo", 4), "");
}

TEST(Completion, OffersEveryOptionOfEveryCommand) {
  for (const auto* command : all_commands()) {
    const std::string offered = " " + completed("ohmtrail " + std::string(command->name) + " -", 2) + " ";
    for (const auto& option : command->options) {
      if (option.positional()) continue;
      EXPECT_THAT(offered, HasSubstr(std::string(option.name.substr(option.name.rfind(',') + 1)) + " "))
          << command->name;
    }
  }
}

}  // namespace
