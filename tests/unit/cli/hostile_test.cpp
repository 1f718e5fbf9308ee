#include <gmock/gmock.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "cli/text/printable.hpp"
#include "support/hostile_names.hpp"
#include "support/process.hpp"
#include "support/xml.hpp"
#include "unit/cli/memory_doors.hpp"

// Names that look like markup, formulas, commands or escape sequences stay names in every output.
namespace {

using namespace ohmtrail::test;
using ohmtrail::cli::Character;

struct HostileTest : testing::TestWithParam<HostileAs> {
  Program program;

  void SetUp() override { program.files.content["boat.json"] = hostile_netlist(GetParam()); }
  std::string shown(const std::vector<std::string>& call, bool colours = false) {
    program.terminal = {};
    program.terminal.colours = colours;
    const int exit = program.run(call);
    EXPECT_TRUE(exit == 0 || exit == 1) << exit << " " << program.terminal.complaints.substr(0, 500);
    return program.terminal.shown;
  }
  std::string written(const std::string& command, const std::string& output) {
    (void)shown({command, "boat.json", "-o", output});
    return program.files.content[output];
  }
};

/// The first character that a terminal would obey, as a code; 0 where there is none.
char32_t obeyed(std::string_view text) {
  while (!text.empty()) {
    const Character character = ohmtrail::cli::take_character(text);
    if (character.code != '\n' && !may_be_shown(character)) return character.valid ? character.code : 0xFFFF;
  }
  return 0;
}

const std::vector<std::vector<std::string>> text_calls{
    {"check", "boat.json"}, {"solve", "boat.json"}, {"rank", "boat.json", "--top", "500"},
    {"infer", "boat.json"}, {"next", "boat.json"},  {"compare", "boat.json", "boat.json"},
    {"bank", "boat.json"}};

TEST_P(HostileTest, NothingThatATerminalObeysReachesIt) {
  for (const auto& call : text_calls) {
    const std::string text = shown(call);
    EXPECT_GT(text.size(), 100U);
    EXPECT_EQ(obeyed(text), 0U) << call[0];
    EXPECT_EQ(obeyed(program.terminal.complaints), 0U) << call[0];
  }
}

TEST_P(HostileTest, NothingThatATerminalObeysIsSaidInAGuidedSearch) {
  program.terminal.typed = {"1",
                            "why",
                            "0.05",
                            "seen \x1b[2J\u202E",
                            "\x9b"
                            "31m",
                            "back",
                            "skip",
                            "done"};
  EXPECT_EQ(program.run({"trace", "boat.json", "-o", "\x1b[1m.json"}), 0) << program.terminal.complaints;
  EXPECT_GT(program.terminal.shown.size(), 500U);
  EXPECT_EQ(obeyed(program.terminal.shown), 0U);
  EXPECT_EQ(obeyed(program.terminal.complaints), 0U);
}

TEST_P(HostileTest, OfColoursOnlyOurOwnReachIt) {
  const std::regex own("\x1b\\[[0-9;]*m");
  bool any = false;
  for (const auto& call : text_calls) {
    const std::string coloured = shown(call, true), bare = shown(call);
    any = any || coloured != bare;
    EXPECT_EQ(std::regex_replace(coloured, own, ""), bare) << call[0];
  }
  EXPECT_TRUE(any) << "nothing was coloured";
}

TEST_P(HostileTest, EveryTableKeepsToItsPage) {
  for (const auto& call : text_calls) {
    std::istringstream lines(shown(call));
    for (std::string line; std::getline(lines, line);)
      EXPECT_LE(ohmtrail::cli::columns_of(line), 100U) << line;
  }
}

/// The first character that no page should hold: a control, or one that turns the text around it.
char32_t disturbing(std::string_view text) {
  while (!text.empty()) {
    const Character character = ohmtrail::cli::take_character(text);
    const char32_t code = character.valid ? character.code : 0xFFFF;
    if ((code < 0x20 && code != '\n') || (code >= 0x7F && code < 0xA0) ||
        (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069) || code == 0xFFFF)
      return code;
  }
  return 0;
}

/// The cells of a comma-separated table as RFC 4180 reads them.
std::vector<std::vector<std::string>> cells_of(const std::string& csv) {
  std::vector<std::vector<std::string>> rows(1, {""});
  bool quoted = false;
  for (std::size_t i = 0; i < csv.size(); ++i) {
    std::string& cell = rows.back().back();
    if (quoted && csv[i] == '"' && i + 1 < csv.size() && csv[i + 1] == '"')
      cell += csv[i++];
    else if (csv[i] == '"' && (quoted || cell.empty()))
      quoted = !quoted;
    else if (!quoted && csv[i] == ',')
      rows.back().emplace_back();
    else if (!quoted && csv[i] == '\n')
      rows.push_back({""});
    else if (quoted || csv[i] != '\r')
      cell += csv[i];
  }
  rows.pop_back();
  return rows;
}

bool begins_a_formula(std::string_view cell) {
  while (!cell.empty()) {
    const Character character = ohmtrail::cli::take_character(cell);
    const bool blank = character.code == ' ' || character.code == 0xA0 || character.code == 0x3000;
    if (!blank && ohmtrail::cli::columns_of(character.bytes) > 0)
      return std::u32string_view(U"=+-@\t\r＝＋－＠").find(character.code) != std::u32string_view::npos;
  }
  return false;
}

bool is_number(const std::string& cell) {
  return std::regex_match(cell, std::regex(R"([+-]?[0-9]+(\.[0-9]*)?([eE][+-]?[0-9]+)?)"));
}

TEST_P(HostileTest, NoCellOfASpreadsheetBeginsAFormula) {
  for (std::vector<std::string> call : text_calls) {
    const std::string command = call[0];
    call.emplace_back("--csv");
    const auto rows = cells_of(shown(call));
    ASSERT_GT(rows.size(), 1U) << command;
    for (const auto& row : rows) {
      EXPECT_EQ(row.size(), rows.front().size()) << command << ": " << row.front();
      for (const std::string& cell : row) {
        EXPECT_TRUE(!begins_a_formula(cell) || is_number(cell)) << command << ": " << cell;
        EXPECT_EQ(obeyed(cell), 0U) << command << ": " << cell;
      }
    }
  }
}

TEST_P(HostileTest, JsonGivesEveryNameBack) {
  const auto result = nlohmann::json::parse(shown({"solve", "boat.json", "--json"}));
  std::set<std::string> seen;
  const auto& first = result["cases"][0];
  for (const auto& [point, volts] : first["points"].items()) seen.insert(point);
  for (const auto& element : first["elements"]) {
    const std::string id = element["id"];
    seen.insert(id.substr(0, id.find('/')));
  }
  for (const std::string& name : names_borne_by(GetParam())) EXPECT_TRUE(seen.contains(name)) << name;
}

TEST_P(HostileTest, PicturesAreWellFormedAndHoldNoScript) {
  const std::string bytes = written("draw", "a.svg");
  const XmlSummary read = read_xml(bytes);
  EXPECT_EQ(read.mistake, "");
  for (const auto& [element, count] : read.count)
    EXPECT_TRUE(
        std::set<std::string>({"svg", "g", "title", "desc", "text", "tspan", "path", "rect", "circle", "defs",
                               "linearGradient", "stop", "line", "polyline", "ellipse", "style", "polygon"})
            .contains(element))
        << element;
  EXPECT_EQ(disturbing(bytes), 0U);
}

/// Every name of a tag and of an attribute in an HTML text.
std::set<std::string> tags_and_attributes(const std::string& html) {
  const std::regex tag(R"(<(/?[A-Za-z!][^\s>/]*)((?:\s+[^\s=>/]+(?:="[^"]*")?)*)\s*/?>)");
  const std::regex attribute(R"(\s([^\s=>/"]+)(?:="[^"]*")?)");
  std::set<std::string> names;
  for (std::sregex_iterator at(html.begin(), html.end(), tag), end; at != end; ++at) {
    names.insert((*at)[1]);
    const std::string inside = (*at)[2];
    for (std::sregex_iterator one(inside.begin(), inside.end(), attribute); one != end; ++one)
      names.insert((*one)[1]);
  }
  return names;
}

