#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

#include "support/process.hpp"

// What `new` writes is a netlist that every other command takes.
namespace {

using namespace ohmtrail::test;
using nlohmann::json;
using testing::HasSubstr;

TEST(New, IsRightAndWithinItsLimitsAtEveryVoltage) {
  for (const char* volts : {"12", "24", "36", "48"}) {
    const TemporaryFolder folder;
    EXPECT_EQ(run_shell(std::string("ohmtrail new -o a.json --volts ") + volts, folder.path()).exit, 0);
    const json written = json::parse(file_content(folder / "a.json"));
    EXPECT_EQ(written["system"]["nominal"], std::string(volts) + " V");
    const Ended checked = run_shell("ohmtrail solve a.json --strict --json", folder.path());
    EXPECT_EQ(checked.exit, 0) << volts << checked.err;
    EXPECT_EQ(checked.err, "");
    EXPECT_EQ(json::parse(checked.out)["cases"].size(), 2U);
    EXPECT_EQ(
        run_shell("ohmtrail rank a.json && ohmtrail draw a.json -o a.svg && ohmtrail report a.json -o a.pdf",
                  folder.path())
            .exit,
        0);
  }
}

int notes_in(const json& node) {
  int notes = node.is_object() && node.contains("note") && !node["note"].get<std::string>().empty() ? 1 : 0;
  if (node.is_structured())
    for (const json& child : node) notes += notes_in(child);
  return notes;
}

TEST(New, SaysWhatGoesWhere) {
  EXPECT_GE(notes_in(json::parse(run_shell("ohmtrail new", "/").out)), 10);
}

TEST(New, WritesOnTheScreenWhatItWritesIntoAFile) {
  const TemporaryFolder folder;
  const Ended ended = run_shell("ohmtrail new -o a.json && ohmtrail new", folder.path());
  EXPECT_EQ(ended.out, "a.json: a netlist to start from\n" + file_content(folder / "a.json"));
}

TEST(New, LeavesAFileThatIsThereAlone) {
  const TemporaryFolder folder;
  put_file(folder / "a.json", "mine");
  const Ended ended = run_shell("ohmtrail new -o a.json", folder.path());
  EXPECT_EQ(ended.exit, 4);
  EXPECT_THAT(ended.err, HasSubstr("a.json: is there already"));
  EXPECT_EQ(file_content(folder / "a.json"), "mine");
  EXPECT_EQ(run_shell("ohmtrail new -o none/a.json", folder.path()).exit, 4);
}

}  // namespace
