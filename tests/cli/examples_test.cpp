#include <gmock/gmock.h>

#include <filesystem>

#include "cli/commands/commands.hpp"
#include "support/process.hpp"

// Every example that a help text shows is run, on the netlists that the project ships.
namespace {

using namespace ohmtrail;
using namespace ohmtrail::test;

/// Files as the examples name them.
void lay_out(const std::string& folder) {
  const std::string shipped = OHMTRAIL_SOURCE_DIR "/netlists/";
  for (const auto& [name, from] :
       {std::pair{"boat.json", "yacht-12v.json"}, std::pair{"before.json", "yacht-12v.json"},
        std::pair{"after.json", "yacht-12v.json"}, std::pair{"cart.json", "cart-48v.json"}})
    std::filesystem::copy_file(shipped + from, folder + "/" + name);
}

/// What follows -o in a call, or nothing.
std::string output_of(const std::string& call) {
  const std::size_t at = call.find(" -o ");
  if (at == std::string::npos) return "";
  return call.substr(at + 4, call.find(' ', at + 4) - at - 4);
}

TEST(Examples, OfEveryCommandRun) {
  int run = 0;
  for (const cli::Command* command : cli::all_commands()) {
    for (const std::string_view example : command->examples) {
      SCOPED_TRACE(std::string(example));
      const TemporaryFolder folder;
      lay_out(folder.path());
      const Ended ended = run_shell(std::string(example), folder.path());
      EXPECT_EQ(ended.exit, 0) << ended.err;
      EXPECT_FALSE(ended.out.empty());
      const std::string output = output_of(std::string(example));
      if (!output.empty()) {
        EXPECT_GT(std::filesystem::file_size(folder / output), 100U);
      }
      ++run;
    }
  }
  EXPECT_GE(run, 10);
}

TEST(Examples, OfTheListOfCommandsRuns) {
  const TemporaryFolder folder;
  lay_out(folder.path());
  const Ended help = run_shell("ohmtrail --help", folder.path());
  const std::size_t at = help.out.find("\nExample\n  ");
  ASSERT_NE(at, std::string::npos);
  EXPECT_EQ(run_shell(help.out.substr(at + 11), folder.path()).exit, 0);
}

}  // namespace
