#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <set>

#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/netlist/read.hpp"

namespace ohmtrail::diagnose {
namespace {

struct PlantedCase {
  netlist::System system;
  std::set<std::string> planted;
  std::map<std::string, double> resistances;
};

PlantedCase load(const std::string& name) {
  std::ifstream file(std::string(OHMTRAIL_SOURCE_DIR) + "/tests/data/contract/" + name + ".json");
  EXPECT_TRUE(file) << name;
  const auto json = nlohmann::ordered_json::parse(file);
  const auto read = netlist::read(json["netlist"].dump());
  EXPECT_TRUE(read) << name;
  return {read->system, json["planted"].get<std::set<std::string>>(),
          json["true_resistances"].get<std::map<std::string, double>>()};
}

class PlantedFaults : public testing::TestWithParam<const char*> {};

TEST_P(PlantedFaults, AreTheFirstSuspects) {
  const PlantedCase given = load(GetParam());
  const auto result = infer(given.system);
  ASSERT_TRUE(result);
  const std::set<std::string> first(
      result->suspects.begin(), result->suspects.begin() + static_cast<std::ptrdiff_t>(given.planted.size()));
  EXPECT_EQ(first, given.planted);
  for (const InferredElement& element : result->elements) {
    if (given.planted.contains(element.id)) {
      EXPECT_GT(element.fault_probability, 0.9) << element.id;
    } else {
      EXPECT_LT(element.fault_probability, 0.3) << element.id;
    }
  }
}

TEST_P(PlantedFaults, ReadingsAreExplained) {
  const PlantedCase given = load(GetParam());
  const auto result = infer(given.system);
  ASSERT_TRUE(result);
  EXPECT_EQ(result->readings.size(), given.system.readings.size());
  EXPECT_GT(result->fit.p_value, 0.001);
  for (const InferredReading& reading : result->readings) {
    EXPECT_FALSE(reading.suspect) << reading.index;
  }
}

// One clamp stands behind all resistances of a survey, so that they are off together: counted over the three.
TEST(PlantedFault, IntervalsHoldForMost) {
  int inside = 0, all = 0;
  for (const char* name : {"infer-1", "infer-2", "infer-3"}) {
    const PlantedCase given = load(name);
    const auto result = infer(given.system);
    ASSERT_TRUE(result);
    for (const InferredElement& element : result->elements) {
      const double truth = given.resistances.at(element.id);
      inside += truth >= element.low && truth <= element.high ? 1 : 0;
      ++all;
      EXPECT_LT(element.low, element.resistance);
      EXPECT_LT(element.resistance, element.high);
    }
  }
  EXPECT_GE(inside, 0.75 * all);
}

INSTANTIATE_TEST_SUITE_P(All, PlantedFaults, testing::Values("infer-1", "infer-2", "infer-3"));

}  // namespace
}  // namespace ohmtrail::diagnose
