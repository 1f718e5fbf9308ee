#include <gmock/gmock.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <set>

#include "support/process.hpp"

// The JSON of `solve` against the contract: names, order, signs, null, and an independent dense solution.
namespace {

using namespace ohmtrail::test;
using nlohmann::ordered_json;

std::vector<std::string> keys(const ordered_json& object) {
  std::vector<std::string> names;
  for (const auto& [name, value] : object.items()) names.push_back(name);
  return names;
}

ordered_json solved(const ordered_json& netlist) {
  const TemporaryFolder folder;
  put_file(folder / "in.json", netlist.dump());
  const Ended ended = run_shell("ohmtrail solve in.json --json", folder.path());
  EXPECT_EQ(ended.exit, 0) << ended.err;
  return ordered_json::parse(ended.out);
}

const ordered_json& by_id(const ordered_json& list, const std::string& id) {
  for (const ordered_json& one : list)
    if (one["id"] == id) return one;
  throw std::runtime_error("no " + id);
}

void near(double found, double expected, const std::string& what) {
  EXPECT_NEAR(found, expected, 1e-6 * std::abs(expected) + 1e-9) << what;
}

TEST(ContractOfSolve, AgreesWithAnIndependentDenseSolution) {
  int files = 0;
  for (int n = 1; n <= 6; ++n) {
    const std::string path = OHMTRAIL_SOURCE_DIR "/tests/data/contract/solve-" + std::to_string(n) + ".json";
    SCOPED_TRACE(path);
    const ordered_json contract = ordered_json::parse(file_content(path));
    const ordered_json result = solved(contract["netlist"]);
    ASSERT_EQ(result["cases"].size(), contract["expected"].size());
    for (std::size_t c = 0; c < contract["expected"].size(); ++c) {
      const ordered_json& expected = contract["expected"][c];
      const ordered_json& found = result["cases"][c];
      EXPECT_EQ(found["case"], expected["case"]);
      ASSERT_FALSE(expected["points"].empty());
      for (const auto& [point, volts] : expected["points"].items())
        near(found["points"][point], volts, point);
      const char* name = expected.contains("currents") ? "currents" : "elements";
      ASSERT_FALSE(expected[name].empty());
      for (const auto& [id, amperes] : expected[name].items())
        near(by_id(found["elements"], id)["current"], amperes, id);
    }
    ++files;
  }
  EXPECT_EQ(files, 6);
}

TEST(ContractOfSolve, NamesAndOrdersItsFields) {
  const auto contract =
      ordered_json::parse(file_content(OHMTRAIL_SOURCE_DIR "/tests/data/contract/solve-1.json"));
  const ordered_json result = solved(contract["netlist"]);
  using testing::ElementsAre;
  EXPECT_THAT(keys(result), ElementsAre("ohmtrail", "result", "system", "assumptions", "cases"));
  EXPECT_EQ(result["ohmtrail"], 1);
  EXPECT_EQ(result["result"], "solve");
  EXPECT_EQ(result["system"], contract["netlist"]["system"]["name"]);
  const ordered_json& one = result["cases"][0];
  EXPECT_THAT(keys(one), ElementsAre("case", "status", "points", "elements", "loads", "check", "collapse",
                                     "feeds", "circulating"));
  EXPECT_EQ(one["status"], "solved");
  EXPECT_TRUE(one["collapse"].is_null());
  EXPECT_THAT(keys(one["elements"][0]), ElementsAre("id", "role", "from", "to", "current", "drop", "heat",
                                                    "resistance", "temperature"));
  EXPECT_THAT(keys(one["loads"][0]),
              ElementsAre("id", "volts", "current", "power", "supply", "drop", "drop_percent",
                          "limit_percent", "within", "sag", "running"));
  EXPECT_THAT(keys(one["check"]), ElementsAre("current_residual", "power_residual"));
  EXPECT_LE(one["check"]["current_residual"].get<double>(), 1e-9);
  EXPECT_LE(one["check"]["power_residual"].get<double>(), 1e-9);
}

TEST(ContractOfSolve, KnowsTheTenRolesOnly) {
  const std::set<std::string> known{"battery", "charger", "wire",  "termination", "joint",
                                    "switch",  "fuse",    "shunt", "isolator",    "load"};
  for (int n = 1; n <= 6; ++n) {
    const std::string path = OHMTRAIL_SOURCE_DIR "/tests/data/contract/solve-" + std::to_string(n) + ".json";
    const auto result = solved(ordered_json::parse(file_content(path))["netlist"]);
    ASSERT_FALSE(result["cases"].empty()) << path;
    ASSERT_FALSE(result["cases"][0]["elements"].empty()) << path;
    for (const auto& one : result["cases"])
      for (const auto& element : one["elements"])
        EXPECT_TRUE(known.contains(element["role"])) << element["role"];
  }
}

const char* const small = R"({"ohmtrail": 1, "system": {"name": "bench", "nominal": "12 V"},
 "batteries": [{"id": "bat", "plus": "b+", "minus": "b-", "nominal": "12 V", "emf": "12.6 V", "resistance": "5 mohm"}],
 "switches": [{"id": "main", "from": "b+", "to": "m+", "kind": "toggle", "resistance": "1 mohm"}],
 "loads": [{"id": "lamp", "plus": "m+", "minus": "b-", "takes": "10 A"},
           {"id": "spare", "plus": "m+", "minus": "b-", "takes": "10 A"}],
 "cases": [{"name": "on", "on": ["lamp"]}, {"name": "open", "on": "all", "open": ["main"]}]})";

