#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/netlist/read.hpp"
#include "support/simulated_survey.hpp"

namespace ohmtrail::diagnose {
namespace {

test::SurveyOptions options_of(test::Readings readings) {
  test::SurveyOptions options;
  options.layout.elements = 30;
  options.readings = readings;
  options.battery_may_fail = false;
  return options;
}

TEST(InferFindings, CleanSurveyProposesNoSlipAndNamesNoReading) {
  for (std::uint64_t seed = 60; seed < 66; ++seed) {
    const auto survey = test::simulate(seed, options_of(test::Readings::elements_and_spans));
    const auto result = infer(survey.system);
    ASSERT_TRUE(result);
    for (const InferredReading& row : result->readings) {
      EXPECT_FALSE(row.suspect) << seed << ' ' << row.index;
      EXPECT_EQ(row.slip, Slip::none) << seed << ' ' << row.index;
    }
  }
}

// Half as much again of a run's drop: no slip of the hand makes that, so it is only named, with its value.
TEST(InferFindings, GrossReadingIsNamedWithTheValueItWouldHaveToBe) {
  auto survey = test::simulate(9, options_of(test::Readings::elements_and_spans));
  const auto run = std::find_if(survey.system.runs.begin(), survey.system.runs.end(),
                                [](const netlist::Run& one) { return one.id == "feed-negative"; });
  ASSERT_NE(run, survey.system.runs.end());
  const auto reading = std::find_if(survey.system.readings.begin(), survey.system.readings.end(),
                                    [&](const netlist::Reading& one) {
                                      const auto* volts = std::get_if<netlist::VoltsReading>(&one.what);
                                      return volts && volts->red == run->from && volts->black == run->to;
                                    });
  ASSERT_NE(reading, survey.system.readings.end());
  auto& value = std::get<netlist::VoltsReading>(reading->what).value;
  const double right = value.si();
  value = units::Voltage{1.5 * right};
  const auto result = infer(survey.system);
  ASSERT_TRUE(result);
  const auto index = static_cast<std::size_t>(reading - survey.system.readings.begin());
  const InferredReading& row = result->readings[index];
  EXPECT_TRUE(row.suspect);
  EXPECT_EQ(row.slip, Slip::none);
  EXPECT_GE(row.redundancy, 0.3);
  EXPECT_FALSE(row.critical);
  EXPECT_NEAR(row.would_be, right, 4 * row.would_be_sigma);
}

// Where only every third point is read, the fault is somewhere in a run: the group has nearly all the odds,
// no member of it has, and the members' odds are the group's divided.
TEST(InferFindings, FaultInARunReadAsAWholeIsSomewhereInIt) {
  int seen = 0;
  for (std::uint64_t seed = 100; seed < 112; ++seed) {
    const auto survey = test::simulate(seed, options_of(test::Readings::every_third_point));
    const auto result = infer(survey.system);
    ASSERT_TRUE(result);
    const std::string& planted = survey.truth.planted.front();
    for (const UnresolvedGroup& group : result->unresolved) {
      if (std::count(group.ids.begin(), group.ids.end(), planted) == 0 || group.fault_probability < 0.9)
        continue;
      double members = 0;
      for (const InferredElement& e : result->elements)
        members += std::count(group.ids.begin(), group.ids.end(), e.id) > 0 ? e.fault_probability : 0;
      EXPECT_GE(members, group.fault_probability - 1e-3) << "at least one of them";
      EXPECT_LT(members, 1.5) << "but hardly two";
      EXPECT_FALSE(group.separate_at.empty());
      ++seen;
    }
  }
  EXPECT_GE(seen, 6);
}

// Two banks side by side, a cell of one missing: currents go round that no sound system has. A climb that
// starts from one fits nothing and once blamed five cables for sure.
TEST(InferFindings, MissingCellOfOneOfTwoBanksIsFound) {
  test::SurveyOptions options = test::varied_options(320);
  options.faults = test::by_chance;
  options.readings = test::Readings::every_third_point;
  const auto survey = test::simulate(40320, options);
  const auto result = infer(survey.system);
  ASSERT_TRUE(result);
  EXPECT_EQ(result->suspects.front(), "bank1");
  EXPECT_GT(result->batteries[1].cell_missing_probability, 0.9);
  EXPECT_GT(result->fit.p_value, 1e-3);
  const auto& planted = survey.truth.planted;
  for (const InferredElement& e : result->elements) {
    const bool blamed = e.fault_probability > 0.9;
    EXPECT_TRUE(!blamed || std::count(planted.begin(), planted.end(), e.id) > 0) << e.id;
  }
}

// Invented: a solar charger of 15 A would be at its limit if everything were sound; a bad fuse holder keeps
// it from it, so that it holds its 14.4 V. Readings of the system solved with 45 mΩ in the fuse, rounded as a
// hand meter does.
TEST(InferFindings, AChargerThatHoldsItsSetPointIsNotTakenToBeAtItsLimit) {
  const auto read = netlist::read(R"({"ohmtrail": 1, "system": {"name": "day boat", "nominal": "12 V"},
    "batteries": [{"id": "bat", "plus": "b+", "minus": "b-", "nominal": "12 V", "capacity": "100 Ah", "soc": "70 %"}],
    "chargers": [{"id": "solar", "plus": "s+", "minus": "s-", "setpoint": "14.4 V", "limit": "15 A"}],
    "runs": [{"id": "solar run", "from": "s+", "to": "sf in", "gauge": "14 AWG", "length": "20 ft",
              "return": {"from": "s-", "to": "b-"}},
             {"id": "tail", "from": "sf out", "to": "b+", "gauge": "14 AWG", "length": "4 in"},
             {"id": "radio run", "from": "b+", "to": "r+", "gauge": "16 AWG", "length": "6 ft",
              "return": {"from": "r-", "to": "b-"}}],
    "fuses": [{"id": "solar fuse", "from": "sf in", "to": "sf out", "rating": "20 A", "form": "in-line"}],
    "loads": [{"id": "radio", "plus": "r+", "minus": "r-", "takes": "2 A"}],
    "cases": [{"name": "sun", "on": ["radio"], "chargers": ["solar"]}],
    "readings": [{"case": "sun", "amps": 11.9, "in": "tail"},
                 {"case": "sun", "volts": 14.37, "red": "s+", "black": "s-"},
                 {"case": "sun", "volts": 12.48, "red": "b+", "black": "b-"},
                 {"case": "sun", "volts": 1.227, "red": "s+", "black": "b+"},
                 {"case": "sun", "volts": 0.5354, "red": "sf in", "black": "sf out"}]})");
  ASSERT_TRUE(read);
  const auto result = infer(read->system);
  ASSERT_TRUE(result);
  for (const InferredReading& row : result->readings) EXPECT_LT(row.wrong_probability, 0.1) << row.index;
  EXPECT_EQ(result->suspects.front(), "solar fuse");
  const auto fuse = std::find_if(result->elements.begin(), result->elements.end(),
                                 [](const InferredElement& e) { return e.id == "solar fuse"; });
  EXPECT_NEAR(fuse->resistance, 0.045, 0.001);
  for (const InferredElement& e : result->elements)
    if (e.id != "solar fuse") {
      EXPECT_LT(e.fault_probability, 0.2) << e.id;
    }
}

}  // namespace
}  // namespace ohmtrail::diagnose
