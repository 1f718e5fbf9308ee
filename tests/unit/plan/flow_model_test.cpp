// The rows of the flow model are met by every design that keeps its limits: with its candidates fixed the
// linear relaxation has a solution, however the system is built.
#include "plan/flow_model.hpp"

#include <gtest/gtest.h>

#include <random>

#include "plan/assess.hpp"
#include "small_systems.hpp"
#include "support/random_cases.hpp"

namespace ohmtrail::plan {
namespace {

/// A ring of wire behind a fuse, two parallel batteries, and on every other system a charger that runs.
netlist::System ring(unsigned seed) {
  test::Systems make(seed);
  make.battery("a", "a+", "a-"), make.battery("b", "b+", "a-");
  make.run("jumper", "b+", "a+", 0.5);
  make.fuse("main", "a+", "m", 60);
  make.run("one way", "m", "l+", 2), make.run("other way", "m", "k+", 2), make.run("across", "k+", "l+", 1);
  make.load("lamp", "l+", "a-"), make.load("pump", "k+", "a-");
  auto system = make.done();
  if (seed % 2 != 0) return system;
  netlist::Charger charger;
  charger.id = "charger", charger.plus = "b+", charger.minus = "a-";
  charger.setpoint = units::Voltage{14}, charger.limit = units::Current{10};
  system.chargers.push_back(charger);
  system.cases.front().chargers = {"charger"};
  return system;
}

struct Rig {
  DesignSpace space;
  std::vector<Guards> guards;
  Assessment widest;

  explicit Rig(unsigned seed) : space(design_space(ring(seed), {})) {
    for (const CaseSpace& in_case : space.cases) guards.push_back(find_guards(space.system, in_case.network));
    Design thickest;
    for (const RunSpace& run : space.runs) thickest.push_back(static_cast<int>(run.candidates.size()) - 1);
    widest = assess(space, guards, rewired(space, thickest));
  }

  /// Whether the rows of every case leave room for a design.
  [[nodiscard]] bool allows(const Design& design) const {
    Mip mip;
    std::vector<std::vector<int>> taken;
    for (std::size_t k = 0; k < space.runs.size(); ++k) {
      taken.emplace_back();
      for (std::size_t c = 0; c < space.runs[k].candidates.size(); ++c)
        taken.back().push_back(mip.add_binary(space.runs[k].candidates[c].cost));
    }
    const auto most = most_amperes(space, widest.cases);
    for (std::size_t s = 0; s < space.cases.size(); ++s)
      FlowModel(mip, space, space.cases[s], guards[s], widest.cases[s], most, taken);
    // A row each: a case may have fixed a candidate at zero.
    for (std::size_t k = 0; k < taken.size(); ++k)
      for (std::size_t c = 0; c < taken[k].size(); ++c) {
        const double value = static_cast<int>(c) == design[k] ? 1 : 0;
        mip.add_row({{taken[k][c], 1}}, value, value);
      }
    return mip.relax().has_value();
  }
};

TEST(FlowModel, EveryDesignThatKeepsItsLimitsMeetsTheRows) {
  std::mt19937 engine(3);
  int kept = 0;
  for (int turn = 1; turn <= test::random_cases(16); ++turn) {
    const Rig rig(static_cast<unsigned>(turn));
    ASSERT_FALSE(rig.widest.failure);
    for (int pick = 0; pick < 12; ++pick) {
      Design design;
      for (const RunSpace& run : rig.space.runs)
        design.push_back(static_cast<int>(engine() % run.candidates.size()));
      if (!assess(rig.space, rig.guards, rewired(rig.space, design)).keeps_limits()) continue;
      ++kept;
      EXPECT_TRUE(rig.allows(design)) << "turn " << turn;
    }
  }
  EXPECT_GT(kept, 0);
}

/// And not by all: a wire far too thin for its current is refused.
TEST(FlowModel, AWireFarTooThinIsRefused) {
  auto system = ring(1);
  for (auto& load : system.loads) load.takes = units::Current{60};
  Rig rig(1);
  rig.space = design_space(system, {});
  rig.widest = assess(rig.space, rig.guards, rewired(rig.space, Design(rig.space.runs.size(), 3)));
  EXPECT_FALSE(rig.allows(Design(rig.space.runs.size(), 0)));
}

}  // namespace
}  // namespace ohmtrail::plan