TEST(ContractOfSolve, SignsAreThoseOfTheContract) {
  const ordered_json on = solved(ordered_json::parse(small))["cases"][0];
  EXPECT_NEAR(by_id(on["elements"], "bat")["current"].get<double>(), -10, 1e-9);
  EXPECT_NEAR(by_id(on["elements"], "bat")["drop"].get<double>(), 12.55, 1e-9);
  EXPECT_NEAR(by_id(on["elements"], "bat")["heat"].get<double>(), 0.5, 1e-9);
  EXPECT_NEAR(by_id(on["elements"], "main")["current"].get<double>(), 10, 1e-9);
  EXPECT_NEAR(by_id(on["elements"], "main")["drop"].get<double>(), 0.01, 1e-9);
  const ordered_json& lamp = by_id(on["loads"], "lamp");
  EXPECT_NEAR(lamp["current"].get<double>(), 10, 1e-9);
  EXPECT_NEAR(lamp["drop"].get<double>(), 0.01, 1e-9);
  EXPECT_NEAR(lamp["sag"].get<double>(), 0.06, 1e-9);
  EXPECT_NEAR(lamp["drop_percent"].get<double>(), 0.01 / 12 * 100, 1e-9);
  EXPECT_EQ(lamp["limit_percent"], 10);
  EXPECT_EQ(lamp["supply"], "bat");
}

TEST(ContractOfSolve, WhatDoesNotExistIsNull) {
  const ordered_json result = solved(ordered_json::parse(small));
  const ordered_json& on = result["cases"][0];
  EXPECT_EQ(by_id(on["elements"], "spare")["current"], 0);
  EXPECT_TRUE(by_id(on["elements"], "spare")["resistance"].is_null());
  EXPECT_EQ(by_id(on["loads"], "spare")["running"], false);
  const ordered_json& open = result["cases"][1];
  EXPECT_EQ(by_id(open["elements"], "main")["current"], 0);
  EXPECT_TRUE(by_id(open["elements"], "main")["resistance"].is_null());
  EXPECT_EQ(by_id(open["loads"], "lamp")["running"], false);
}

TEST(ContractOfSolve, ACaseThatIsNamedComesAlone) {
  const TemporaryFolder folder;
  put_file(folder / "in.json", small);
  const Ended ended = run_shell("ohmtrail solve in.json --json --case open", folder.path());
  const ordered_json result = ordered_json::parse(ended.out);
  ASSERT_EQ(result["cases"].size(), 1U);
  EXPECT_EQ(result["cases"][0]["case"], "open");
}

TEST(ContractOfSolve, StandardInputGivesTheSameBytes) {
  const TemporaryFolder folder;
  put_file(folder / "in.json", small);
  const Ended file = run_shell("ohmtrail solve in.json --json", folder.path());
  EXPECT_EQ(file.out, run_shell("ohmtrail solve --json - < in.json", folder.path()).out);
  EXPECT_EQ(file.out, run_shell("cat in.json | ohmtrail solve --json -", folder.path()).out);
}

}  // namespace
