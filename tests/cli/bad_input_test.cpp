#include <gmock/gmock.h>

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "support/process.hpp"

// What bad input gets: the place and the remedy on standard error, one mistake a line, exit 2, nothing on
// standard output and nothing written.
namespace {

using namespace ohmtrail::test;
using testing::HasSubstr;

/// A small, sound system, into which a test puts one mistake.
const std::string sound = R"({"ohmtrail": 1, "system": {"name": "bench", "nominal": "12 V"},
 "batteries": [{"id": "bat", "plus": "b+", "minus": "b-", "nominal": "12 V", "emf": "12.6 V", "resistance": "5 mohm"}],
 "runs": [{"id": "feed", "from": "b+", "to": "l+", "gauge": "6 AWG", "length": "2 m",
           "return": {"from": "l-", "to": "b-"}}],
 "loads": [{"id": "lamp", "plus": "l+", "minus": "l-", "takes": "24 W"}],
 "cases": [{"name": "on", "on": "all"}]})";

std::string replaced(const std::string& from, const std::string& to) {
  std::string text = sound;
  const std::size_t at = text.find(from);
  if (at == std::string::npos) throw std::logic_error("nothing to replace: " + from);
  return text.replace(at, from.size(), to);
}

std::string repeated(const std::string& piece, int times) {
  std::string text;
  for (int i = 0; i < times; ++i) text += piece;
  return text;
}

std::string many_unknown_keys() {
  std::string keys;
  for (int i = 0; i < 100000; ++i) keys += "\"key" + std::to_string(i) + "\": 1,";
  return "{" + keys + sound.substr(1);
}

struct Bad {
  const char* name;
  std::function<std::string()> bytes;
  std::vector<std::string> told;  ///< all of these stand in the complaint
};

const std::vector<Bad> bad_files{
    {"empty", [] { return std::string(); }, {"in.json:1:1: "}},
    {"blank", [] { return std::string(" \n\n "); }, {"in.json:"}},
    {"truncated", [] { return sound.substr(0, sound.size() / 2); }, {"in.json:"}},
    {"not an object", [] { return std::string("[1, 2]"); }, {"in.json:1:1: "}},
    {"wrong version", [] { return replaced("\"ohmtrail\": 1", "\"ohmtrail\": 2"); }, {"/ohmtrail", "2"}},
    {"nested 10^5 deep", [] { return repeated("[", 100000) + repeated("]", 100000); }, {"in.json:1:"}},
    {"objects 10^5 deep", [] { return repeated("{\"a\":", 100000); }, {"in.json:1:"}},
    {"not UTF-8",
     [] {
       return replaced("bench",
                       "b\xff"
                       "nch");
     },
     {"in.json:1:", "UTF-8"}},
    {"10^5 unknown keys", many_unknown_keys, {"/key0", "unknown"}},
    {"NaN", [] { return replaced("\"24 W\"", "NaN"); }, {"in.json:5:"}},
    {"a number beyond all", [] { return replaced("\"24 W\"", "1e999"); }, {"in.json:5:"}},
    {"a quantity beyond all",
     [] { return replaced("\"24 W\"", "\"1e999 W\""); },
     {"/loads/0/takes", "1e999"}},
    {"negative length", [] { return replaced("\"2 m\"", "\"-2 m\""); }, {"/runs/0/length", "-2 m"}},
    {"wrong dimension", [] { return replaced("\"2 m\"", "\"2 V\""); }, {"/runs/0/length", "2 V"}},
    {"missing unit", [] { return replaced("\"2 m\"", "\"2\""); }, {"/runs/0/length"}},
    {"unknown gauge", [] { return replaced("6 AWG", "7/9 AWG"); }, {"/runs/0/gauge", "7/9 AWG"}},
    {"duplicate ids",
     [] { return replaced("\"id\": \"lamp\"", "\"id\": \"feed\""); },
     {"/loads/0/id", "feed"}},
    {"duplicate keys",
     [] { return replaced("\"name\": \"bench\"", "\"name\": \"bench\", \"name\": \"b\""); },
     {"name"}},
    {"unknown key", [] { return replaced("\"takes\"", "\"takse\""); }, {"takse", "takes"}},
    {"a load across one point",
     [] { return replaced("\"minus\": \"l-\"", "\"minus\": \"l+\""); },
     {"/loads/0", "l+"}},
    {"a point that leads nowhere", [] { return replaced("\"to\": \"l+\"", "\"to\": \"l++\""); }, {"l++"}},
    {"a reading of no case",
     [] {
       return replaced("\"cases\"",
                       "\"readings\": [{\"volts\": 12, \"red\": \"b+\", \"black\": \"b-\", \"case\": "
                       "\"off\"}], \"cases\"");
     },
     {"/readings/0/case", "off"}},
    {"a battery shorted by a switch",
     [] {
       return replaced(
           "\"loads\"",
           "\"switches\": [{\"id\": \"oops\", \"from\": \"b+\", \"to\": \"b-\", \"kind\": \"toggle\", "
           "\"resistance\": 0}], \"loads\"");
     },
     {"bat", "oops", "2520 A"}},
};

