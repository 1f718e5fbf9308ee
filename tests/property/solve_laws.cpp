// What holds of every network by theory.
#include <gtest/gtest.h>

#include "property/solve_random.hpp"
#include "support/random_cases.hpp"

namespace ohmtrail::test {
namespace {

/// Tellegen (1952): Σ v i = 0 for the voltages of one state and the currents of another with the same points.
TEST(SolveLaws, TellegenAcrossTwoStates) {
  for (int seed = 0; seed < random_cases(200); ++seed) {
    SCOPED_TRACE(seed);
    RandomCircuit random(1000u + static_cast<unsigned>(seed));
    Circuit circuit = random.make({});
    const auto first = Solver(circuit).solve();
    for (Branch& branch : circuit.branches) branch.resistance *= random.between(0.5, 2);
    const auto second = Solver(circuit).solve();
    ASSERT_TRUE(first && second);
    double sum = 0;
    double scale = 0;
    for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
      sum += first->drop[b] * second->current[b];
      scale += std::abs(first->drop[b] * second->current[b]);
    }
    EXPECT_LE(std::abs(sum), 1e-11 * scale);
    EXPECT_LE(first->current_residual, 1e-11);
    EXPECT_LE(first->power_residual, 1e-9);
  }
}

TEST(SolveLaws, DoublingEverySourceDoublesALinearNetwork) {
  for (int seed = 0; seed < random_cases(200); ++seed) {
    SCOPED_TRACE(seed);
    RandomCircuit random(2000u + static_cast<unsigned>(seed));
    Circuit circuit = random.make({.power = false, .heating = false, .current = false});
    const auto once = Solver(circuit).solve();
    for (Branch& branch : circuit.branches) branch.size *= 2;
    const auto twice = Solver(circuit).solve();
    ASSERT_TRUE(once && twice);
    for (std::size_t p = 0; p < once->voltage.size(); ++p) {
      EXPECT_NEAR(twice->voltage[p], 2 * once->voltage[p], 1e-12 * 26);
    }
  }
}

/// Rayleigh's monotonicity law: with one source and one constant current, one more path never costs the load
/// volts.
TEST(SolveLaws, OneMorePathNeverLowersTheOnlyLoad) {
  for (int seed = 0; seed < random_cases(200); ++seed) {
    SCOPED_TRACE(seed);
    RandomCircuit random(3000u + static_cast<unsigned>(seed));
    Circuit circuit = random.make({.power = false, .heating = false, .current = false});
    std::erase_if(circuit.branches, [](const Branch& b) { return b.law == Law::source || b.nominal > 0; });
    random.add_battery(circuit, 1, 0);
    Branch load = RandomCircuit::branch(random.any(random.plus()), random.any(random.minus()), Law::current);
    load.size = random.between(1, 50);
    circuit.branches.push_back(load);
    const std::size_t at_load = circuit.branches.size() - 1;
    const auto before = Solver(circuit).solve();
    const auto& side = random.chance(0.5) ? random.plus() : random.minus();
    const int a = random.any(side);
    const int b = random.any(side);
    if (a == b) continue;
    circuit.branches.push_back(random.wire(a, b));
    const auto after = Solver(circuit).solve();
    ASSERT_TRUE(before && after);
    EXPECT_GE(after->drop[at_load], before->drop[at_load] - 1e-13);
  }
}

/// With one source and one power load the most that can be carried is E²/4R, R measured at the load.
TEST(SolveLaws, CollapseAtAQuarterOfESquaredOverR) {
  for (int seed = 0; seed < random_cases(100); ++seed) {
    SCOPED_TRACE(seed);
    RandomCircuit random(4000u + static_cast<unsigned>(seed));
    Circuit circuit = random.make({.power = false, .heating = false, .current = false});
    std::erase_if(circuit.branches, [](const Branch& b) { return b.law == Law::source || b.nominal > 0; });
    random.add_battery(circuit, 1, 0);
    const double volts = circuit.branches.back().size;
    Branch load = RandomCircuit::branch(random.any(random.plus()), random.any(random.minus()), Law::current);
    load.size = 1;
    circuit.branches.push_back(load);
    const auto one_ampere = Solver(circuit).solve();
    ASSERT_TRUE(one_ampere);
    const double most = volts * volts / (4 * (volts - one_ampere->drop.back()));
    circuit.branches.back().law = Law::power;
    circuit.branches.back().size = most * 1.0001;
    const auto beyond = Solver(circuit).solve();
    ASSERT_TRUE(beyond && beyond->collapse);
    EXPECT_NEAR(beyond->collapse->most_power / most, 1, 1e-9);
    EXPECT_NEAR(beyond->collapse->at_volts / (volts / 2), 1, 1e-5);
    circuit.branches.back().size = most * 0.9999;
    const auto within = Solver(circuit).solve();
    ASSERT_TRUE(within);
    EXPECT_FALSE(within->collapse);
  }
}

/// All that regulators and diodes promise, whatever mode they ended in.
TEST(SolveLaws, RegulatorsAndDiodesKeepTheirWord) {
  for (int seed = 0; seed < random_cases(300); ++seed) {
    SCOPED_TRACE(seed);
    RandomCircuit random(5000u + static_cast<unsigned>(seed));
    Circuit circuit = random.make({.power = random.chance(0.5)});
    const std::size_t first = circuit.branches.size();
    for (int k = 1 + random.below(3); k > 0; --k) {
      Branch charger =
          RandomCircuit::branch(random.any(random.plus()), random.any(random.minus()), Law::regulator);
      charger.size = random.between(11, 15);
      charger.limit = random.between(1, 60);
      circuit.branches.push_back(charger);
    }
    for (int k = 1 + random.below(3); k > 0; --k) {
      Branch diode = RandomCircuit::branch(random.any(random.plus()), random.any(random.plus()), Law::diode);
      if (diode.from == diode.to) continue;
      diode.size = random.between(0.001, 0.7);
      circuit.branches.push_back(diode);
    }
    const auto solution = Solver(circuit).solve();
    ASSERT_TRUE(solution) << static_cast<int>(solution.error().kind);
    if (solution->collapse) continue;
    for (std::size_t b = first; b < circuit.branches.size(); ++b) {
      const Branch& branch = circuit.branches[b];
      const double v = solution->drop[b];
      const double i = solution->current[b];
      if (branch.law == Law::regulator) {
        EXPECT_LE(i, 1e-8);
        EXPECT_GE(i, -branch.limit * (1 + 1e-9));
        if (i < -1e-6) {
          EXPECT_LE(v, branch.size * (1 + 1e-9));
        }
        if (i > -branch.limit * (1 - 1e-6)) {
          EXPECT_GE(v, branch.size * (1 - 1e-9));
        }
      } else {
        EXPECT_GE(i, -1e-8);
        EXPECT_LE(v, branch.size + 1e-9);
        if (i > 1e-6) {
          EXPECT_NEAR(v, branch.size, 1e-9);
        }
      }
    }
  }
}

/// Networks with too much load, chargers and isolators anywhere and a tenth of their branches open.
Circuit torn_and_overloaded(RandomCircuit& random, unsigned seed) {
  Circuit circuit = random.make({});
  for (Branch& branch : circuit.branches) {
    if (branch.law != Law::power) continue;
    branch.size *= random.log_between(1, 60);
    if (random.chance(0.3)) branch.stops_below = random.between(5, 12);
  }
  for (int k = seed % 2 ? 1 + random.below(3) : 0; k > 0; --k) {
    Branch charger =
        RandomCircuit::branch(random.any(random.plus()), random.any(random.minus()), Law::regulator);
    charger.size = random.between(11, 15);
    charger.limit = random.between(1, 60);
    circuit.branches.push_back(charger);
  }
  for (int k = seed % 3 ? 0 : 1 + random.below(3); k > 0; --k) {
    Branch diode = RandomCircuit::branch(random.any(random.plus()), random.any(random.plus()), Law::diode);
    if (diode.from == diode.to) continue;
    diode.size = random.between(0.001, 0.7);
    if (random.chance(0.5)) diode.resistance = random.log_between(1e-4, 1e-1);
    circuit.branches.push_back(diode);
  }
  for (Branch& branch : circuit.branches) {
    if (seed % 5 == 0 && random.chance(0.1)) branch.law = Law::open;
  }
  return circuit;
}

/// Every such network is certified, or has constant currents that its chargers cannot give: one in thousands.
TEST(SolveLaws, TornAndOverloadedNetworksEndCertified) {
  int collapsed = 0;
  int overloaded = 0;
  const int count = random_cases(4000);
  for (int seed = 0; seed < count; ++seed) {
    SCOPED_TRACE(seed);
    RandomCircuit random(90000u + static_cast<unsigned>(seed));
    const Circuit circuit = torn_and_overloaded(random, static_cast<unsigned>(seed));
    const auto solution = Solver(circuit).solve();
    if (!solution) {
      ASSERT_EQ(solution.error().kind, Failure::Kind::overloaded);
      ++overloaded;
      continue;
    }
    EXPECT_LE(solution->current_residual, 1e-9);
    EXPECT_LE(solution->power_residual, 1e-9);
    if (!solution->collapse) continue;
    ++collapsed;
    EXPECT_GE(solution->collapse->branch, 0);
    EXPECT_LT(solution->collapse->share, 1);
  }
  EXPECT_LE(overloaded, 1 + count / 1000);
  EXPECT_GE(collapsed, count / 50);
}

}  // namespace
}  // namespace ohmtrail::test
