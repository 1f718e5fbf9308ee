#include <gtest/gtest.h>

#include <cmath>

#include "diagnose/cure.hpp"
#include "ohmtrail/diagnose/rank.hpp"

/// Systems whose faults are too many to solve each again, and work shared among threads.
namespace ohmtrail::diagnose {
namespace {

/// A main cable and `branches` feeds from one bus to a load each; every lug three times its sound value.
netlist::System feeds(int branches) {
  netlist::System system;
  system.info.name = "many feeds (invented)";
  system.info.nominal = units::Voltage{12};
  netlist::Battery battery;
  battery.id = "bank";
  battery.plus = "bank+";
  battery.minus = "bank-";
  battery.nominal = units::Voltage{12};
  battery.emf = units::Voltage{12.7};
  battery.resistance = units::Resistance{1e-3};
  system.batteries.push_back(battery);
  netlist::Case all;
  all.name = "all-on";
  all.all_on = true;
  system.cases.push_back(all);
  for (int k = 0; k < branches; ++k) {
    const std::string number = std::to_string(k);
    netlist::Run run;
    run.id = "feed " + number;
    run.from = "bank+";
    run.to = "load " + number + "+";
    run.gauge.number = 2;
    run.gauge.area = units::Area{33.63e-6};
    run.length = units::Length{2};
    run.wire.sound = units::Resistance{1e-3};
    for (auto* end : {&run.end_from, &run.end_to}) {
      end->resistances.sound = units::Resistance{1e-4 * (1 + k % 7)};
      end->resistances.as_found = units::Resistance{3e-4 * (1 + k % 7)};
    }
    system.runs.push_back(run);
    netlist::Load load;
    load.id = "load " + number;
    load.plus = run.to;
    load.minus = "bank-";
    load.takes = units::Current{0.2 + 0.001 * k};
    system.loads.push_back(load);
  }
  return system;
}

std::vector<solve::CaseSolution> solved(const netlist::System& system) {
  std::vector<solve::CaseSolution> all;
  for (const auto& one : system.cases) all.push_back(solve::solve_case(network::build(system, one)).value());
  return all;
}

std::vector<Cure> all_lugs(const solve::CaseSolution& solved) {
  std::vector<Cure> cures;
  for (std::size_t k = 0; k < solved.network.elements.size(); ++k) {
    const auto& element = solved.network.elements[k];
    if (element.role == network::Role::termination)
      cures.push_back({static_cast<int>(k), element.sound->si(), std::nullopt, std::nullopt});
  }
  return cures;
}

TEST(RankLarge, EstimatesAreWhatSolvingAgainSays) {
  const auto system = feeds(40);
  const auto found = solved(system);
  WhatIf what_if(found.front());
  const auto cures = all_lugs(found.front());
  ASSERT_EQ(cures.size(), 80U);
  const auto estimates = what_if.estimate_gains(cures);
  for (std::size_t k = 0; k < cures.size(); ++k) {
    const auto exact = what_if.best_gain(cures[k]);
    ASSERT_TRUE(exact && estimates[k]);
    EXPECT_EQ(estimates[k]->load, exact->load) << k;
    EXPECT_NEAR(estimates[k]->volts, exact->volts, 1e-9 * exact->volts + 1e-12) << k;
  }
}

TEST(RankLarge, ABatteryThatIsNotFullIsEstimatedToo) {
  const auto system = feeds(5);
  const auto found = solved(system);
  WhatIf what_if(found.front());
  const Cure charged{*found.front().network.element("bank"), 1e-3, 12.9, std::nullopt};
  const auto estimate = what_if.estimate_gains({charged}).front();
  const auto exact = what_if.best_gain(charged);
  ASSERT_TRUE(estimate && exact);
  EXPECT_NEAR(estimate->volts, 0.2, 1e-10);
  EXPECT_NEAR(estimate->volts, exact->volts, 1e-10);
}

TEST(RankLarge, NoLoadNoGain) {
  auto system = feeds(2);
  system.cases.front().all_on = false;
  const auto found = solved(system);
  WhatIf what_if(found.front());
  const auto gains = what_if.estimate_gains(all_lugs(found.front()));
  EXPECT_EQ(gains.size(), all_lugs(found.front()).size());
  ASSERT_FALSE(gains.empty());
  for (const auto& gain : gains) EXPECT_FALSE(gain);
}

/// 800 feeds: 1 600 faults in 3 200 elements are more than are solved again one by one.
TEST(RankLarge, EveryFaultIsListedAndTheFirstAreSolvedAgain) {
  const auto system = feeds(800);
  const auto found = solved(system);
  const auto spots = rank(system, found);
  ASSERT_EQ(spots.size(), 1600U);
  WhatIf what_if(found.front());
  for (std::size_t k = 0; k < spots.size(); k += 97) {
    const auto element = *found.front().network.element(spots[k].id);
    const auto& sound = found.front().network.elements[static_cast<std::size_t>(element)].sound;
    const auto exact = what_if.best_gain({element, sound->si(), std::nullopt, std::nullopt});
    ASSERT_TRUE(exact && spots[k].recoverable) << k;
    EXPECT_NEAR(spots[k].recoverable->volts, exact->volts, 1e-8 * exact->volts + 1e-12) << k;
  }
  for (std::size_t k = 1; k < spots.size(); ++k)
    EXPECT_GE(spots[k - 1].recoverable->volts, spots[k].recoverable->volts - 2e-9) << k;
}

TEST(RankLarge, SharedAmongThreadsTheResultIsTheSame) {
  auto system = feeds(12);
  for (int k = 0; k < 5; ++k) {
    auto one = system.cases.front();
    one.name = "without feed " + std::to_string(k);
    one.open = {"feed " + std::to_string(k)};
    system.cases.push_back(one);
  }
  const auto found = solved(system);
  RankOptions options;
  const auto alone = rank(system, found, options);
  options.jobs = 3;
  const auto shared = rank(system, found, options);
  ASSERT_EQ(alone.size(), shared.size());
  for (std::size_t k = 0; k < alone.size(); ++k) {
    EXPECT_EQ(alone[k].id, shared[k].id);
    EXPECT_EQ(alone[k].in_case, shared[k].in_case);
    EXPECT_EQ(alone[k].recoverable->volts, shared[k].recoverable->volts);  // to the last bit
    EXPECT_EQ(alone[k].recoverable->load, shared[k].recoverable->load);
  }
}

}  // namespace
}  // namespace ohmtrail::diagnose
