#include <gmock/gmock.h>

#include <nlohmann/json.hpp>
#include <sstream>

#include "cli/text/printable.hpp"
#include "support/process.hpp"
#include "support/render_shipped.hpp"
#include "unit/cli/memory_doors.hpp"

// What every result keeps, whatever command it is of and whatever system: the page's width as text, the
// contract's frame as JSON, a rectangle as CSV. The systems are those of netlists/. `size` is left out: it
// ends by the clock.
namespace {

using nlohmann::json;
using ohmtrail::cli::columns_of;
using ohmtrail::test::Program;
using testing::IsEmpty;

struct Asked {
  std::string system;
  std::vector<std::string> call;
};

void PrintTo(const Asked& asked, std::ostream* out) {
  *out << asked.call.front() << " " << asked.system;
}

std::vector<Asked> all_asked() {
  std::vector<Asked> all;
  for (const char* system : ohmtrail::test::shipped_netlists)
    for (const char* command : {"check", "solve", "rank", "infer", "next", "bank"})
      all.push_back({system, {command, "boat.json"}});
  for (const char* system : ohmtrail::test::shipped_netlists)
    all.push_back({system, {"compare", "boat.json", "boat.json"}});
  return all;
}

/// The program after a call with one more word.
Program told(const Asked& asked, const std::string& as = "", bool colours = false) {
  Program program;
  program.files.content["boat.json"] =
      ohmtrail::test::file_content(std::string(OHMTRAIL_SOURCE_DIR) + "/netlists/" + asked.system + ".json");
  program.terminal.colours = colours;
  std::vector<std::string> call = asked.call;
  if (!as.empty()) call.push_back(as);
  EXPECT_EQ(program.run(call), 0) << program.terminal.complaints;
  EXPECT_THAT(program.files.written, IsEmpty()) << "nothing was asked to be written";
  return program;
}

std::vector<std::string> lines_of(const std::string& text, const std::string& end) {
  std::vector<std::string> lines;
  for (std::size_t start = 0, stop; (stop = text.find(end, start)) != std::string::npos;
       start = stop + end.size())
    lines.push_back(text.substr(start, stop - start));
  return lines;
}

/// Without `ESC [ … m`.
std::string without_colours(std::string text) {
  for (std::size_t at; (at = text.find("\x1b[")) != std::string::npos;)
    text.erase(at, text.find('m', at) + 1 - at);
  return text;
}

class EveryResult : public testing::TestWithParam<Asked> {};

TEST_P(EveryResult, AsTextKeepsToThePage) {
  const std::string text = told(GetParam()).terminal.shown;
  ASSERT_TRUE(text.ends_with('\n'));
  for (const std::string& line : lines_of(text, "\n")) {
    EXPECT_LE(columns_of(line), 80U) << line;
    EXPECT_FALSE(line.ends_with(' ')) << '"' << line << '"';
    EXPECT_EQ(line, ohmtrail::cli::printable(line));
  }
}

TEST_P(EveryResult, InColourSaysTheSameWords) {
  const std::string colourful = told(GetParam(), "", true).terminal.shown;
  EXPECT_EQ(without_colours(colourful), told(GetParam()).terminal.shown);
}

TEST_P(EveryResult, AsJsonHasTheContractsFrame) {
  const json result = json::parse(told(GetParam(), "--json").terminal.shown);
  EXPECT_EQ(result.at("ohmtrail"), 1);
  EXPECT_EQ(result.at("result"), GetParam().call.front());
  EXPECT_EQ(result.at("system"), ohmtrail::test::shipped(GetParam().system).info.name);
  for (const json& one : result.at("assumptions")) {
    EXPECT_TRUE(one.at("id").is_string());
    EXPECT_FALSE(one.at("text").get<std::string>().empty());
    EXPECT_TRUE(one.at("value").is_number() || one.at("value").is_null());
  }
}

/// Cells of one line of CSV (RFC 4180, section 2).
std::size_t cells_in(const std::string& line) {
  std::size_t cells = 1;
  bool quoted = false;
  for (const char c : line) {
    if (c == '"') quoted = !quoted;
    if (c == ',' && !quoted) ++cells;
  }
  EXPECT_FALSE(quoted) << line;
  return cells;
}

TEST_P(EveryResult, AsCsvIsARectangleUnderItsHeadings) {
  const std::string text = told(GetParam(), "--csv").terminal.shown;
  const auto lines = lines_of(text, "\r\n");
  ASSERT_FALSE(lines.empty());
  for (const std::string& line : lines) EXPECT_EQ(cells_in(line), cells_in(lines.front())) << line;
}

TEST_P(EveryResult, IsTheSameEveryTime) {
  EXPECT_EQ(told(GetParam(), "--json").terminal.shown, told(GetParam(), "--json").terminal.shown);
}

std::string name_of(const testing::TestParamInfo<Asked>& info) {
  std::string name = info.param.call.front() + "_" + info.param.system;
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Shipped, EveryResult, testing::ValuesIn(all_asked()), name_of);

}  // namespace
