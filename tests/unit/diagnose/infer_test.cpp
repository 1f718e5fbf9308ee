#include "ohmtrail/diagnose/infer.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "ohmtrail/diagnose/infer_apply.hpp"
#include "ohmtrail/network/network.hpp"
#include "ohmtrail/solve/case_solution.hpp"
#include "support/simulated_survey.hpp"

namespace ohmtrail::diagnose {
namespace {

test::SimulatedSurvey survey_of(std::uint64_t seed,
                                test::Readings readings = test::Readings::elements_and_spans) {
  test::SurveyOptions options;
  options.layout.elements = 30;
  options.readings = readings;
  options.battery_may_fail = false;
  return test::simulate(seed, options);
}

const InferredElement& element(const InferResult& result, const std::string& id) {
  return *std::find_if(result.elements.begin(), result.elements.end(),
                       [&](const auto& e) { return e.id == id; });
}

// Index of the reading of a run from stud to stud.
std::size_t span_of(const netlist::System& system, const std::string& run) {
  const auto found =
      std::find_if(system.runs.begin(), system.runs.end(), [&](const auto& r) { return r.id == run; });
  for (std::size_t k = 0; k < system.readings.size(); ++k) {
    const auto* volts = std::get_if<netlist::VoltsReading>(&system.readings[k].what);
    if (volts && volts->red == found->from && volts->black == found->to) return k;
  }
  return system.readings.size();
}

double& volts_of(netlist::Reading& reading, double& store) {
  store = std::get<netlist::VoltsReading>(reading.what).value.si();
  return store;
}

void set_volts(netlist::Reading& reading, double value) {
  std::get<netlist::VoltsReading>(reading.what).value = units::Voltage{value};
}

TEST(Infer, WithoutReadingsGivesThePriors) {
  auto survey = survey_of(3);
  survey.system.readings.clear();
  const auto result = infer(survey.system);
  ASSERT_TRUE(result);
  EXPECT_EQ(result->fit.degrees_of_freedom, 0);
  for (const InferredElement& e : result->elements) {
    EXPECT_FALSE(e.informed) << e.id;
    EXPECT_NEAR(e.resistance / e.sound_resistance, 1, 0.1) << e.id;
    EXPECT_GT(e.fault_probability, 0.005);
    EXPECT_LT(e.fault_probability, 0.035);
  }
}

TEST(Infer, IsTheSameTwice) {
  const auto survey = survey_of(4);
  const auto one = infer(survey.system), two = infer(survey.system);
  ASSERT_TRUE(one && two);
  EXPECT_EQ(one->suspects, two->suspects);
  for (std::size_t k = 0; k < one->elements.size(); ++k) {
    EXPECT_EQ(one->elements[k].resistance, two->elements[k].resistance);
    EXPECT_EQ(one->elements[k].fault_probability, two->elements[k].fault_probability);
  }
}

TEST(Infer, SeenRaisesTheOdds) {
  auto survey = survey_of(3);
  survey.system.readings.clear();
  const double before = element(*infer(survey.system), "feed/from").fault_probability;
  for (auto& run : survey.system.runs)
    if (run.id == "feed") run.end_from.resistances.seen = {trade::Observation::green_corrosion};
  const double after = element(*infer(survey.system), "feed/from").fault_probability;
  EXPECT_NEAR(after / (1 - after), 8 * before / (1 - before), 1e-3);
}

TEST(Infer, SagOfTheBatteryIsNotChargedToTheCable) {
  auto survey = survey_of(5);
  const auto sound = infer(survey.system);
  // Every terminal reading under load one volt lower, the drops unchanged: it can only be the battery.
  for (auto& reading : survey.system.readings) {
    const auto* volts = std::get_if<netlist::VoltsReading>(&reading.what);
    const bool whole = volts && volts->value.si() > 8 && reading.in_case == "under load";
    if (whole) set_volts(reading, volts->value.si() - 1);
  }
  const auto sagging = infer(survey.system);
  ASSERT_TRUE(sound && sagging);
  EXPECT_GT(sagging->batteries[0].fault_probability, 0.95);
  EXPECT_GT(sagging->batteries[0].resistance, 1.5 * sound->batteries[0].resistance);
  for (const InferredElement& e : sagging->elements) {
    const bool planted = std::count(survey.truth.planted.begin(), survey.truth.planted.end(), e.id) > 0;
    EXPECT_LT(planted ? 0 : e.fault_probability, 0.3) << e.id;
  }
}

TEST(Infer, ClampInformsEveryElementInSeries) {
  auto survey = survey_of(6, test::Readings::every_element);
  const auto with = infer(survey.system);
  std::erase_if(survey.system.readings,
                [](const auto& r) { return std::holds_alternative<netlist::AmpsReading>(r.what); });
  const auto without = infer(survey.system);
  ASSERT_TRUE(with && without);
  const auto width = [](const InferredElement& e) { return std::log(e.high / e.low); };
  EXPECT_LT(width(element(*with, "feed/wire")), 0.5 * width(element(*without, "feed/wire")));
  EXPECT_LT(width(element(*with, "minus0/wire")), 0.5 * width(element(*without, "minus0/wire")));
}

// Every reading with a probe inside the run "feed" is left out: it is read from stud to stud only.
TEST(Infer, RunReadAsAWholeIsOneGroup) {
  auto survey = survey_of(7);
  std::erase_if(survey.system.readings, [](const netlist::Reading& reading) {
    const auto* volts = std::get_if<netlist::VoltsReading>(&reading.what);
    const auto inside = [](const std::string& point) { return point == "feed@from" || point == "feed@to"; };
    return volts && (inside(volts->red) || inside(volts->black));
  });
  const auto result = infer(survey.system);
  ASSERT_TRUE(result);
  ASSERT_EQ(result->unresolved.size(), 1u);
  const UnresolvedGroup& group = result->unresolved.front();
  EXPECT_EQ(group.ids, (std::vector<std::string>{"feed/from", "feed/wire", "feed/to"}));
  const auto& truth = survey.truth.resistance;
  const double sum = truth.at("feed/from") + truth.at("feed/wire") + truth.at("feed/to");
  EXPECT_NEAR(group.sum, sum, 0.05 * sum);
  EXPECT_LT(group.high / group.low, 1.2);  // the sum is sure
  const InferredElement& lug = element(*result, "feed/from");
  EXPECT_GT(lug.high / lug.low, 2);  // the split is not
  EXPECT_EQ(group.separate_at.size(), 2u);
}

TEST(Infer, ReadElementsAreNoGroup) {
  const auto survey = survey_of(8);
  const auto result = infer(survey.system);
  ASSERT_TRUE(result);
  for (const UnresolvedGroup& group : result->unresolved)
    for (const std::string& id : group.ids) EXPECT_NE(id, "feed/wire");
}

struct SlipCase {
  Slip slip;
  double factor;
};

class SlipOf : public testing::TestWithParam<SlipCase> {};

TEST_P(SlipOf, IsRecognised) {
  auto survey = survey_of(9);
  const std::size_t index = span_of(survey.system, "feed-negative");
  double store = 0;
  set_volts(survey.system.readings[index],
            GetParam().factor * volts_of(survey.system.readings[index], store));
  const auto result = infer(survey.system);
  ASSERT_TRUE(result);
  const InferredReading& row = result->readings[index];
  EXPECT_TRUE(row.suspect);
  EXPECT_EQ(row.slip, GetParam().slip);
  EXPECT_NEAR(row.would_be, store, 0.15 * std::abs(store) + 1e-3);
  for (const InferredReading& other : result->readings)
    EXPECT_EQ(other.suspect, other.index == index) << other.index;
}

INSTANTIATE_TEST_SUITE_P(All, SlipOf,
                         testing::Values(SlipCase{Slip::swapped_probes, -1}, SlipCase{Slip::wrong_unit, 1000},
                                         SlipCase{Slip::load_off, 0}));

TEST(Infer, WrongCaseIsRecognised) {
  auto survey = survey_of(9);
  // The battery's volts at rest, noted under load.
  survey.system.readings[1] = survey.system.readings[0];
  survey.system.readings[1].in_case = "under load";
  const auto result = infer(survey.system);
  ASSERT_TRUE(result);
  const InferredReading& row = result->readings[1];
  EXPECT_TRUE(row.suspect);
  EXPECT_TRUE(row.slip == Slip::load_off || (row.slip == Slip::wrong_case && row.slip_case == "at rest"));
}

TEST(Infer, LoneReadingIsCritical) {
  const auto survey = survey_of(10, test::Readings::every_element);
  const auto result = infer(survey.system);
  ASSERT_TRUE(result);
  std::size_t critical = 0;
  for (const InferredReading& row : result->readings) critical += row.critical ? 1 : 0;
  EXPECT_GT(critical, result->readings.size() / 2);  // each element's own reading stands alone
}

TEST(Infer, CheckedReadingIsNotCritical) {
  const auto survey = survey_of(10);
  const auto result = infer(survey.system);
  ASSERT_TRUE(result);
  EXPECT_FALSE(result->readings[span_of(survey.system, "feed")].critical);
}

TEST(Infer, TakesElementResistanceAsAReading) {
  auto survey = survey_of(11);
  survey.system.readings.clear();
  for (auto& part : survey.system.switches)
    part.resistances.as_found = units::Resistance{30 * part.resistances.sound->si()};
  const auto result = infer(survey.system);
  ASSERT_TRUE(result);
  EXPECT_GT(element(*result, "main-switch").fault_probability, 0.95);
}

TEST(InferApply, SolvedAsInferredMeetsTheReadings) {
  const auto survey = survey_of(12);
  const auto result = infer(survey.system);
  ASSERT_TRUE(result);
  const netlist::System fitted = with_inferred(survey.system, *result);
  EXPECT_TRUE(fitted.readings.empty());
  const auto solved = solve::solve_case(network::build(fitted, fitted.cases[1]));
  ASSERT_TRUE(solved);
  for (const auto& reading : survey.system.readings) {
    const auto* volts = std::get_if<netlist::VoltsReading>(&reading.what);
    if (!volts || reading.in_case != "under load") continue;
    const auto at = [&](const std::string& p) {
      return solved->solution.voltage[static_cast<std::size_t>(*solved->network.point(p))];
    };
    EXPECT_NEAR(at(volts->red) - at(volts->black), volts->value.si(),
                0.03 * std::abs(volts->value.si()) + 2e-3)
        << volts->red << ' ' << volts->black;
  }
}

TEST(InferApply, ProbabilitiesById) {
  const auto survey = survey_of(13);
  const auto result = infer(survey.system);
  ASSERT_TRUE(result);
  const auto by_id = fault_probabilities(*result);
  EXPECT_EQ(by_id.size(), result->elements.size() + result->batteries.size());
  EXPECT_EQ(by_id.at("feed/wire"), element(*result, "feed/wire").fault_probability);
}

}  // namespace
}  // namespace ohmtrail::diagnose
