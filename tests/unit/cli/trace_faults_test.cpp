// The guided search on a disk that fails, or dies, at every step of every write: what was accepted is there.
#include <gmock/gmock.h>
#include <sys/wait.h>
#include <unistd.h>

#include <set>

#include "cli/doors/disk_files.hpp"
#include "ohmtrail/netlist/read.hpp"
#include "support/process.hpp"
#include "unit/cli/failing_disk.hpp"
#include "unit/cli/memory_doors.hpp"

namespace ohmtrail::test {
namespace {

using testing::HasSubstr;

/// A windlass on a small boat (invented), a reading a write.
const std::string boat = R"({"ohmtrail":1,"system":{"name":"invented launch","nominal":12},
  "batteries":[{"id":"B","plus":"+","minus":"-","nominal":12,"emf":12.7,"resistance":"4 mohm"}],
  "runs":[{"id":"feed","from":"+","to":"L+","gauge":"2 AWG","length":4,"return":{"from":"L-","to":"-"}}],
  "loads":[{"id":"windlass","plus":"L+","minus":"L-","takes":"80 A"}],
  "cases":[{"name":"hauling","on":["windlass"]}]})";

/// A terminal that prompts through a file, which outlives the process.
class LoggedTerminal : public MemoryTerminal {
 public:
  explicit LoggedTerminal(std::string log) : log_(std::move(log)) {}
  void out(std::string_view text) override {
    MemoryTerminal::out(text);
    put_file(log_, shown);
  }

 private:
  std::string log_;
};

struct TraceFaults : testing::Test {
  TemporaryFolder folder;
  const std::string file = folder / "boat.json";
  const std::string log = folder / "log";

  void SetUp() override { put_file(file, boat); }
  int search(cli::Disk& disk, cli::Terminal& terminal) const {
    cli::DiskFiles files(disk);
    return cli::run(std::vector<std::string>{"trace", file}, {files, terminal});
  }
  [[nodiscard]] std::size_t saved() const {
    const auto read = netlist::read(file_content(file));
    EXPECT_TRUE(read) << "the file is not whole";
    return read ? read->system.readings.size() : 0;
  }
};

std::size_t times(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; at += part.size()) ++count;
  return count;
}

TEST_F(TraceFaults, AReadingThatCouldNotBeSavedIsSaidAndNotCountedAndAllOthersAreKept) {
  std::set<std::string> failed;
  for (int at = 0;; ++at) {
    ASSERT_LT(at, 500);
    put_file(file, boat);
    MemoryTerminal terminal;
    terminal.typed = {"80", "12.3", "10.9", "done"};
    FailingDisk disk(at, ENOSPC, 512);
    EXPECT_EQ(search(disk, terminal), 0);
    if (disk.failed_step.empty()) break;
    failed.insert(disk.failed_step);
    SCOPED_TRACE(disk.failed_step);
    EXPECT_EQ(times(terminal.shown, "Not saved, so not counted"), 1U) << terminal.shown;
    // A folder that did not reach the disk holds the new file all the same; it says so, and does not count
    // it.
    EXPECT_GE(saved(), 2U);
    EXPECT_LE(saved(), disk.failed_step == "sync_folder" ? 3U : 2U);
  }
  EXPECT_EQ(saved(), 3U);
  EXPECT_THAT(failed, testing::IsSupersetOf({"create", "write", "sync", "close", "rename", "sync_folder"}));
}

TEST_F(TraceFaults, KilledAtAnyStepEveryReadingThatWasAnsweredWithTheNextQuestionIsThere) {
  bool killed = true;
  for (int at = 0; killed; ++at) {
    ASSERT_LT(at, 500);
    put_file(file, boat);
    const pid_t child = ::fork();
    if (child == 0) {
      LoggedTerminal terminal(log);
      terminal.typed = {"80", "12.3", "10.9", "done"};
      DeadlyDisk disk(at, 512);
      ::_exit(search(disk, terminal));
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    killed = WIFSIGNALED(status);
    const std::size_t questions = times(file_content(log), "> ");
    EXPECT_GE(saved() + 1, questions) << "step " << at;
    EXPECT_LE(saved(), questions) << "step " << at;
    EXPECT_TRUE(killed || saved() == 3);
  }
}

TEST_F(TraceFaults, WhereTheOtherFileCannotBeWrittenItEndsBeforeTheFirstQuestion) {
  for (int at = 0; at < 6; ++at) {
    MemoryTerminal terminal;
    FailingDisk disk(at, EROFS, 1U << 20);
    cli::DiskFiles files(disk);
    EXPECT_EQ(
        cli::run(std::vector<std::string>{"trace", file, "-o", folder / "found.json"}, {files, terminal}), 4);
    EXPECT_THAT(terminal.complaints, HasSubstr("Read-only file system"));
    EXPECT_EQ(times(terminal.shown, "> "), 0U);
    EXPECT_FALSE(std::filesystem::exists(folder / "found.json")) << disk.failed_step;
  }
}

}  // namespace
}  // namespace ohmtrail::test
