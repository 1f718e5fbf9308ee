// Numbers at the edge: resistances twelve decades apart, in one path, side by side and in ladders, against
// closed forms in extended precision.
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "property/solve_random.hpp"
#include "support/property.hpp"

namespace ohmtrail::test {
namespace {

using Decades = std::vector<double>;

constexpr double emf = 12;

/// Ω, uniform in the logarithm from 1 µΩ to 1 MΩ.
double any_resistance() {
  return std::pow(10.0, *rc::gen::inRange(-6'000, 6'001) / 1000.0);
}

Branch resistor(int from, int to, double ohms) {
  Branch made = RandomCircuit::branch(from, to, Law::resistor);
  made.resistance = ohms;
  return made;
}

/// One source of 12 V without resistance of its own between points 1 and 0.
Circuit with_source(int points) {
  Circuit circuit;
  circuit.points = points;
  circuit.reference = 0;
  Branch source = RandomCircuit::branch(1, 0, Law::source);
  source.size = emf;
  source.resistance = 0;
  circuit.branches.push_back(source);
  return circuit;
}

void near(double found, long double expected, long double least = 0) {
  RC_ASSERT(std::abs(static_cast<long double>(found) - expected) <= 1e-9L * std::abs(expected) + least);
}

Decades any_resistances(int most) {
  Decades made(static_cast<std::size_t>(*rc::gen::inRange(1, most + 1)));
  for (double& each : made) each = any_resistance();
  return made;
}

TEST(SolveEdgeNumbers, OnePathOfTwelveDecades) {
  holds([] {
    const Decades path = any_resistances(40);
    const int count = static_cast<int>(path.size());
    Circuit circuit = with_source(count + 1);
    long double whole = 0;
    for (int k = 0; k < count; ++k) {
      circuit.branches.push_back(
          resistor(k + 1, k + 1 == count ? 0 : k + 2, path[static_cast<std::size_t>(k)]));
      whole += path[static_cast<std::size_t>(k)];
    }
    const auto solved = Solver(circuit).solve();
    RC_ASSERT(solved.has_value());
    const long double current = emf / whole;
    for (std::size_t k = 0; k < path.size(); ++k) {
      near(solved->current[k + 1], current);
      near(solved->drop[k + 1], current * path[k]);
    }
  });
}

TEST(SolveEdgeNumbers, SideBySideEachTakesWhatOhmsLawGives) {
  holds([] {
    const Decades branches = any_resistances(30);
    Circuit circuit = with_source(2);
    for (const double ohms : branches) circuit.branches.push_back(resistor(1, 0, ohms));
    const auto solved = Solver(circuit).solve();
    RC_ASSERT(solved.has_value());
    for (std::size_t k = 0; k < branches.size(); ++k)
      near(solved->current[k + 1], emf / static_cast<long double>(branches[k]));
  });
}

/// Series and shunt resistors in turn; the input resistance is the continued fraction, and each stage
/// divides.
TEST(SolveEdgeNumbers, LaddersDivideAsTheirContinuedFraction) {
  holds([] {
    const int stages = *rc::gen::inRange(1, 15);
    Circuit circuit = with_source(stages + 2);
    Decades series, shunt;
    for (int k = 0; k < stages; ++k) {
      series.push_back(any_resistance());
      shunt.push_back(any_resistance());
      circuit.branches.push_back(resistor(k + 1, k + 2, series.back()));
      circuit.branches.push_back(resistor(k + 2, 0, shunt.back()));
    }
    const auto solved = Solver(circuit).solve();
    RC_ASSERT(solved.has_value());
    std::vector<long double> beyond(series.size() + 1, 0);  // S, of everything from a stage on
    for (std::size_t k = series.size(); k-- > 0;) {
      beyond[k] = 1 / (series[k] + 1 / (1 / static_cast<long double>(shunt[k]) + beyond[k + 1]));
    }
    // Beside mega-amperes in the first stages the last ones are known to less than a nanovolt.
    const long double least_current = 1e-17L * emf * beyond[0];
    long double volts = emf;
    for (std::size_t k = 0; k < series.size(); ++k) {
      near(solved->current[2 * k + 1], volts * beyond[k], least_current);
      volts *= beyond[k] / (1 / static_cast<long double>(shunt[k]) + beyond[k + 1]);
      near(solved->drop[2 * k + 2], volts, 1e-11L * emf);
    }
  });
}

TEST(SolveEdgeNumbers, NothingOnGivesNothing) {
  Circuit circuit = with_source(3);
  circuit.branches.push_back(resistor(1, 2, 1e-6));
  const auto solved = Solver(circuit).solve();
  ASSERT_TRUE(solved);
  EXPECT_EQ(solved->current[1], 0);
  EXPECT_EQ(solved->drop[1], 0);
  EXPECT_EQ(solved->voltage[2], emf);
  EXPECT_EQ(solved->current_residual, 0);
  EXPECT_EQ(solved->power_residual, 0);
}

}  // namespace
}  // namespace ohmtrail::test
