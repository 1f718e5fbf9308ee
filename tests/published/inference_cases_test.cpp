// Worked problems whose printed answer is an unknown found from readings.
// Sources: OpenStax, University Physics Volume 2, chapter 10; OpenStax, College Physics 2e, chapter 21;
// Kuphaldt, Lessons in Electric Circuits, Volume I DC, chapter 8. Each test names the section. Priors are
// flat over several decades, so that the answer is the readings' alone; readings are taken as exact to a
// ten-thousandth.
#include <gtest/gtest.h>

#include <cmath>

#include "diagnose/infer/climb.hpp"
#include "diagnose/infer/groups.hpp"
#include "diagnose/infer/optimum.hpp"
#include "diagnose/infer/posterior.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

using solve::Branch;
using solve::Law;

Branch branch(int from, int to, Law law, double resistance, double size = 0) {
  Branch out;
  out.from = from;
  out.to = to;
  out.law = law;
  out.resistance = resistance;
  out.size = size;
  return out;
}

Parameter unknown_resistance(double guess) {
  Parameter out;
  out.centre = guess;
  out.sound = {0, 6};
  return out;
}

Parameter unknown_volts(double guess) {
  Parameter out;
  out.kind = Kind::emf;
  out.scale = Scale::linear;
  out.centre = guess;
  out.sound = {0, 100};
  return out;
}

Observation current(int in_case, int element, double value) {
  Observation out;
  out.sight = Sight::current;
  out.in_case = in_case;
  out.branch = element;
  out.measured = value;
  out.sigma = 1e-4;
  return out;
}

Observation voltage(int in_case, int red, int black, double value) {
  Observation out;
  out.in_case = in_case;
  out.red = red;
  out.black = black;
  out.measured = value;
  out.sigma = 1e-4;
  return out;
}

CaseCircuit one_case(int points, std::vector<Branch> branches, std::vector<Placement> placements) {
  CaseCircuit out;
  out.circuit.points = points;
  out.circuit.branches = std::move(branches);
  out.circuit.reference = 0;
  out.placements = std::move(placements);
  return out;
}

Optimum solve_for(const Model& model) {
  Forward forward(model);
  const auto best = climb(forward, false);
  EXPECT_TRUE(best);
  return *best;
}

double value_of(const Model& model, const Optimum& best, int parameter) {
  return model.parameters[static_cast<std::size_t>(parameter)].value(best.x[parameter]);
}

// University Physics 2, section 10.1 problems: 2.00 V less at 5.00 A more: r = 0.400 Ω; "can the emf be
// found?": no.
TEST(InferenceCases, InternalResistanceFromTwoReadings) {
  Model model;
  model.parameters = {unknown_resistance(1), unknown_volts(12)};
  // The fall alone is given: a first reading of unknown height, which another unknown takes up.
  for (const double amperes : {1.0, 6.0}) {
    model.cases.push_back(one_case(2,
                                   {branch(1, 0, Law::source, 1, 12), branch(1, 0, Law::current, 0, amperes)},
                                   {{0, 0, false}, {1, 0, true}}));
  }
  model.observations = {voltage(0, 1, 0, 11.0), voltage(1, 1, 0, 9.0)};
  const Optimum best = solve_for(model);
  EXPECT_NEAR(value_of(model, best, 0), 0.4, 5e-4);
}

TEST(InferenceCases, RestVoltageCannotBeFoundFromTheFallAlone) {
  // dV = −5 r: one equation in (r, E) has the column of E at nothing.
  Eigen::MatrixXd jacobian(1, 2);
  jacobian << -5, 0;
  EXPECT_TRUE(unresolved_sets(jacobian).empty());
  const LinearFit fit = fit_linear(jacobian, Eigen::VectorXd::Constant(1, -2.0), true);
  EXPECT_DOUBLE_EQ(fit.basis(2, 0), 0);  // nothing is learnt of it: its variance stays that of the prior
}

struct OnCharge {
  double volts, amperes, ohms;
};

class BatteryOnCharge : public testing::TestWithParam<OnCharge> {};

// University Physics 2, section 10.1 problems (16.0 V, 10.0 A: 0.400 Ω, 40.0 W); College Physics 2e,
// section 21.2 (15.0 V, 8.00 A: 0.375 Ω).
TEST_P(BatteryOnCharge, HasItsInternalResistance) {
  const OnCharge given = GetParam();
  Model model;
  model.parameters = {unknown_resistance(1)};
  model.cases.push_back(one_case(
      2, {branch(1, 0, Law::source, 1, 12), branch(0, 1, Law::current, 0, given.amperes)}, {{0, 0, false}}));
  model.observations = {voltage(0, 1, 0, given.volts)};
  const double ohms = value_of(model, solve_for(model), 0);
  EXPECT_NEAR(ohms, given.ohms, 5e-4);
  if (given.amperes == 10) {
    EXPECT_NEAR(ohms * given.amperes * given.amperes, 40.0, 0.05);
  }
}

INSTANTIATE_TEST_SUITE_P(Both, BatteryOnCharge,
                         testing::Values(OnCharge{16, 10, 0.4}, OnCharge{15, 8, 0.375}));