TEST_P(HostileTest, ReportsForABrowserGetNoTagFromAName) {
  program.files.content["plain.json"] = file_content(OHMTRAIL_SOURCE_DIR "/netlists/yacht-12v.json");
  (void)shown({"report", "plain.json", "-o", "plain.html"});
  const std::string html = written("report", "a.html");
  const auto plain = tags_and_attributes(program.files.content["plain.html"]);
  EXPECT_GT(plain.size(), 20U);
  for (const std::string& name : tags_and_attributes(html)) EXPECT_TRUE(plain.contains(name)) << name;
  const auto unpaired = [](const std::string& text) {
    return std::count(text.begin(), text.end(), '<') - std::count(text.begin(), text.end(), '>');
  };
  EXPECT_EQ(unpaired(html), unpaired(program.files.content["plain.html"]));
  EXPECT_EQ(disturbing(html), 0U);
}

TEST_P(HostileTest, ReportsOnPaperAreWhole) {
  const TemporaryFolder folder;
  put_file(folder / "a.pdf", written("report", "a.pdf"));
  const Ended ended = run_shell("pdftotext -q a.pdf - && pdfinfo a.pdf", folder.path());
  EXPECT_EQ(ended.exit, 0) << ended.err;
  EXPECT_THAT(ended.out, testing::HasSubstr("onerror"));
  EXPECT_THAT(ended.out, testing::ContainsRegex("JavaScript: +no"));
}

