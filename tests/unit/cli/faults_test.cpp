#include <gmock/gmock.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>
#include <functional>

#include "cli/doors/disk_files.hpp"
#include "support/process.hpp"
#include "unit/cli/failing_disk.hpp"
#include "unit/cli/memory_doors.hpp"

// The whole program on a disk that fails, or dies, at every step of every write.
namespace {

using namespace ohmtrail::test;
using ohmtrail::cli::Disk;
using ohmtrail::cli::DiskFiles;
using testing::HasSubstr;
namespace fs = std::filesystem;

/// Large enough that a picture takes about a dozen writes.
constexpr std::size_t block = 16384;

/// So small that the choice of its cable takes no time.
const std::string small_netlist = R"({"ohmtrail": 1, "system": {"name": "invented launch", "nominal": 12},
 "batteries": [{"id": "B", "plus": "+", "minus": "-", "nominal": 12, "emf": 12.7, "resistance": "4 mohm"}],
 "runs": [{"id": "feed", "from": "+", "to": "L+", "gauge": "8 AWG", "length": 4, "return": {"from": "L-", "to": "-"}}],
 "loads": [{"id": "windlass", "plus": "L+", "minus": "L-", "takes": "80 A"}],
 "cases": [{"name": "hauling", "on": ["windlass"]}],
 "readings": [{"volts": "10.9 V", "red": "L+", "black": "L-", "case": "hauling"}]})";

/// A call that writes a file over the one that is there.
struct Writes {
  const char* command;
  const char* ending;
  bool small = false;
};

struct FaultsTest : testing::TestWithParam<Writes> {
  TemporaryFolder folder;
  MemoryTerminal terminal;
  const std::string boat = folder / "boat.json";
  const std::string output = (folder / "out") + GetParam().ending;

  void SetUp() override {
    if (GetParam().small)
      put_file(boat, small_netlist);
    else
      fs::copy_file(OHMTRAIL_SOURCE_DIR "/netlists/camper-12v.json", boat);
    put_file(output, "old");
  }
  int run(Disk& disk) {
    DiskFiles files(disk);
    terminal = {};
    return ohmtrail::cli::run(std::vector<std::string>{GetParam().command, boat, "-o", output},
                              {files, terminal});
  }
  [[nodiscard]] std::size_t files_left() const {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder.path()), {}));
  }
};

TEST_P(FaultsTest, AStepThatFailsIsExitFourAndTheOldFileStands) {
  for (int at = 0;; ++at) {
    ASSERT_LT(at, 200);
    put_file(output, "old");
    FailingDisk disk(at, at % 2 == 0 ? ENOSPC : EIO, block);
    const int exit = run(disk);
    if (disk.failed_step.empty()) {
      EXPECT_EQ(exit, 0);
      EXPECT_GE(at, 7) << "create, mode, write, sync, close, rename, folder";
      break;
    }
    SCOPED_TRACE(disk.failed_step);
    EXPECT_EQ(exit, 4);
    EXPECT_EQ(terminal.shown, "");
    EXPECT_THAT(terminal.complaints, HasSubstr(output + ": "));
    EXPECT_THAT(terminal.complaints, HasSubstr(at % 2 == 0 ? "No space left" : "Input/output error"));
    EXPECT_EQ(files_left(), 2U);
    EXPECT_EQ(file_content(output) == "old", disk.failed_step != "sync_folder");
  }
}

/// The status of a process of its own that does `work`.
int status_of(const std::function<int()>& work) {
  const pid_t child = ::fork();
  if (child == 0) ::_exit(work());
  int status = 0;
  ::waitpid(child, &status, 0);
  return status;
}

TEST_P(FaultsTest, KilledAtAnyStepTheFileIsTheOldOneOrTheNewOne) {
  Disk sound;
  ASSERT_EQ(run(sound), 0);
  const std::string fresh = file_content(output);
  bool killed = true;
  for (int at = 0; killed; ++at) {
    ASSERT_LT(at, 200);
    put_file(output, "old");
    const int status = status_of([&] {
      DeadlyDisk disk(at, block);
      return run(disk);
    });
    killed = WIFSIGNALED(status);
    const std::string now = file_content(output);
    EXPECT_TRUE(now == "old" || now == fresh) << "step " << at << " left " << now.size() << " bytes";
    EXPECT_TRUE(killed || now == fresh);
  }
}

TEST_P(FaultsTest, WhatAKilledProcessLeftHindersNoOther) {
  const int status = status_of([&] {
    DeadlyDisk disk(4, block);
    return run(disk);
  });
  ASSERT_TRUE(WIFSIGNALED(status));
  Disk sound;
  EXPECT_EQ(run(sound), 0);
  EXPECT_NE(file_content(output), "old");
}

TEST_P(FaultsTest, AnUnwritableFolderIsExitFourAndTheOldFileStands) {
  // Nothing is unwritable to root: a process of its own becomes somebody else.
  fs::permissions(folder.path(), static_cast<fs::perms>(0555));
  const int status = status_of([&] {
    if (::geteuid() == 0 && ::seteuid(65534) != 0) return 99;
    Disk disk;
    const int exit = run(disk);
    return terminal.complaints.find("Permission denied") == std::string::npos ? 98 : exit;
  });
  fs::permissions(folder.path(), fs::perms::owner_all);
  ASSERT_TRUE(WIFEXITED(status));
  EXPECT_EQ(WEXITSTATUS(status), 4);
  EXPECT_EQ(file_content(output), "old");
  EXPECT_EQ(files_left(), 2U);
}

std::string name_of(const testing::TestParamInfo<FaultsTest::ParamType>& info) {
  return std::string(info.param.command) + "_" + (info.param.ending + 1);
}

INSTANTIATE_TEST_SUITE_P(Commands, FaultsTest,
                         testing::Values(Writes{"draw", ".svg"}, Writes{"report", ".pdf"},
                                         Writes{"report", ".html"}, Writes{"infer", ".json", true},
                                         Writes{"size", ".json", true}),
                         name_of);

TEST(Faults, ANewNetlistAppearsWholeOrNotAtAll) {
  for (int at = 0;; ++at) {
    ASSERT_LT(at, 200);
    const TemporaryFolder folder;
    MemoryTerminal terminal;
    FailingDisk disk(at, EDQUOT, 1024);
    DiskFiles files(disk);
    const int exit =
        ohmtrail::cli::run(std::vector<std::string>{"new", "-o", folder / "new.json"}, {files, terminal});
    if (disk.failed_step.empty()) break;
    SCOPED_TRACE(disk.failed_step);
    EXPECT_EQ(exit, 4);
    EXPECT_EQ(terminal.shown, "");
    EXPECT_THAT(terminal.complaints, HasSubstr("quota exceeded"));
    EXPECT_EQ(fs::is_empty(folder.path()), disk.failed_step != "sync_folder");
  }
}

}  // namespace