TEST(BadInput, IsToldWithItsPlaceAndNothingElseHappens) {
  for (const Bad& bad : bad_files) {
    SCOPED_TRACE(bad.name);
    const TemporaryFolder folder;
    put_file(folder / "in.json", bad.bytes());
    const Ended ended = run_shell("ohmtrail solve in.json --json", folder.path());
    EXPECT_EQ(ended.exit, 2);
    EXPECT_EQ(ended.out, "");
    EXPECT_THAT(ended.err.substr(0, 300), HasSubstr("in.json"));
    for (const std::string& told : bad.told) EXPECT_THAT(ended.err.substr(0, 5000), HasSubstr(told));
    EXPECT_LT(ended.err.size(), 40'000'000U);
    EXPECT_EQ(std::distance(std::filesystem::directory_iterator(folder.path()), {}), 1);
  }
}

TEST(BadInput, EveryMistakeInAFileIsToldAtOnce) {
  const TemporaryFolder folder;
  std::string text = replaced("\"2 m\"", "\"-2 m\"");
  text.replace(text.find("6 AWG"), 5, "7/9 AWG");
  text.replace(text.find("24 W"), 4, "24 ft");
  put_file(folder / "in.json", text);
  const Ended ended = run_shell("ohmtrail solve in.json", folder.path());
  EXPECT_EQ(ended.exit, 2);
  EXPECT_EQ(std::count(ended.err.begin(), ended.err.end(), '\n'), 3) << ended.err;
}

TEST(BadInput, NoCommandWritesAnythingForAWrongFile) {
  for (const char* call : {"check in.json", "solve in.json --csv", "rank in.json", "draw in.json -o out.svg",
                           "report in.json -o out.pdf"}) {
    const TemporaryFolder folder;
    put_file(folder / "in.json", "{}");
    const Ended ended = run_shell(std::string("ohmtrail ") + call, folder.path());
    EXPECT_EQ(ended.exit, 2) << call;
    EXPECT_EQ(ended.out, "") << call;
    EXPECT_EQ(std::distance(std::filesystem::directory_iterator(folder.path()), {}), 1) << call;
  }
}

TEST(BadInput, AFileThatCannotBeReadIsNamed) {
  const Ended missing = run_shell("ohmtrail solve no-such.json", "/");
  EXPECT_EQ(missing.exit, 2);
  EXPECT_THAT(missing.err, HasSubstr("no-such.json: cannot be read: No such file"));
  const Ended folder = run_shell("ohmtrail solve /", "/");
  EXPECT_EQ(folder.exit, 2);
  EXPECT_THAT(folder.err, HasSubstr("is a folder"));
}

TEST(BadInput, ALargeFileIsRefusedWithItsSize) {
  const TemporaryFolder folder;
  put_file(folder / "in.json", "");
  std::filesystem::resize_file(folder / "in.json", (64U << 20) + (1U << 20));
  const Ended ended = run_shell("ohmtrail solve in.json", folder.path());
  EXPECT_EQ(ended.exit, 2);
  EXPECT_THAT(ended.err, HasSubstr("65.0 MiB; at most 64 MiB"));
  EXPECT_EQ(run_shell("ohmtrail solve - < in.json", folder.path()).exit, 2);
}

TEST(BadInput, AnEscapeSequenceInAFileDoesNotReachTheTerminal) {
  const TemporaryFolder folder;
  put_file(folder / "in.json", replaced("6 AWG", "\\u001b[2J\\u009b31m"));
  const Ended ended = run_shell("ohmtrail solve in.json", folder.path());
  EXPECT_EQ(ended.exit, 2);
  EXPECT_EQ(ended.err.find('\x1b'), std::string::npos);
  EXPECT_EQ(ended.err.find("\xC2\x9B"), std::string::npos);
}

}  // namespace
