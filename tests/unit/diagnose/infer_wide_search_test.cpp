#include <fmt/core.h>
#include <gtest/gtest.h>

#include <string>
#include <variant>

#include "diagnose/infer/build.hpp"
#include "diagnose/infer/weighing.hpp"
#include "support/random_cases.hpp"
#include "support/simulated_survey.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

test::SimulatedSurvey survey_of(std::uint64_t seed) {
  test::SurveyOptions options;
  options.layout.shape = static_cast<test::Shape>(seed % 3);
  options.layout.elements = 20 + static_cast<int>(seed * 7 % 41);
  options.faults = 1 + static_cast<int>(seed % 2);
  options.readings = seed % 2 == 0 ? test::Readings::every_element : test::Readings::every_third_point;
  return test::simulate(9000 + seed, options);
}

// The part of a hypothesis that another search would tell apart.
Hypothesis within(const Hypothesis& core, const Hypothesis& hypothesis) {
  Hypothesis out;
  for (const int p : hypothesis.faulty) {
    if (core.is_faulty(p)) out.faulty.push_back(p);
  }
  for (const int o : hypothesis.wrong) {
    if (core.is_wrong(o)) out.wrong.push_back(o);
  }
  return out;
}

double unseen_share(const Weighing& seen, const Weighing& wide) {
  double out = 0;
  for (const auto& [key, share] : wide.shares) {
    const Hypothesis there = seen.sets->key(within(seen.around.core, *key));
    out += seen.around.weighed.contains(there) ? 0 : share;
  }
  return out;
}

// Millivolts entered as volts, in the first reading of volts.
void enter_in_the_wrong_unit(netlist::System& system) {
  for (netlist::Reading& reading : system.readings) {
    if (auto* volts = std::get_if<netlist::VoltsReading>(&reading.what)) {
      volts->value = 1000 * volts->value;
      return;
    }
  }
}

void expect_no_more_in_a_wide_search(const netlist::System& system, const std::string& which) {
  InferOptions usual, wide;
  usual.optimised = wide.optimised = 0;
  wide.expansions = 600;
  wide.own_optima = 600;
  const Survey survey = build_survey(system);
  Forward forward(survey.model);
  const auto seen = weigh_hypotheses(forward, usual);
  const auto more = weigh_hypotheses(forward, wide);
  ASSERT_TRUE(seen && more) << which;
  EXPECT_LE(unseen_share(*seen, *more), seen->around.left_out) << which;
  EXPECT_LT(seen->around.left_out, 0.2) << which;
}

// Systems too large for every subset: a search of many times the effort finds no more than was said to be
// left out.
TEST(WideSearch, FindsNoMoreThanWasSaidToBeLeftOut) {
  const int systems = test::random_cases(40);
  for (std::uint64_t k = 0; k < static_cast<std::uint64_t>(systems); ++k) {
    expect_no_more_in_a_wide_search(survey_of(k).system, fmt::format("system {}", k));
  }
}

// A reading so wrong that every explanation without its error is hopeless must not hide the others.
TEST(WideSearch, FindsNoMoreWhereAReadingIsFarOff) {
  const int systems = test::random_cases(20);
  for (std::uint64_t k = 0; k < static_cast<std::uint64_t>(systems); ++k) {
    test::SimulatedSurvey given = survey_of(k);
    enter_in_the_wrong_unit(given.system);
    expect_no_more_in_a_wide_search(given.system, fmt::format("system {}", k));
  }
}

}  // namespace
}  // namespace ohmtrail::diagnose::inference
