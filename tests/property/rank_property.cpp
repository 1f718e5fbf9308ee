#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "ohmtrail/diagnose/rank.hpp"
#include "ohmtrail/diagnose/split.hpp"
#include "ohmtrail/diagnose/staircase.hpp"
#include "ohmtrail/diagnose/swing.hpp"
#include "support/random_cases.hpp"

/// Random trees with rings, banks in parallel, loads of all kinds and faults of all kinds.
namespace ohmtrail::diagnose {
namespace {

using units::Current;
using units::Power;
using units::Resistance;
using units::Voltage;

class Draw {
 public:
  explicit Draw(unsigned seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * (static_cast<double>(engine_()) / 4294967296.0);
  }
  int below(int count) { return static_cast<int>(engine_() % static_cast<unsigned>(count)); }
  bool chance(double share) { return between(0, 1) < share; }

 private:
  std::mt19937 engine_;
};

void maybe_spoil(Draw& draw, netlist::Resistances& one, double share = 0.2) {
  if (draw.chance(share)) one.as_found = *one.sound * draw.between(1.2, 30);
}

netlist::Run random_run(Draw& draw, const std::string& id, const std::string& from, const std::string& to) {
  netlist::Run run;
  run.id = id;
  run.from = from;
  run.to = to;
  run.gauge.system = trade::GaugeSystem::metric;
  run.gauge.area = units::Area{35e-6};
  run.length = units::Length{1};
  run.wire.sound = Resistance{draw.between(0.0005, 0.01)};
  run.end_from.resistances.sound = Resistance{draw.between(1e-5, 1e-4)};
  run.end_to.resistances.sound = Resistance{draw.between(1e-5, 1e-4)};
  if (draw.chance(0.1)) run.wire.as_found = *run.wire.sound * draw.between(1.2, 3);
  maybe_spoil(draw, run.end_from.resistances);
  maybe_spoil(draw, run.end_to.resistances);
  if (draw.chance(0.5)) std::swap(run.from, run.to);
  return run;
}

netlist::Takes random_takes(Draw& draw) {
  switch (draw.below(3)) {
    case 0:
      return Power{draw.between(5, 60)};
    case 1:
      return Current{draw.between(0.5, 6)};
    default:
      return Resistance{draw.between(3, 20)};
  }
}

void add_banks(Draw& draw, netlist::System& system) {
  const int banks = 1 + draw.below(3);
  for (int k = 0; k < banks; ++k) {
    const auto name = "bank" + std::to_string(k);
    netlist::Battery battery;
    battery.id = name;
    battery.plus = name + "+";
    battery.minus = name + "-";
    battery.nominal = Voltage{12};
    battery.emf = Voltage{draw.between(12.6, 12.7)};
    battery.resistance = Resistance{draw.between(0.003, 0.01)};
    system.batteries.push_back(battery);
    system.runs.push_back(random_run(draw, "plus" + std::to_string(k), battery.plus, "n0+"));
    system.runs.push_back(random_run(draw, "minus" + std::to_string(k), battery.minus, "n0-"));
  }
}

void add_node(Draw& draw, netlist::System& system, int node) {
  const auto name = "n" + std::to_string(node), parent = "n" + std::to_string(draw.below(node));
  const auto k = std::to_string(node);
  netlist::Joint joint{"joint" + k, parent + "+", "j" + k, trade::JointKind::stud, {}, {}, {}};
  joint.resistances.sound = Resistance{draw.between(2e-5, 2e-4)};
  maybe_spoil(draw, joint.resistances);
  system.joints.push_back(joint);
  system.runs.push_back(random_run(draw, "out" + k, "j" + k, name + "+"));
  system.runs.push_back(random_run(draw, "back" + k, name + "-", parent + "-"));
  netlist::Load load;
  load.id = "load" + k;
  load.plus = name + "+";
  load.minus = name + "-";
  load.takes = random_takes(draw);
  system.loads.push_back(load);
}

netlist::System random_system(Draw& draw) {
  netlist::System system;
  system.info.name = "random";
  system.info.nominal = Voltage{12};
  add_banks(draw, system);
  const int nodes = 2 + draw.below(6);
  for (int node = 1; node <= nodes; ++node) add_node(draw, system, node);
  if (draw.chance(0.5)) {
    const auto far = "n" + std::to_string(nodes);
    system.runs.push_back(random_run(draw, "ring", far + "+", "n1+"));
  }
  netlist::Case all, some;
  all.name = "all";
  all.all_on = true;
  some.name = "some";
  for (const auto& load : system.loads)
    if (draw.chance(0.7)) some.on.push_back(load.id);
  system.cases = {all, some};
  return system;
}

std::vector<solve::CaseSolution> solve_all(const netlist::System& system) {
  std::vector<solve::CaseSolution> solved;
  for (const auto& one : system.cases) {
    auto result = solve::solve_case(network::build(system, one));
    if (!result) ADD_FAILURE() << "no solution of case " << one.name;
    solved.push_back(std::move(result).value());
  }
  return solved;
}

TEST(RankProperty, TheSplitIsTheSagExactly) {
  const int cases = test::random_cases(300);
  for (int k = 0; k < cases; ++k) {
    Draw draw(1000U + static_cast<unsigned>(k));
    const auto system = random_system(draw);
    for (const auto& solved : solve_all(system)) {
      const auto rows = split(solved);
      std::size_t running = 0;
      for (const auto& load : solved.loads) running += load.running ? 1 : 0;
      ASSERT_EQ(rows.size(), running) << "seed " << k;
      for (const auto& row : rows)
        EXPECT_NEAR(row.parts.sum(), row.sag, 1e-10) << "seed " << k << ' ' << row.load;
    }
  }
}

TEST(RankProperty, TheStaircaseEndsAtTheSuppliesMinus) {
  const int cases = test::random_cases(100);
  for (int k = 0; k < cases; ++k) {
    Draw draw(2000U + static_cast<unsigned>(k));
    const auto system = random_system(draw);
    const auto solved = solve_all(system)[0];
    const auto rated = solve::solve_case(as_rated(system, solved.network));
    ASSERT_TRUE(rated.has_value());
    for (const auto& load : solved.loads) {
      const auto stairs = staircase(solved, &*rated, load.element);
      ASSERT_TRUE(stairs.has_value());
      EXPECT_NEAR(stairs->steps.back().after, 0, 1e-10) << "seed " << k;
      EXPECT_TRUE(stairs->as_rated_known);
      for (std::size_t n = 1; n < stairs->steps.size(); ++n)
        EXPECT_EQ(stairs->steps[n].from, stairs->steps[n - 1].to) << "seed " << k << ' ' << stairs->load;
    }
  }
}

void spoil_no_more(netlist::System& system, const std::string& id) {
  for (auto& joint : system.joints)
    if (joint.id == id) joint.resistances.as_found.reset();
  for (auto& run : system.runs) {
    if (run.id + "/wire" == id) run.wire.as_found.reset();
    if (run.id + "/from" == id) run.end_from.resistances.as_found.reset();
    if (run.id + "/to" == id) run.end_to.resistances.as_found.reset();
  }
}

double best_gain(const solve::CaseSolution& before, const solve::CaseSolution& after) {
  double best = -1e9;
  for (std::size_t n = 0; n < before.loads.size(); ++n)
    if (before.loads[n].running) best = std::max(best, after.loads[n].volts - before.loads[n].volts);
  return best;
}

/// The file mended by hand at one place, built and solved from nothing, gains what the ranking said.
TEST(RankProperty, RecoverableIsThatOfTheMendedFile) {
  const int cases = test::random_cases(60);
  int compared = 0;
  for (int k = 0; k < cases; ++k) {
    Draw draw(3000U + static_cast<unsigned>(k));
    auto system = random_system(draw);
    system.cases.resize(1);
    const auto solved = solve_all(system);
    for (const auto& spot : rank(system, solved)) {
      if (spot.role == network::Role::battery) continue;
      auto mended = system;
      spoil_no_more(mended, spot.id);
      ASSERT_TRUE(spot.recoverable.has_value());
      EXPECT_NEAR(spot.recoverable->volts, best_gain(solved[0], solve_all(mended)[0]), 1e-8)
          << "seed " << k << ' ' << spot.id;
      ++compared;
    }
  }
  EXPECT_GT(compared, cases);
}

TEST(RankProperty, ListsEveryElementAboveSoundOnceAndInOrder) {
  const int cases = test::random_cases(60);
  for (int k = 0; k < cases; ++k) {
    Draw draw(4000U + static_cast<unsigned>(k));
    const auto system = random_system(draw);
    const auto solved = solve_all(system);
    const auto spots = rank(system, solved);
    std::size_t above = 0;
    for (const auto& element : solved[0].network.elements)
      above +=
          element.role != network::Role::load && element.sound && element.resistance > *element.sound ? 1 : 0;
    EXPECT_EQ(spots.size(), above) << "seed " << k;
    for (std::size_t n = 1; n < spots.size(); ++n)
      EXPECT_GE(spots[n - 1].recoverable->volts, spots[n].recoverable->volts) << "seed " << k;
  }
}

TEST(RankProperty, ASwingAddsUp) {
  const int cases = test::random_cases(150);
  std::size_t rows = 0;
  for (int k = 0; k < cases; ++k) {
    Draw draw(5000U + static_cast<unsigned>(k));
    const auto system = random_system(draw);
    const auto solved = solve_all(system);
    for (const auto& row : swing(system, solved[0], solved[1])) {
      ++rows;
      double elements = row.open_circuit;
      for (const auto& one : row.elements) elements += one.change;
      EXPECT_NEAR(elements, row.change, 1e-10) << "seed " << k << ' ' << row.load;
      EXPECT_NEAR(row.parts.sum() + row.open_circuit, row.change, 1e-10) << "seed " << k << ' ' << row.load;
    }
  }
  EXPECT_GE(rows, static_cast<std::size_t>(cases));
}

}  // namespace
}  // namespace ohmtrail::diagnose
