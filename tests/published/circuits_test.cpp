// Worked circuits with the answers that their books print. Each folder below circuits/ is one: input.json,
// expected.json with the publication's value and an absolute tolerance that covers its rounding, README.md
// with the source. Quantities: node_voltage (against node 0, or "a-b"), branch_current (from → to through the
// element), power (taken; supplied is negative), equivalent_resistance ("a-b", the source between the two
// left out and all others at zero).
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>

#include "ohmtrail/solve/solver.hpp"

namespace ohmtrail::solve {
namespace {

using nlohmann::json;

json read_json(const std::filesystem::path& path) {
  std::ifstream file(path);
  if (!file) throw std::runtime_error("cannot read " + path.string());
  return json::parse(file);
}

std::filesystem::path folder() {
  return std::filesystem::path(OHMTRAIL_SOURCE_DIR) / "tests/published/circuits";
}

std::vector<std::string> case_names() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(folder()))
    names.push_back(entry.path().filename());
  std::sort(names.begin(), names.end());
  return names;
}

struct Worked {
  Circuit circuit;
  std::map<std::string, int> points;
  std::map<std::string, int> elements;
  std::map<std::string, double> sign;  ///< −1 where our branch points the other way

  int point(const std::string& name) {
    const auto [found, added] = points.try_emplace(name, static_cast<int>(points.size()));
    return found->second;
  }

  void add(const json& element) {
    const std::string kind = element.at("kind");
    const double value = element.at("value");
    Branch branch;
    branch.from = point(element.at("from"));
    branch.to = point(element.at("to"));
    sign[element.at("id")] = 1;
    if (kind == "resistor") {
      branch.law = Law::resistor;
      branch.resistance = value;
    } else if (kind == "voltage_source") {
      branch.law = Law::source;
      branch.size = value;
    } else if (kind == "constant_power_load") {
      branch.law = Law::power;
      branch.size = value;
      branch.nominal = 1;
    } else if (kind == "diode_fixed_drop") {
      branch.law = Law::diode;
      branch.size = value;
    } else if (kind == "current_source") {  // a charger far below its set point delivers its limit
      branch.law = Law::regulator;
      std::swap(branch.from, branch.to);
      branch.size = 1e6;
      branch.limit = value;
      sign[element.at("id")] = -1;
    } else {
      throw std::runtime_error("unknown kind " + kind);
    }
    elements[element.at("id")] = static_cast<int>(circuit.branches.size());
    circuit.branches.push_back(branch);
  }
};

Worked read_case(const std::string& name) {
  Worked worked;
  worked.circuit.reference = worked.point("0");
  const json input = read_json(folder() / name / "input.json");
  for (const json& element : input.at("elements")) worked.add(element);
  worked.circuit.points = static_cast<int>(worked.points.size());
  return worked;
}

/// The two names in "a-b"; the second is node 0 where there is no dash.
std::pair<int, int> two_points(Worked& worked, const std::string& where) {
  if (worked.points.contains(where)) return {worked.points.at(where), worked.points.at("0")};
  const auto dash = where.find('-');
  return {worked.points.at(where.substr(0, dash)), worked.points.at(where.substr(dash + 1))};
}

double equivalent_resistance(Worked worked, const std::string& where) {
  const auto [a, b] = two_points(worked, where);
  const auto ends = std::minmax(a, b);
  std::erase_if(worked.circuit.branches, [&](const Branch& branch) {
    const bool source = branch.law == Law::source || branch.law == Law::regulator;
    return source && std::minmax(branch.from, branch.to) == ends;
  });
  for (Branch& branch : worked.circuit.branches) {
    if (branch.law == Law::source) branch.size = 0;
  }
  Branch one_volt;
  one_volt.law = Law::source;
  one_volt.from = a;
  one_volt.to = b;
  one_volt.size = 1;
  worked.circuit.branches.push_back(one_volt);
  return -1 / Solver(worked.circuit).solve().value().current.back();
}

double value_of(Worked& worked, const Solution& solution, const json& expected) {
  const std::string quantity = expected.at("quantity");
  const std::string where = expected.at("where");
  const auto at = [](int index) { return static_cast<std::size_t>(index); };
  if (quantity == "equivalent_resistance") return equivalent_resistance(worked, where);
  if (quantity == "node_voltage") {
    const auto [a, b] = two_points(worked, where);
    return solution.voltage[at(a)] - solution.voltage[at(b)];
  }
  const std::size_t element = at(worked.elements.at(where));
  if (quantity == "branch_current") return worked.sign.at(where) * solution.current[element];
  if (quantity == "power") return solution.drop[element] * solution.current[element];
  throw std::runtime_error("unknown quantity " + quantity);
}

class WorkedCircuit : public testing::TestWithParam<std::string> {};

TEST_P(WorkedCircuit, GivesThePrintedAnswers) {
  Worked worked = read_case(GetParam());
  const auto solution = Solver(worked.circuit).solve();
  ASSERT_TRUE(solution);
  const json expected = read_json(folder() / GetParam() / "expected.json").at("expected");
  ASSERT_FALSE(expected.empty());
  for (const json& one : expected) {
    const double tolerance = one.at("tolerance");
    EXPECT_NEAR(value_of(worked, *solution, one), one.at("value").get<double>(), tolerance) << one;
  }
  EXPECT_TRUE(std::filesystem::exists(folder() / GetParam() / "README.md"));
}

std::string test_name(const testing::TestParamInfo<std::string>& info) {
  std::string name = info.param;
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Published, WorkedCircuit, testing::ValuesIn(case_names()), test_name);

TEST(WorkedCircuits, AreAllThere) {
  EXPECT_EQ(case_names().size(), 28u);
}

}  // namespace
}  // namespace ohmtrail::solve