// University Physics 2, section 10.3 problems: four cells, 6.27 V and 0.060 Ω + r_bad, into 10.0 Ω. Sound
// (0.100 Ω): 0.617 A and 3.81 W; 0.500 W in the load: r_bad = 18.0 Ω.
TEST(InferenceCases, FailedCellOfAString) {
  Model model;
  model.parameters = {unknown_resistance(0.1)};
  const double amperes = std::sqrt(0.5 / 10.0);
  model.cases.push_back(one_case(4,
                                 {branch(1, 0, Law::source, 0, 6.27), branch(1, 2, Law::resistor, 0.06),
                                  branch(2, 3, Law::resistor, 0.1), branch(3, 0, Law::resistor, 10)},
                                 {{0, 2, false}}));
  model.observations = {current(0, 3, amperes)};
  EXPECT_NEAR(value_of(model, solve_for(model), 0), 18.0, 0.05);
  solve::Solver solver(model.cases.front().circuit);
  const auto solved = solver.solve();
  ASSERT_TRUE(solved);
  EXPECT_NEAR(solved->current[3], 0.617, 6e-4);
  EXPECT_NEAR(solved->current[3] * solved->current[3] * 10, 3.81, 6e-3);
}

// College Physics 2e, section 21.3 problems: at a junction with I1 = I2 + I3 the readings 5.00, 3.00 and
// −2.00 A contradict each other by 4.00 A. The residual must be found; with equal errors all three are
// equally suspect.
TEST(InferenceCases, ReadingsThatContradict) {
  Eigen::MatrixXd jacobian(3, 2);  // unknowns I2, I3; wide priors
  jacobian << 1, 1, 1, 0, 0, 1;
  const double prior = 1e3;
  const Eigen::Vector3d read(5, 3, -2);
  const LinearFit fit = fit_linear(prior * jacobian, read, true);
  EXPECT_NEAR(fit.chi_square, 16.0 / 3, 1e-4);  // 4 A shared by three readings of 1 A
  for (Eigen::Index i = 0; i < 3; ++i) {
    const double redundancy = fit.basis.row(i).squaredNorm();
    EXPECT_NEAR(std::abs(fit.mean[i]) / std::sqrt(redundancy), 4 / std::sqrt(3.0), 1e-4);
    EXPECT_NEAR(redundancy, 1.0 / 3, 1e-4);
  }
}

// College Physics 2e, section 21.5 problems: balance at R2/R1 = 0.625 with R3 = 2500 Ω: Rx = 1.56 kΩ (exact
// 1562.5).
TEST(InferenceCases, BalancedBridge) {
  Model model;
  model.parameters = {unknown_resistance(1000)};
  model.cases.push_back(one_case(
      4,
      {branch(1, 0, Law::source, 0, 1), branch(1, 2, Law::resistor, 1), branch(2, 0, Law::resistor, 0.625),
       branch(1, 3, Law::resistor, 2500), branch(3, 0, Law::resistor, 1000)},
      {{0, 4, false}}));
  model.observations = {voltage(0, 2, 3, 0)};
  model.observations.front().sigma = 1e-6;
  EXPECT_NEAR(value_of(model, solve_for(model), 0), 1560, 5);
}

// College Physics 2e, section 21.4 problems: a 1.00 kΩ meter on a cell of 1.585 V and 0.100 Ω.
TEST(InferenceCases, MeterLoadsACell) {
  const CaseCircuit loaded =
      one_case(2, {branch(1, 0, Law::source, 0.1, 1.585), branch(1, 0, Law::resistor, 1000)}, {});
  solve::Solver solver(loaded.circuit);
  const auto solved = solver.solve();
  ASSERT_TRUE(solved);
  EXPECT_NEAR(solved->voltage[1], 1.5848, 6e-5);
  EXPECT_NEAR(solved->current[1], 0.00158, 6e-6);
  EXPECT_NEAR(solved->voltage[1] / 1.585, 0.9999, 6e-6);
}

// Kuphaldt, volume I, chapter 8, voltmeter impact: 24 V over two 250 MΩ, read with 10 MΩ: 0.8889 V.
TEST(InferenceCases, MeterLoadsADivider) {
  const CaseCircuit loaded = one_case(3,
                                      {branch(1, 0, Law::source, 0, 24), branch(1, 2, Law::resistor, 250e6),
                                       branch(2, 0, Law::resistor, 250e6), branch(2, 0, Law::resistor, 10e6)},
                                      {});
  solve::Solver solver(loaded.circuit);
  const auto solved = solver.solve();
  ASSERT_TRUE(solved);
  EXPECT_NEAR(solved->voltage[2], 0.8889, 6e-5);
  EXPECT_NEAR(1 / (1 / 250e6 + 1 / 10e6), 9.615e6, 600);
}

// University Physics 2, section 10.3 problems, circuit of five resistors whose currents are given as 4, 3, 1,
// 1 and 3 A: V1 = 42 V, V2 = 6 V, R4 = 6 Ω.
TEST(InferenceCases, ThreeUnknownsFromCurrents) {
  constexpr double wire =
      1e-6;  // the book's sources have no resistance; this one moves nothing that is printed
  Model model;
  model.parameters = {unknown_volts(20), unknown_volts(10), unknown_resistance(3)};
  model.cases.push_back(one_case(
      5,
      {branch(1, 0, Law::source, wire, 20), branch(1, 2, Law::resistor, 6), branch(3, 0, Law::resistor, 4),
       branch(2, 3, Law::resistor, 6), branch(4, 0, Law::resistor, 3), branch(2, 4, Law::resistor, 4),
       branch(3, 4, Law::source, wire, 10)},
      {{0, 0, true}, {1, 6, true}, {2, 4, false}}));
  model.observations = {current(0, 1, 4), current(0, 2, 3), current(0, 3, 1), current(0, 4, 1),
                        current(0, 5, 3)};
  const Optimum best = solve_for(model);
  EXPECT_NEAR(value_of(model, best, 0), 42, 0.05);
  EXPECT_NEAR(value_of(model, best, 1), 6, 0.05);
  EXPECT_NEAR(value_of(model, best, 2), 6, 0.05);
}

}  // namespace
}  // namespace ohmtrail::diagnose::inference
