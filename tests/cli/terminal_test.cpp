#include <gmock/gmock.h>
#include <pty.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdlib>
#include <string>
#include <vector>

#include "support/process.hpp"

// What a person sees at a real terminal, and what a pipe gets instead.
namespace {

using namespace ohmtrail::test;
using testing::HasSubstr;
using testing::Not;

/// The program's output on a terminal of its own, with these variables set.
std::string on_terminal(const std::vector<std::string>& arguments,
                        const std::vector<std::string>& environment) {
  std::vector<std::string> call{OHMTRAIL_PROGRAM};
  call.insert(call.end(), arguments.begin(), arguments.end());
  std::vector<char*> argv, envp;
  for (std::string& word : call) argv.push_back(word.data());
  std::vector<std::string> variables = environment;
  // Where coverage is measured its library must not write to the terminal either.
  if (const char* errors = std::getenv("GCOV_ERROR_FILE"))
    variables.push_back(std::string("GCOV_ERROR_FILE=") + errors);
  for (std::string& variable : variables) envp.push_back(variable.data());
  argv.push_back(nullptr);
  envp.push_back(nullptr);

  int terminal = -1;
  const pid_t child = ::forkpty(&terminal, nullptr, nullptr, nullptr);
  if (child == 0) {
    ::execve(OHMTRAIL_PROGRAM, argv.data(), envp.data());
    ::_exit(127);
  }
  std::string seen;
  std::array<char, 4096> block;
  for (;;) {
    const ssize_t got = ::read(terminal, block.data(), block.size());
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) break;  // EIO: the child has closed its side
    seen.append(block.data(), static_cast<std::size_t>(got));
  }
  ::close(terminal);
  int status = 0;
  ::waitpid(child, &status, 0);
  EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0);
  return seen;
}

const std::string escape = "\x1b[";

TEST(Terminal, ShowsColour) {
  EXPECT_THAT(on_terminal({"tables", "awg"}, {"TERM=xterm"}), HasSubstr(escape));
}

TEST(Terminal, ShowsNoColourWithNoColor) {
  EXPECT_THAT(on_terminal({"tables", "awg"}, {"TERM=xterm", "NO_COLOR=1"}), Not(HasSubstr(escape)));
}

TEST(Terminal, AnEmptyNoColorForbidsNothing) {
  EXPECT_THAT(on_terminal({"tables", "awg"}, {"TERM=xterm", "NO_COLOR="}), HasSubstr(escape));
}

TEST(Terminal, ShowsNoColourOnADumbOrUnknownOne) {
  EXPECT_THAT(on_terminal({"tables", "awg"}, {"TERM=dumb"}), Not(HasSubstr(escape)));
  EXPECT_THAT(on_terminal({"tables", "awg"}, {"PATH=/bin"}), Not(HasSubstr(escape)));
}

TEST(Terminal, JsonAndCsvAreNeverColoured) {
  EXPECT_THAT(on_terminal({"tables", "awg", "--json"}, {"TERM=xterm"}), Not(HasSubstr(escape)));
  EXPECT_THAT(on_terminal({"tables", "awg", "--csv"}, {"TERM=xterm"}), Not(HasSubstr(escape)));
}

TEST(Terminal, APipeGetsNoColourAndTheSameText) {
  const Ended piped = run_shell("TERM=xterm ohmtrail tables awg | cat", "/");
  EXPECT_THAT(piped.out, Not(HasSubstr(escape)));
  std::string seen = on_terminal({"tables", "awg"}, {"TERM=xterm", "NO_COLOR=1"});
  std::erase(seen, '\r');
  EXPECT_EQ(piped.out, seen);
}

TEST(Terminal, AFullDiskBehindStandardOutputIsExitFour) {
  const Ended ended = run_shell("ohmtrail tables awg --json > /dev/full", "/");
  EXPECT_EQ(ended.exit, 4);
  EXPECT_THAT(ended.err, HasSubstr("could not be written"));
}

}  // namespace
