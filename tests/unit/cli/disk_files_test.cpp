#include "cli/doors/disk_files.hpp"

#include <gmock/gmock.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "support/temporary_folder.hpp"

namespace {

using namespace ohmtrail::cli;
using ohmtrail::test::TemporaryFolder;
using testing::HasSubstr;

struct DiskFilesTest : testing::Test {
  TemporaryFolder folder;
  Disk disk;
  DiskFiles files{disk};

  void put(const std::string& name, const std::string& text) { std::ofstream(folder / name) << text; }
  auto write(const std::string& name, Overwrite over = Overwrite::never_an_input) {
    return files.write(folder / name, "new", over);
  }
};

TEST_F(DiskFilesTest, ReadsWhatIsThere) {
  put("a.json", std::string("a\0b", 3));
  EXPECT_EQ(files.read(folder / "a.json").value(), std::string("a\0b", 3));
}

TEST_F(DiskFilesTest, TellsWhyItCannotRead) {
  EXPECT_THAT(files.read(folder / "none.json").error(), HasSubstr("No such file"));
  EXPECT_THAT(files.read(folder.path()).error(), HasSubstr("is a folder"));
}

TEST_F(DiskFilesTest, RefusesALargeFileWithItsSize) {
  put("large.json", "");
  std::filesystem::resize_file(folder / "large.json", largest_file);
  EXPECT_TRUE(files.read(folder / "large.json").has_value());
  std::filesystem::resize_file(folder / "large.json", largest_file + (512U << 10));
  EXPECT_EQ(files.read(folder / "large.json").error(), "has 64.5 MiB; at most 64 MiB are read");
}

TEST_F(DiskFilesTest, RefusesAnEndlessFile) {
  EXPECT_THAT(files.read("/dev/zero").error(), HasSubstr("at most 64 MiB are read"));
}

TEST_F(DiskFilesTest, NeverWritesOverItsInput) {
  put("a.json", "old");
  std::filesystem::create_hard_link(folder / "a.json", folder / "hard.json");
  std::filesystem::create_symlink("a.json", folder / "soft.json");
  std::filesystem::create_directory(folder / "sub");
  ASSERT_TRUE(files.read(folder / "a.json"));
  for (const char* name : {"a.json", "hard.json", "soft.json", "sub/../a.json", "./a.json"}) {
    const auto written = write(name);
    ASSERT_FALSE(written) << name;
    EXPECT_THAT(written.error(), HasSubstr("is the file that was read")) << name;
  }
  EXPECT_EQ(DiskFiles(disk).read(folder / "a.json").value(), "old");
}

TEST_F(DiskFilesTest, AnInputReadThroughALinkIsProtectedToo) {
  put("a.json", "old");
  std::filesystem::create_symlink("a.json", folder / "soft.json");
  ASSERT_TRUE(files.read(folder / "soft.json"));
  EXPECT_FALSE(write("a.json"));
}

TEST_F(DiskFilesTest, WritesOverItsInputWhereThatIsWanted) {
  put("a.json", "old");
  ASSERT_TRUE(files.read(folder / "a.json"));
  ASSERT_TRUE(write("a.json", Overwrite::also_an_input));
  EXPECT_EQ(files.read(folder / "a.json").value(), "new");
}

TEST_F(DiskFilesTest, WritesOverOtherFiles) {
  put("a.json", "old");
  put("b.json", "old");
  ASSERT_TRUE(files.read(folder / "a.json"));
  EXPECT_TRUE(write("b.json"));
}

}  // namespace
