#include <gmock/gmock.h>
#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>

#include "support/process.hpp"

// What draw and report leave on the disk, and what they never do.
namespace {

using namespace ohmtrail::test;
using testing::HasSubstr;
namespace fs = std::filesystem;

struct OutputTest : testing::Test {
  TemporaryFolder folder;
  void SetUp() override {
    fs::copy_file(OHMTRAIL_SOURCE_DIR "/netlists/camper-12v.json", folder / "boat.json");
  }
  Ended run(const std::string& call) { return run_shell(call, folder.path()); }
  [[nodiscard]] std::size_t files() const {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder.path()), {}));
  }
};

TEST_F(OutputTest, ThePictureIsWhatItsEndingSays) {
  EXPECT_EQ(run("ohmtrail draw boat.json -o a.svg").exit, 0);
  EXPECT_EQ(run("ohmtrail draw boat.json -o a.PNG").exit, 0);
  EXPECT_EQ(run("ohmtrail draw boat.json -o a.pdf --paper letter").exit, 0);
  EXPECT_THAT(file_content(folder / "a.svg").substr(0, 200), HasSubstr("<svg"));
  EXPECT_EQ(file_content(folder / "a.PNG").substr(1, 3), "PNG");
  EXPECT_EQ(file_content(folder / "a.pdf").substr(0, 5), "%PDF-");
}

TEST_F(OutputTest, TheReportIsWhatItsEndingSays) {
  EXPECT_EQ(run("ohmtrail report boat.json -o a.pdf").exit, 0);
  EXPECT_EQ(run("ohmtrail report boat.json -o a.html").exit, 0);
  EXPECT_EQ(file_content(folder / "a.pdf").substr(0, 5), "%PDF-");
  EXPECT_THAT(file_content(folder / "a.html").substr(0, 200), HasSubstr("<!DOCTYPE html>"));
}

TEST_F(OutputTest, TheReportHasTheChaptersAskedForAndNoOthers) {
  const auto text = [&](const std::string& options) {
    EXPECT_EQ(run("ohmtrail report boat.json -o a.pdf " + options).exit, 0) << options;
    return run("pdftotext -layout a.pdf -").out;
  };
  const std::string plain = text("");
  for (const char* chapter : {"Bench sheet", "Cable and fuses for the rewire", "Before and after the work"})
    EXPECT_THAT(plain, testing::Not(HasSubstr(chapter)));
  EXPECT_THAT(text("--bench"), HasSubstr("Bench sheet: readings to take"));
  EXPECT_THAT(text("--rewire --time-limit 1"), HasSubstr("Cable and fuses for the rewire"));
  EXPECT_THAT(text("--before boat.json"), HasSubstr("Before and after the work"));
}

TEST_F(OutputTest, TheReportJudgesFusesByTheRulesNamed) {
  EXPECT_EQ(run("ohmtrail report boat.json -o a.html --rules iso-10133").exit, 0);
  const std::string iso = file_content(folder / "a.html");
  EXPECT_EQ(run("ohmtrail report boat.json -o a.html --rules us-small-craft").exit, 0);
  EXPECT_NE(iso, file_content(folder / "a.html"));
}

/// Five parts of one way would explain these readings alike: none of them is told to be undone.
TEST_F(OutputTest, TheReportLeavesOpenWhatTheReadingsLeaveOpen) {
  std::filesystem::copy_file(
      std::filesystem::path(OHMTRAIL_SOURCE_DIR) / "tests/cli/cases/next-in-another-case/boat.json",
      folder / "open.json");
  EXPECT_EQ(run("ohmtrail report open.json -o a.html").exit, 0);
  const std::string told = file_content(folder / "a.html");
  EXPECT_THAT(told, HasSubstr("The readings do not yet settle what is at fault"));
  EXPECT_THAT(told, HasSubstr("Take more readings before anything is undone."));
  EXPECT_THAT(told, HasSubstr("If it is this part that is at fault"));
  EXPECT_THAT(told, Not(HasSubstr("clean lug and stud")));
}

TEST_F(OutputTest, AnEarlierSurveyThatCannotBeReadIsAWrongCall) {
  const Ended ended = run("ohmtrail report boat.json --before none.json -o a.pdf");
  EXPECT_EQ(ended.exit, 2);
  EXPECT_THAT(ended.err, HasSubstr("none.json"));
  EXPECT_EQ(files(), 1U);
}

