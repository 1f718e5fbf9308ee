#include "cli/doors/whole_write.hpp"

#include <gmock/gmock.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "support/temporary_folder.hpp"
#include "unit/cli/failing_disk.hpp"

namespace {

using namespace ohmtrail::cli;
using ohmtrail::test::FailingDisk;
using ohmtrail::test::TemporaryFolder;
using testing::HasSubstr;

std::string content(const std::string& path) {
  std::ifstream file(path);
  std::stringstream all;
  all << file.rdbuf();
  return all.str();
}

void put(const std::string& path, const std::string& text) {
  std::ofstream(path) << text;
}

std::size_t files_in(const std::string& folder) {
  return static_cast<std::size_t>(std::distance(std::filesystem::directory_iterator(folder), {}));
}

TEST(WholeWrite, MakesANewFile) {
  const TemporaryFolder folder;
  Disk disk;
  ASSERT_TRUE(write_whole(disk, folder / "a.txt", "hello"));
  EXPECT_EQ(content(folder / "a.txt"), "hello");
  EXPECT_EQ(files_in(folder.path()), 1U);
}

TEST(WholeWrite, FailingAtAnyStepLeavesTheOldFileAndNoOther) {
  const std::string fresh = "the new content";
  bool finished = false;
  for (int at = 0; !finished; ++at) {
    ASSERT_LT(at, 100);
    const TemporaryFolder folder;
    put(folder / "a.txt", "old");
    FailingDisk disk(at);
    const auto written = write_whole(disk, folder / "a.txt", fresh);
    finished = disk.failed_step.empty();
    EXPECT_EQ(written.has_value(), finished) << disk.failed_step;
    EXPECT_EQ(files_in(folder.path()), 1U) << disk.failed_step;
    const bool in_place = finished || disk.failed_step == "sync_folder";
    EXPECT_EQ(content(folder / "a.txt"), in_place ? fresh : "old") << disk.failed_step;
    if (finished) break;
    EXPECT_THAT(written.error(), HasSubstr("No space left")) << disk.failed_step;
  }
}

TEST(WholeWrite, FailingAtAnyStepMakesNoNewFile) {
  for (int at = 0; at < 8; ++at) {
    const TemporaryFolder folder;
    FailingDisk disk(at);
    const auto written = write_whole(disk, folder / "a.txt", "123456");
    ASSERT_FALSE(disk.failed_step.empty());
    EXPECT_FALSE(written);
    EXPECT_EQ(files_in(folder.path()), disk.failed_step == "sync_folder" ? 1U : 0U) << disk.failed_step;
  }
}

TEST(WholeWrite, GoesOnAfterAnInterruption) {
  const TemporaryFolder folder;
  FailingDisk disk(3, EINTR);  // the second write
  ASSERT_TRUE(write_whole(disk, folder / "a.txt", "123456"));
  EXPECT_EQ(disk.failed_step, "write");
  EXPECT_EQ(content(folder / "a.txt"), "123456");
}

TEST(WholeWrite, AFileSystemThatCannotSyncFoldersIsNoFailure) {
  const TemporaryFolder folder;
  FailingDisk disk(6, EINVAL);
  ASSERT_TRUE(write_whole(disk, folder / "a.txt", "123"));
  EXPECT_EQ(disk.failed_step, "sync_folder");
}

TEST(WholeWrite, KeepsThePermissionsOfWhatItReplaces) {
  const TemporaryFolder folder;
  put(folder / "a.txt", "old");
  ASSERT_EQ(::chmod((folder / "a.txt").c_str(), 0640), 0);
  Disk disk;
  ASSERT_TRUE(write_whole(disk, folder / "a.txt", "new"));
  struct stat after {};
  ASSERT_EQ(::stat((folder / "a.txt").c_str(), &after), 0);
  EXPECT_EQ(after.st_mode & 07777U, 0640U);
}

TEST(WholeWrite, GivesNewFilesThePermissionsOfTheUser) {
  const TemporaryFolder folder;
  const mode_t before = ::umask(0027);
  Disk disk;
  const auto written = write_whole(disk, folder / "a.txt", "new");
  ::umask(before);
  ASSERT_TRUE(written);
  struct stat after {};
  ASSERT_EQ(::stat((folder / "a.txt").c_str(), &after), 0);
  EXPECT_EQ(after.st_mode & 07777U, 0640U);
}

TEST(WholeWrite, ALinkStaysALink) {
  const TemporaryFolder folder;
  std::filesystem::create_directory(folder / "elsewhere");
  put(folder / "elsewhere/real.txt", "old");
  std::filesystem::create_symlink("elsewhere/real.txt", folder / "link.txt");
  Disk disk;
  ASSERT_TRUE(write_whole(disk, folder / "link.txt", "new"));
  EXPECT_TRUE(std::filesystem::is_symlink(folder / "link.txt"));
  EXPECT_EQ(content(folder / "elsewhere/real.txt"), "new");
}

TEST(WholeWrite, RefusesFoldersAndDeadLinksAndMissingFolders) {
  const TemporaryFolder folder;
  std::filesystem::create_symlink("nowhere", folder / "dead");
  Disk disk;
  EXPECT_THAT(write_whole(disk, folder.path(), "x").error(), HasSubstr("is a folder"));
  EXPECT_THAT(write_whole(disk, folder / "dead", "x").error(), HasSubstr("leads nowhere"));
  EXPECT_THAT(write_whole(disk, folder / "no/such/x", "x").error(), HasSubstr("No such file"));
}

TEST(WholeWrite, ADeviceIsWrittenToAndNotReplaced) {
  Disk disk;
  EXPECT_TRUE(write_whole(disk, "/dev/null", "x"));
  struct stat after {};
  ASSERT_EQ(::stat("/dev/null", &after), 0);
  EXPECT_TRUE(S_ISCHR(after.st_mode));
  EXPECT_THAT(write_whole(disk, "/dev/full", "x").error(), HasSubstr("No space left"));
}

}  // namespace