INSTANTIATE_TEST_SUITE_P(Names, HostileTest,
                         testing::Values(HostileAs::load, HostileAs::run, HostileAs::point, HostileAs::part));

/// No text that a terminal obeys, no cell that begins a formula.
void expect_harmless(const std::string& csv) {
  for (const auto& row : cells_of(csv))
    for (const std::string& cell : row) {
      EXPECT_TRUE(!begins_a_formula(cell) || is_number(cell)) << cell;
      EXPECT_EQ(obeyed(cell), 0U) << cell;
    }
}

TEST(Hostile, NamesStayNamesInTheChoiceOfCable) {
  for (const std::string& name : hostile_names()) {
    Program program;
    nlohmann::json boat = nlohmann::json::parse(
        R"({"ohmtrail": 1, "system": {"nominal": 12},
            "batteries": [{"id": "B", "plus": "+", "minus": "-", "nominal": 12}],
            "runs": [{"from": "+", "to": "L+", "gauge": "8 AWG", "length": 4}],
            "loads": [{"id": "lamp", "plus": "L+", "minus": "-", "takes": "8 A"}]})");
    boat["system"]["name"] = boat["runs"][0]["id"] = name;
    program.files.content["boat.json"] = boat.dump();
    EXPECT_EQ(program.run({"size", "boat.json", "-o", "new.json"}), 0) << program.terminal.complaints;
    EXPECT_EQ(obeyed(program.terminal.shown + program.terminal.complaints), 0U) << name;
    EXPECT_EQ(nlohmann::json::parse(program.files.content["new.json"])["runs"][0]["id"], name);
    program.terminal = {};
    EXPECT_EQ(program.run({"size", "boat.json", "--csv"}), 0) << name;
    expect_harmless(program.terminal.shown);
  }
}

TEST(Hostile, ControlCharactersAreRefusedAndNeverEchoed) {
  for (int code = 1; code < 0xA0; code += code == 0x1F ? 0x60 : 1) {
    Program program;
    const std::string raw = code < 0x80 ? std::string(1, static_cast<char>(code))
                                        : "\xC2" + std::string(1, static_cast<char>(code));
    char escaped[8];
    std::snprintf(escaped, sizeof escaped, "\\u%04x", static_cast<unsigned>(code));
    for (const std::string& spelled : {raw, std::string(escaped)}) {
      program.files.content["boat.json"] =
          R"({"ohmtrail": 1, "system": {"name": "x", "nominal": "12 V"}, "batteries": [{"id": "a)" + spelled +
          R"([2J", "plus": "p", "minus": "m", "nominal": "12 V"}]})";
      EXPECT_EQ(program.run({"solve", "boat.json"}), 2) << code;
      EXPECT_EQ(obeyed(program.terminal.complaints), 0U) << code;
      EXPECT_EQ(program.terminal.shown, "");
    }
  }
}

TEST(Hostile, WhatIsTypedOnTheCommandLineIsNeverEchoedRaw) {
  Program program;
  const std::string bad = "\x1b[31m\u202E\xFF\xC2\x9B";
  program.files.content["boat.json"] = file_content(OHMTRAIL_SOURCE_DIR "/netlists/camper-12v.json");
  const std::vector<std::vector<std::string>> calls{
      {bad},
      {"solve", bad},
      {"solve", "boat.json", "--case", bad},
      {"solve", "boat.json", bad},
      {"solve", "boat.json", "--" + bad},
      {"rank", "boat.json", "--by", bad},
      {"rank", "boat.json", "--top", bad},
      {"draw", "boat.json", "-o", bad},
      {"draw", "boat.json", "-o", "a.svg", "--load", bad, "--staircase"},
      {"tables", bad},
      {"help", bad}};
  for (const auto& call : calls) {
    EXPECT_EQ(program.run(call), 2) << call[0];
    EXPECT_EQ(obeyed(program.terminal.complaints + program.terminal.shown), 0U) << call[0];
  }
  EXPECT_EQ(program.run({"draw", "boat.json", "-o", bad + ".svg"}), 0);
  EXPECT_EQ(obeyed(program.terminal.shown), 0U);
}

}  // namespace
