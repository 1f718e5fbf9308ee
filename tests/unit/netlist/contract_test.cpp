#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "ohmtrail/netlist/read.hpp"

namespace ohmtrail::netlist {
namespace {

/// The netlist of a contract case, printed anew.
std::string contract_netlist(const std::string& name) {
  std::ifstream file(std::string(OHMTRAIL_SOURCE_DIR) + "/tests/data/contract/" + name + ".json");
  EXPECT_TRUE(file) << name;
  return nlohmann::ordered_json::parse(file)["netlist"].dump(1);
}

class Contract : public testing::TestWithParam<const char*> {};

TEST_P(Contract, ReadsWithoutMistakeOrDoubt) {
  const auto read_system = read(contract_netlist(GetParam()));
  ASSERT_TRUE(read_system) << format(read_system.error().front(), GetParam());
  for (const Problem& doubt : read_system->warnings) ADD_FAILURE() << format(doubt, GetParam());
  EXPECT_FALSE(read_system->system.batteries.empty());
  EXPECT_FALSE(read_system->system.runs.empty());
}

INSTANTIATE_TEST_SUITE_P(All, Contract,
                         testing::Values("solve-1", "solve-2", "solve-3", "solve-4", "solve-5", "solve-6",
                                         "infer-1", "infer-2", "infer-3"));

TEST(Contract, ValuesOfTheFirstCase) {
  const auto read_system = read(contract_netlist("solve-1"));
  ASSERT_TRUE(read_system);
  const System& system = read_system->system;
  EXPECT_EQ(system.info.name, "contract case 1 (invented)");
  EXPECT_EQ(system.batteries.at(0).emf, Voltage{12.6368});
  EXPECT_EQ(system.runs.at(2).id, "feed");
  EXPECT_EQ(system.runs.at(2).gauge.number, -1);
  EXPECT_EQ(system.runs.at(2).end_to.resistances.sound, Resistance{7.1776e-05});
  EXPECT_EQ(system.shunts.at(0).drop, Voltage{0.05});
  EXPECT_EQ(std::get<Resistance>(system.loads.at(0).takes), Resistance{4.206});
  ASSERT_EQ(system.cases.size(), 2U);
  EXPECT_TRUE(system.cases[0].all_on);
  EXPECT_EQ(system.cases[1].on, std::vector<std::string>{"load0"});
}

}  // namespace
}  // namespace ohmtrail::netlist
