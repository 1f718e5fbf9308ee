#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <set>
#include <vector>

#include "support/process.hpp"

// Every folder of tests/cli/cases is one call and everything a person sees of it:
//   cmd      the call, in the shell; `ohmtrail` is the program just built, the folder itself the working
//   folder exit     the exit code stdout, stderr   byte for byte; a missing file means nothing writes   names
//   of the files that the call leaves behind, one a line; a missing file means none
// Everything else in the folder is input. After a change that was meant:
//   OHMTRAIL_RECORD=1 ctest -R Cases    writes exit, stdout, stderr and writes anew; read the difference
//   before
// committing it.
namespace {

namespace fs = std::filesystem;
using namespace ohmtrail::test;

const std::set<std::string> expectations{"cmd", "exit", "stdout", "stderr", "writes"};

std::vector<fs::path> case_folders() {
  std::vector<fs::path> folders;
  for (const auto& entry : fs::directory_iterator(OHMTRAIL_SOURCE_DIR "/tests/cli/cases"))
    if (entry.is_directory()) folders.push_back(entry.path());
  std::sort(folders.begin(), folders.end());
  return folders;
}

std::set<std::string> names_in(const std::string& folder) {
  std::set<std::string> names;
  for (const auto& entry : fs::directory_iterator(folder)) names.insert(entry.path().filename().string());
  return names;
}

/// The call's outcome as the files of a case folder tell it.
struct Outcome {
  std::string exit, out, err, writes;
};

Outcome outcome_of(const fs::path& folder) {
  const TemporaryFolder work;
  for (const std::string& name : names_in(folder))
    if (!expectations.contains(name)) fs::copy(folder / name, work / name);
  const std::set<std::string> before = names_in(work.path());
  const Ended ended = run_shell(file_content(folder / "cmd"), work.path());
  std::string writes;
  for (const std::string& name : names_in(work.path()))
    if (!before.contains(name)) writes += name + "\n";
  return {std::to_string(ended.exit) + "\n", ended.out, ended.err, writes};
}

std::string expected(const fs::path& folder, const std::string& name) {
  return fs::exists(folder / name) ? file_content(folder / name) : "";
}

void record(const fs::path& folder, const std::string& name, const std::string& content) {
  if (content.empty())
    fs::remove(folder / name);
  else
    put_file(folder / name, content);
}

TEST(Cases, LookAsTheyDidWhenTheyWereRead) {
  const bool recording = std::getenv("OHMTRAIL_RECORD") != nullptr;
  const auto folders = case_folders();
  ASSERT_GE(folders.size(), 10U);
  for (const fs::path& folder : folders) {
    SCOPED_TRACE(folder.filename().string());
    const Outcome outcome = outcome_of(folder);
    if (recording) {
      record(folder, "exit", outcome.exit);
      record(folder, "stdout", outcome.out);
      record(folder, "stderr", outcome.err);
      record(folder, "writes", outcome.writes);
    }
    EXPECT_EQ(outcome.exit, expected(folder, "exit"));
    EXPECT_EQ(outcome.out, expected(folder, "stdout"));
    EXPECT_EQ(outcome.err, expected(folder, "stderr"));
    EXPECT_EQ(outcome.writes, expected(folder, "writes"));
  }
}

TEST(Cases, AMistakeNeverPrintsAResult) {
  int mistakes = 0;
  for (const fs::path& folder : case_folders()) {
    if (expected(folder, "exit") != "2\n") continue;
    ++mistakes;
    EXPECT_EQ(expected(folder, "stdout"), "") << folder.filename();
    EXPECT_NE(expected(folder, "stderr"), "") << folder.filename();
  }
  EXPECT_GT(mistakes, 0);
}

}  // namespace
