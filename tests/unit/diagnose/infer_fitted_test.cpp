// The system as inferred must itself give what was read: what is known only together keeps its sum.
#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "ohmtrail/diagnose/infer_apply.hpp"
#include "ohmtrail/network/network.hpp"
#include "ohmtrail/solve/case_solution.hpp"
#include "support/simulated_survey.hpp"

namespace ohmtrail::diagnose {
namespace {

std::map<std::string, solve::CaseSolution> solved_cases(const netlist::System& system) {
  std::map<std::string, solve::CaseSolution> out;
  for (const netlist::Case& one : system.cases) {
    auto solved = solve::solve_case(network::build(system, one));
    if (solved) out.emplace(one.name, std::move(*solved));
  }
  return out;
}

/// Volts read less volts of the system as inferred, over the meter's standard deviation; worst of all
/// readings that are not in doubt.
double worst_misfit(const netlist::System& system, const InferResult& result) {
  const auto solved = solved_cases(with_inferred(system, result));
  double worst = 0;
  for (const InferredReading& reading : result.readings) {
    const auto& given = system.readings[reading.index];
    const auto* volts = std::get_if<netlist::VoltsReading>(&given.what);
    const auto found = solved.find(given.in_case);
    if (volts == nullptr || reading.suspect || found == solved.end()) continue;
    const auto at = [&](const std::string& point) {
      return found->second.solution.voltage[static_cast<std::size_t>(*found->second.network.point(point))];
    };
    const double off = volts->value.si() - (at(volts->red) - at(volts->black));
    worst = std::max(worst, std::abs(off) / reading.sigma);
  }
  return worst;
}

class FittedSystem : public testing::TestWithParam<test::Readings> {};

TEST_P(FittedSystem, GivesWhatWasRead) {
  constexpr int systems = 24;
  for (int k = 0; k < systems; ++k) {
    test::SurveyOptions options = test::varied_options(k);
    options.readings = GetParam();
    const auto survey = test::simulate(9300 + static_cast<std::uint64_t>(k), options);
    const auto result = infer(survey.system);
    ASSERT_TRUE(result);
    EXPECT_LT(worst_misfit(survey.system, *result), 4) << "system " << k;
  }
}

INSTANTIATE_TEST_SUITE_P(All, FittedSystem,
                         testing::Values(test::Readings::every_element, test::Readings::elements_and_spans,
                                         test::Readings::every_third_point));

TEST(FittedSystem, ResistancesLieWithinTheirIntervals) {
  for (int k = 0; k < 12; ++k) {
    test::SurveyOptions options = test::varied_options(k);
    options.readings = test::Readings::every_third_point;
    const auto result = infer(test::simulate(9400 + static_cast<std::uint64_t>(k), options).system);
    ASSERT_TRUE(result);
    for (const InferredElement& e : result->elements) {
      EXPECT_GE(e.resistance, e.low) << e.id;
      EXPECT_LE(e.resistance, e.high) << e.id;
    }
  }
}

}  // namespace
}  // namespace ohmtrail::diagnose
