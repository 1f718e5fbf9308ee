#include "ohmtrail/diagnose/load_losses.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "ohmtrail/diagnose/infer_apply.hpp"
#include "ohmtrail/solve/case_solution.hpp"
#include "support/simulated_survey.hpp"

namespace ohmtrail::diagnose {
namespace {

test::SimulatedSurvey survey(test::Readings readings = test::Readings::every_element) {
  test::SurveyOptions options;
  options.layout.elements = 30;
  options.readings = readings;
  return test::simulate(5, options);
}

std::vector<LossInterval> intervals(const netlist::System& system) {
  const auto result = infer(system);
  if (!result) throw std::runtime_error(result.error().text);
  return loss_intervals(system, *result);
}

LossInterval of(const std::vector<LossInterval>& list, const std::string& in_case, const std::string& load) {
  const auto found = std::find_if(list.begin(), list.end(),
                                  [&](const auto& i) { return i.in_case == in_case && i.load == load; });
  if (found == list.end()) throw std::runtime_error("no interval of " + load);
  return *found;
}

/// Share of its nominal voltage that a load loses in a solved system, as `solve` lists it.
double computed_loss(const netlist::System& system, const std::string& in_case, const std::string& load) {
  for (const netlist::Case& one : system.cases) {
    if (one.name != in_case) continue;
    const auto solved = solve::solve_case(network::build(system, one));
    for (const solve::LoadResult& result : solved->loads)
      if (solved->network.elements[static_cast<std::size_t>(result.element)].id == load)
        return result.drop_fraction;
  }
  throw std::runtime_error("no load " + load);
}

TEST(LoadLosses, HoldTheLossOfTheSystemAsFound) {
  const auto one = survey();
  const auto result = infer(one.system);
  ASSERT_TRUE(result);
  const netlist::System found = with_inferred(one.system, *result);
  const auto list = loss_intervals(one.system, *result);
  ASSERT_FALSE(list.empty());
  for (const LossInterval& interval : list) {
    EXPECT_LT(interval.low, interval.median);
    EXPECT_LT(interval.median, interval.high);
    const double loss = computed_loss(found, interval.in_case, interval.load);
    EXPECT_GE(loss, interval.low - 0.002) << interval.load;
    EXPECT_LE(loss, interval.high + 0.002) << interval.load;
  }
}

TEST(LoadLosses, EveryRunningLoadOfEveryCaseIsListedOnce) {
  const auto one = survey();
  const auto list = intervals(one.system);
  std::size_t running = 0;
  for (const netlist::Case& in_case : one.system.cases) {
    const auto solved = solve::solve_case(network::build(one.system, in_case));
    running += static_cast<std::size_t>(std::count_if(solved->loads.begin(), solved->loads.end(),
                                                      [](const auto& load) { return load.running; }));
  }
  EXPECT_EQ(list.size(), running);
}

TEST(LoadLosses, MoreReadingsNarrowThem) {
  const auto many = survey(test::Readings::every_element), few = survey(test::Readings::loads_only);
  ASSERT_EQ(many.system.loads.size(), few.system.loads.size());
  const std::string load = many.system.loads.front().id;
  const LossInterval narrow = of(intervals(many.system), "under load", load);
  netlist::System unread = many.system;
  std::erase_if(unread.readings, [](const netlist::Reading& r) { return r.in_case == "under load"; });
  const LossInterval wide = of(intervals(unread), "under load", load);
  EXPECT_LT(narrow.high - narrow.low, 0.5 * (wide.high - wide.low));
}

TEST(LoadLosses, ACaseInWhichNothingWasReadHasThemToo) {
  netlist::System system = survey().system;
  netlist::Case other = system.cases[1];
  other.name = "not read";
  system.cases.push_back(other);
  const auto list = intervals(system);
  const std::string load = system.loads.front().id;
  const LossInterval read = of(list, "under load", load), unread = of(list, "not read", load);
  // The wiring is known from the case that was read; what the loads take there is not.
  EXPECT_GT(unread.high - unread.low, read.high - read.low);
  EXPECT_GT(unread.high, read.median);
  EXPECT_LT(unread.low, read.median);
}

TEST(LoadLosses, TwiceTheLimitIsBrokenAndNothingIsMet) {
  // With a meter this good the interval is far narrower than from nothing to the loss.
  const auto found = intervals(survey().system);
  ASSERT_FALSE(found.empty());
  for (const LossInterval& interval : found) {
    EXPECT_GT(interval.low, 0.25 * interval.median) << interval.load;
    EXPECT_LT(interval.high, 4 * interval.median) << interval.load;
  }
}

}  // namespace
}  // namespace ohmtrail::diagnose
