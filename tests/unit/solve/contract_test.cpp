// Whole netlists against the point voltages and element currents of an independent dense solution, to 1e-6.
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "ohmtrail/netlist/read.hpp"
#include "ohmtrail/solve/case_solution.hpp"

namespace ohmtrail::solve {
namespace {

using nlohmann::json;

class Contract : public testing::TestWithParam<int> {};

json read_contract(int number) {
  const std::string path =
      OHMTRAIL_SOURCE_DIR "/tests/data/contract/solve-" + std::to_string(number) + ".json";
  std::ifstream file(path);
  if (!file) throw std::runtime_error("cannot read " + path);
  return json::parse(file);
}

void compare(const json& expected, const CaseSolution& solved) {
  double most_volts = 0;
  double most_amperes = 0;
  for (const auto& [point, volts] : expected.at("points").items())
    most_volts = std::max(most_volts, std::abs(volts.get<double>()));
  for (const auto& [id, amperes] : expected.at("currents").items())
    most_amperes = std::max(most_amperes, std::abs(amperes.get<double>()));
  for (const auto& [point, volts] : expected.at("points").items()) {
    const auto index = solved.network.point(point);
    ASSERT_TRUE(index) << point;
    EXPECT_NEAR(solved.solution.voltage[static_cast<std::size_t>(*index)], volts.get<double>(),
                1e-6 * most_volts)
        << point;
  }
  for (const auto& [id, amperes] : expected.at("currents").items()) {
    const auto index = solved.network.element(id);
    ASSERT_TRUE(index) << id;
    const double value = amperes.get<double>();
    EXPECT_NEAR(solved.solution.current[static_cast<std::size_t>(*index)], value,
                1e-6 * std::abs(value) + 1e-9 * most_amperes)
        << id;
  }
  EXPECT_EQ(expected.at("currents").size(), solved.network.elements.size());
}

TEST_P(Contract, PointsAndCurrentsAgree) {
  const json contract = read_contract(GetParam());
  const auto read = netlist::read(contract.at("netlist").dump());
  ASSERT_TRUE(read) << netlist::format(read.error().front(), "netlist");
  const json& expected = contract.at("expected");
  ASSERT_EQ(expected.size(), read->system.cases.size());
  for (std::size_t k = 0; k < expected.size(); ++k) {
    SCOPED_TRACE(read->system.cases[k].name);
    ASSERT_EQ(expected[k].at("case"), read->system.cases[k].name);
    const auto solved = solve_case(network::build(read->system, read->system.cases[k]));
    ASSERT_TRUE(solved);
    EXPECT_FALSE(solved->solution.collapse);
    compare(expected[k], *solved);
  }
}

INSTANTIATE_TEST_SUITE_P(SixSystems, Contract, testing::Range(1, 7));

}  // namespace
}  // namespace ohmtrail::solve
