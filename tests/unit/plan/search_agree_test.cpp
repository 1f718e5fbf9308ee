// Two searches that share no bound on the cost, the dynamic programming of `search_tree` and the integer
// master of `search_radial`, find the same cost on systems too large to try everything.
#include <gtest/gtest.h>

#include <chrono>

#include "plan/assess.hpp"
#include "plan/search.hpp"
#include "support/random_cases.hpp"
#include "support/sizing_systems.hpp"

namespace ohmtrail::plan {
namespace {

struct Rig {
  DesignSpace space;
  std::vector<Guards> guards;
  std::vector<RadialCase> cases;
  Judge judge;

  explicit Rig(const netlist::System& system) : space(design_space(system, {})) {
    for (const CaseSpace& in_case : space.cases) {
      guards.push_back(find_guards(space.system, in_case.network));
      cases.push_back(*radial_case(space, in_case, guards.back()));
    }
    judge.assess = [this](const Design& design) { return assess(space, guards, rewired(space, design)); };
    judge.deadline = std::chrono::steady_clock::now() + std::chrono::hours(1);
  }
  Rig(const Rig&) = delete;
};

void expect_agreement(const netlist::System& system, int seed) {
  const Rig rig(system);
  const Found tree = search_tree(rig.space, rig.cases, rig.judge);
  const Found master = search_radial(rig.space, rig.cases, rig.judge);
  ASSERT_TRUE(tree.proved && master.proved) << "seed " << seed;
  ASSERT_EQ(tree.design.has_value(), master.design.has_value()) << "seed " << seed;
  if (!tree.design) return;
  const double expected = cost(rig.space, *master.design);
  EXPECT_NEAR(cost(rig.space, *tree.design), expected, 1e-8 * expected) << "seed " << seed;
  EXPECT_TRUE(rig.judge.accepts(*tree.design));
}

TEST(SearchAgreement, OnTenRunsOfEveryLaw) {
  for (int seed = 1; seed <= test::random_cases(12); ++seed)
    expect_agreement(test::SizingSystems(static_cast<unsigned>(500 + seed)).make({10, 8, 3, true, false}),
                     seed);
}

TEST(SearchAgreement, OnFourteenRunsByMass) {
  for (int seed = 1; seed <= test::random_cases(8); ++seed)
    expect_agreement(test::SizingSystems(static_cast<unsigned>(600 + seed)).make({14, 10, 4, false, true}),
                     seed);
}

}  // namespace
}  // namespace ohmtrail::plan
