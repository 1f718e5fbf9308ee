#include "cli/run.hpp"

#include <gmock/gmock.h>

#include "cli/commands/commands.hpp"
#include "cli/text/printable.hpp"
#include "unit/cli/memory_doors.hpp"

namespace {

using namespace ohmtrail::cli;
using ohmtrail::test::Program;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::StartsWith;

TEST(Run, TellsItsVersion) {
  Program program;
  EXPECT_EQ(program.run({"--version"}), 0);
  EXPECT_THAT(program.terminal.shown, testing::MatchesRegex("ohmtrail [0-9]+\\.[0-9]+\\.[0-9]+\n"));
}

TEST(Run, ACallWithoutCommandIsAMistakeThatShowsTheHelp) {
  Program program;
  EXPECT_EQ(program.run({}), 2);
  EXPECT_THAT(program.terminal.shown, IsEmpty());
  EXPECT_THAT(program.terminal.complaints, HasSubstr("ohmtrail COMMAND"));
}

TEST(Run, HelpListsEveryCommand) {
  Program program;
  EXPECT_EQ(program.run({"--help"}), 0);
  for (const Command* command : all_commands()) {
    EXPECT_THAT(program.terminal.shown, HasSubstr(command->name));
    EXPECT_THAT(program.terminal.shown, HasSubstr(command->summary));
  }
}

TEST(Run, EveryCommandHasHelpWithAnExampleInEightyColumns) {
  for (const Command* command : all_commands()) {
    for (const std::vector<std::string>& call :
         {std::vector<std::string>{std::string(command->name), "--help"},
          {"help", std::string(command->name)}}) {
      Program program;
      EXPECT_EQ(program.run(call), 0);
      EXPECT_THAT(program.terminal.shown, HasSubstr("Example")) << command->name;
      ASSERT_FALSE(command->examples.empty()) << command->name;
      EXPECT_THAT(std::string(command->examples.front()),
                  StartsWith("ohmtrail " + std::string(command->name)));
      std::size_t start = 0;
      for (std::size_t end; (end = program.terminal.shown.find('\n', start)) != std::string::npos;
           start = end + 1)
        EXPECT_LE(columns_of(program.terminal.shown.substr(start, end - start)), 80U) << command->name;
    }
  }
}

TEST(Run, EveryOptionIsDescribedAndNoTwoShareAName) {
  for (const Command* command : all_commands()) {
    std::vector<std::string_view> names;
    for (const Option& option : command->options) {
      EXPECT_FALSE(option.sentence.empty()) << command->name << ' ' << option.name;
      EXPECT_THAT(names, testing::Not(testing::Contains(option.name))) << command->name;
      names.push_back(option.name);
    }
  }
}

TEST(Run, OffersTheNearestCommand) {
  Program program;
  EXPECT_EQ(program.run({"tabels"}), 2);
  EXPECT_EQ(program.terminal.complaints, "ohmtrail: unknown command \"tabels\"; did you mean tables?\n");
  EXPECT_THAT(program.terminal.shown, IsEmpty());
}

TEST(Run, OffersTheNearestOption) {
  Program program;
  EXPECT_EQ(program.run({"--versoin"}), 2);
  EXPECT_EQ(program.terminal.complaints, "ohmtrail: unknown option \"--versoin\"; did you mean --version?\n");
}

TEST(Run, AWrongCommandCannotWriteToTheTerminal) {
  Program program;
  EXPECT_EQ(program.run({"\x1b[2J\x1b]0;x\x07"}), 2);
  EXPECT_THAT(program.terminal.complaints, testing::Not(HasSubstr("\x1b")));
  EXPECT_THAT(program.terminal.complaints, testing::Not(HasSubstr("\x07")));
}

TEST(Run, OutputThatCannotBeWrittenIsExitFour) {
  Program program;
  program.terminal.full = true;
  EXPECT_EQ(program.run({"--version"}), 4);
  EXPECT_THAT(program.terminal.complaints, HasSubstr("could not be written"));
}

}  // namespace