TEST_F(OutputTest, ItSaysWhereAndWhat) {
  EXPECT_EQ(run("ohmtrail draw boat.json -o a.svg --case evening").out,
            "a.svg: wiring diagram, case \"evening\"\n");
  EXPECT_THAT(run("ohmtrail draw boat.json -o b.svg --staircase --load lamps").out,
              HasSubstr("b.svg: voltage staircase to \"lamps\""));
}

TEST_F(OutputTest, TheSameInputGivesTheSameBytes) {
  for (const char* call : {"ohmtrail draw boat.json -o ", "ohmtrail draw boat.json --staircase -o "})
    for (const char* ending : {".svg", ".png", ".pdf"}) {
      run(std::string(call) + "1" + ending);
      run(std::string(call) + "2" + ending);
      EXPECT_EQ(file_content((folder / "1") + ending), file_content((folder / "2") + ending))
          << call << ending;
    }
}

TEST_F(OutputTest, AnUnknownEndingIsAWrongCall) {
  EXPECT_EQ(run("ohmtrail draw boat.json -o a.gif").exit, 2);
  EXPECT_EQ(run("ohmtrail draw boat.json -o a").exit, 2);
  EXPECT_EQ(run("ohmtrail report boat.json -o a.svg").exit, 2);
  EXPECT_EQ(run("ohmtrail report boat.json -o .pdf").exit, 2);
  EXPECT_EQ(files(), 1U);
}

TEST_F(OutputTest, ItsInputIsNeverWrittenOver) {
  const std::string before = file_content(folder / "boat.json");
  fs::rename(folder / "boat.json", folder / "boat.svg");
  fs::create_hard_link(folder / "boat.svg", folder / "hard.svg");
  fs::create_symlink("boat.svg", folder / "soft.svg");
  for (const char* output : {"boat.svg", "hard.svg", "soft.svg", "../../$PWD/boat.svg", "./boat.svg"}) {
    const Ended ended = run(std::string("ohmtrail draw boat.svg -o \"") + output + "\"");
    EXPECT_EQ(ended.exit, 4) << output;
    EXPECT_THAT(ended.err, HasSubstr("is the file that was read")) << output;
    EXPECT_EQ(ended.out, "") << output;
  }
  EXPECT_EQ(run("ohmtrail draw - -o boat.svg < boat.svg").exit, 4);
  EXPECT_EQ(file_content(folder / "boat.svg"), before);
  EXPECT_EQ(files(), 3U);
}

TEST_F(OutputTest, AMissingFolderIsNamed) {
  const Ended ended = run("ohmtrail draw boat.json -o none/a.svg");
  EXPECT_EQ(ended.exit, 4);
  EXPECT_THAT(ended.err,
              HasSubstr("none/a.svg: no file can be made in its folder: No such file or directory"));
  EXPECT_EQ(ended.out, "");
}

TEST_F(OutputTest, AnUnwritableFolderLeavesTheOldFile) {
  if (::geteuid() == 0) GTEST_SKIP() << "nothing is unwritable to root; the next test stands in";
  put_file(folder / "a.svg", "old");
  fs::permissions(folder.path(), fs::perms::owner_read | fs::perms::owner_exec);
  const Ended ended = run("ohmtrail draw boat.json -o a.svg");
  fs::permissions(folder.path(), fs::perms::owner_all);
  EXPECT_EQ(ended.exit, 4);
  EXPECT_EQ(file_content(folder / "a.svg"), "old");
}

TEST_F(OutputTest, AFullDiskIsExitFour) {
  fs::create_symlink("/dev/full", folder / "a.svg");
  const Ended ended = run("ohmtrail draw boat.json -o a.svg");
  EXPECT_EQ(ended.exit, 4);
  EXPECT_THAT(ended.err, HasSubstr("No space left"));
}

TEST_F(OutputTest, AFolderOrADeadLinkIsExitFour) {
  fs::create_directory(folder / "a.svg");
  fs::create_symlink("nowhere", folder / "b.svg");
  EXPECT_EQ(run("ohmtrail draw boat.json -o a.svg").exit, 4);
  EXPECT_EQ(run("ohmtrail draw boat.json -o b.svg").exit, 4);
}

TEST_F(OutputTest, ALimitOnFileSizeLeavesTheOldFileAndNoOther) {
  put_file(folder / "a.png", "old");
  const Ended ended = run("trap '' XFSZ; ulimit -f 8; ohmtrail draw boat.json -o a.png");
  EXPECT_EQ(ended.exit, 4);
  EXPECT_THAT(ended.err, HasSubstr("File too large"));
  EXPECT_EQ(file_content(folder / "a.png"), "old");
  EXPECT_EQ(files(), 2U);
}

}  // namespace
