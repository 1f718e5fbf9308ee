// The bounds of the tree search against every design of small systems, each solved for real.
#include "plan/tree_bound.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "plan/assess.hpp"
#include "plan/box_shrink.hpp"
#include "plan/tree_cases.hpp"
#include "support/random_cases.hpp"
#include "support/sizing_systems.hpp"

namespace ohmtrail::plan {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// A small system with everything that a bound needs.
struct Rig {
  DesignSpace space;
  std::vector<Guards> guards;
  std::vector<RadialCase> cases;
  std::vector<LoadTree> trees;
  Box box;
  std::vector<Bounds> known;

  Rig(unsigned seed, bool resistive, int case_count)
      : Rig(test::SizingSystems(seed).make({4, 4, case_count, resistive, false})) {}

  explicit Rig(const netlist::System& system) : space(design_space(system, {})) {
    for (const CaseSpace& in_case : space.cases) {
      guards.push_back(find_guards(space.system, in_case.network));
      cases.push_back(*radial_case(space, in_case, guards.back()));
      trees.push_back(*load_tree(cases.back()));
    }
    box = full_box(space);
    known = shrink_box(cases, space, box);
  }

  [[nodiscard]] bool keeps_limits(const Design& design) const {
    return assess(space, guards, rewired(space, design)).keeps_limits();
  }

  /// [run][candidate]: least cost of the designs that take it and keep every limit, by trying everything.
  [[nodiscard]] std::vector<std::vector<double>> least_by_trying() const {
    std::vector<std::vector<double>> least;
    for (const RunSpace& run : space.runs) least.emplace_back(run.candidates.size(), kInfinity);
    Design design(space.runs.size(), 0);
    while (true) {
      if (keeps_limits(design))
        for (std::size_t k = 0; k < design.size(); ++k) {
          double& entry = least[k][static_cast<std::size_t>(design[k])];
          entry = std::min(entry, cost(space, design));
        }
      std::size_t k = 0;
      while (k < design.size() && ++design[k] == static_cast<int>(space.runs[k].candidates.size()))
        design[k++] = 0;
      if (k == design.size()) return least;
    }
  }
};

void expect_below_everything(const Rig& rig, const JointBound& joint, unsigned seed) {
  const auto least = rig.least_by_trying();
  for (std::size_t k = 0; k < least.size(); ++k)
    for (std::size_t c = 0; c < least[k].size(); ++c) {
      if (std::isinf(least[k][c])) continue;
      ASSERT_TRUE(rig.box[k][c]) << "seed " << seed << ": a candidate of use was taken away";
      EXPECT_LE(joint.bound, least[k][c] * (1 + 1e-9)) << "seed " << seed;
      EXPECT_LE(joint.least[k][c], least[k][c] * (1 + 1e-9)) << "seed " << seed << " run " << k << " " << c;
    }
}

TEST(TreeBound, IsBelowEveryDesignThatKeepsItsLimits) {
  for (int turn = 1; turn <= test::random_cases(30); ++turn) {
    const auto seed = static_cast<unsigned>(turn);
    const Rig rig(seed, turn % 2 == 0, 1);
    if (rig.known.empty()) continue;
    TreeCases joint(rig.space, rig.cases, rig.trees);
    joint.activate(0, rig.known);
    for (const std::size_t labels : {1000U, 3U})
      expect_below_everything(rig, joint.bound({rig.box, rig.known, 1e6, labels}), seed);
  }
}

TEST(TreeBound, OfSeveralCasesIsBelowEveryDesignHoweverTheCostsAreSplit) {
  for (int turn = 1; turn <= test::random_cases(20); ++turn) {
    const auto seed = static_cast<unsigned>(100 + turn);
    const Rig rig(seed, turn % 2 == 0, 3);
    if (rig.known.empty()) continue;
    TreeCases joint(rig.space, rig.cases, rig.trees);
    for (std::size_t s = 0; s < rig.cases.size(); ++s) joint.activate(s, rig.known);
    const TreeQuestion question{rig.box, rig.known, 1e6, 1000};
    const auto before = joint.bound(question);
    expect_below_everything(rig, before, seed);
    joint.improve(question);
    const auto after = joint.bound(question);
    EXPECT_GE(after.bound, before.bound * (1 - 1e-9));
    expect_below_everything(rig, after, seed);
  }
}

/// With constant currents alone nothing is relaxed: the bound is the least cost itself.
TEST(TreeBound, IsExactForConstantCurrents) {
  int compared = 0;
  for (int turn = 1; turn <= test::random_cases(20); ++turn) {
    auto system = test::SizingSystems(static_cast<unsigned>(200 + turn)).make({4, 4, 1, false, false});
    for (auto& load : system.loads)
      if (const auto* watts = std::get_if<units::Power>(&load.takes))
        load.takes = units::Current{watts->si() / 12};
    const Rig rig(system);
    if (rig.known.empty()) continue;
    TreeCases joint(rig.space, rig.cases, rig.trees);
    joint.activate(0, rig.known);
    const auto least = rig.least_by_trying();
    const double best = *std::min_element(least[0].begin(), least[0].end());
    const auto bound = joint.bound({rig.box, rig.known, 1e6, 100000});
    if (std::isinf(best)) continue;
    EXPECT_NEAR(bound.bound, best, 1e-9 * best) << "turn " << turn;
    EXPECT_NEAR(cost(rig.space, bound.design), best, 1e-9 * best);
    ++compared;
  }
  EXPECT_GT(compared, 0);
}

TEST(TreeBound, NothingBelowTheCeilingIsInfinite) {
  const Rig rig(3, false, 1);
  ASSERT_FALSE(rig.known.empty());
  TreeCases joint(rig.space, rig.cases, rig.trees);
  joint.activate(0, rig.known);
  const double bound = joint.bound({rig.box, rig.known, 1e6, 1000}).bound;
  EXPECT_TRUE(std::isinf(joint.bound({rig.box, rig.known, 0.5 * bound, 1000}).bound));
}

}  // namespace
}  // namespace ohmtrail::plan
