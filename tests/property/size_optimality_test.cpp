// `size` against trying everything: every design of small systems, solved by an independent fixed-point
// iteration written here from Kirchhoff's laws for a tree, with the trade's tables read directly.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <map>

#include "ohmtrail/plan/size.hpp"
#include "ohmtrail/trade/ampacity.hpp"
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/sound.hpp"
#include "support/random_cases.hpp"
#include "support/sizing_systems.hpp"

namespace ohmtrail {
namespace {

/// One run of the tree with what each cable on the list makes of it.
struct Branch {
  int parent = 0, node = 0;
  struct Cable {
    double cold, alpha, ambient, rise, rated, ends, cost;
  };
  std::vector<Cable> cables;
};

struct Tree {
  const netlist::System& system;
  std::vector<Branch> branches;  ///< a parent stands before its children

  explicit Tree(const netlist::System& from) : system(from) {
    for (const auto& run : system.runs) {
      Branch branch{std::stoi(run.from.substr(1)), std::stoi(run.to.substr(1)), {}};
      for (const auto& offer : system.cable_list) {
        const auto insulation = offer.insulation.value_or(run.insulation);
        const auto limit =
            trade::ampacity({offer.gauge, insulation, false, 1, run.conductor, system.info.nominal});
        const double metres = 2 * run.length.si();
        branch.cables.push_back(
            {trade::wire_resistance_at_20C(offer.gauge, 2 * run.length, run.conductor).si(),
             trade::temperature_coefficient(run.conductor), system.info.ambient.celsius(),
             limit.rise_at_rated.si(), limit.amps.si(),
             4 * trade::sound_termination(trade::TerminationKind::crimped, offer.gauge).value.si(),
             offer.price ? *offer.price * metres
                         : trade::conductor_mass(offer.gauge, 2 * run.length, run.conductor).si()});
      }
      branches.push_back(std::move(branch));
    }
  }

  [[nodiscard]] double load_amperes(const netlist::Load& load, double volts) const {
    if (const auto* watts = std::get_if<units::Power>(&load.takes)) return watts->si() / volts;
    if (const auto* ohms = std::get_if<units::Resistance>(&load.takes)) return volts / ohms->si();
    return std::get<units::Current>(load.takes).si();
  }

  [[nodiscard]] bool keeps_limits(const netlist::Case& in_case, const std::vector<int>& design) const {
    const std::size_t nodes = branches.size() + 1;
    std::vector<double> volts(nodes, system.batteries[0].emf->si()), amperes(nodes);
    for (int round = 0; round < 400; ++round) {
      const auto before = volts;
      amperes.assign(nodes, 0);
      for (const auto& load : system.loads)
        if (in_case.all_on || std::find(in_case.on.begin(), in_case.on.end(), load.id) != in_case.on.end()) {
          const auto node = static_cast<std::size_t>(std::stoi(load.plus.substr(1)));
          if (volts[node] < 3) return false;
          amperes[node] += load_amperes(load, volts[node]);
        }
      for (std::size_t b = branches.size(); b-- > 0;)
        amperes[static_cast<std::size_t>(branches[b].parent)] +=
            amperes[static_cast<std::size_t>(branches[b].node)];
      volts[0] = system.batteries[0].emf->si() - system.batteries[0].resistance->si() * amperes[0];
      for (std::size_t b = 0; b < branches.size(); ++b) {
        const auto node = static_cast<std::size_t>(branches[b].node);
        const auto& cable = branches[b].cables[static_cast<std::size_t>(design[b])];
        const double load = amperes[node] / cable.rated;
        const double ohms =
            cable.cold * (1 + cable.alpha * (cable.ambient + cable.rise * load * load - 20)) + cable.ends;
        volts[node] = volts[static_cast<std::size_t>(branches[b].parent)] - ohms * amperes[node];
      }
      double moved = 0;
      for (std::size_t n = 0; n < nodes; ++n) moved = std::max(moved, std::abs(volts[n] - before[n]));
      if (moved < 1e-13) break;
    }
    for (std::size_t b = 0; b < branches.size(); ++b)
      if (amperes[static_cast<std::size_t>(branches[b].node)] >
          branches[b].cables[static_cast<std::size_t>(design[b])].rated)
        return false;
    for (const auto& load : system.loads) {
      if (!in_case.all_on && std::find(in_case.on.begin(), in_case.on.end(), load.id) == in_case.on.end())
        continue;
      const double limit = load.load_class == netlist::LoadClass::critical ? 0.03 : 0.10;
      if (volts[0] - volts[static_cast<std::size_t>(std::stoi(load.plus.substr(1)))] >
          limit * 12 * (1 + 1e-9))
        return false;
    }
    return true;
  }

  [[nodiscard]] double cost(const std::vector<int>& design) const {
    double sum = 0;
    for (std::size_t b = 0; b < branches.size(); ++b)
      sum += branches[b].cables[static_cast<std::size_t>(design[b])].cost;
    return sum;
  }

  /// Least cost over every design; infinite where none keeps the limits.
  [[nodiscard]] double cheapest() const {
    double best = std::numeric_limits<double>::infinity();
    std::vector<int> design(branches.size(), 0);
    const int count = static_cast<int>(system.cable_list.size());
    while (true) {
      if (cost(design) < best) {
        bool keeps = true;
        for (const auto& in_case : system.cases) keeps = keeps && keeps_limits(in_case, design);
        if (keeps) best = cost(design);
      }
      std::size_t b = 0;
      while (b < design.size() && ++design[b] == count) design[b++] = 0;
      if (b == design.size()) return best;
    }
  }
};

void expect_cheapest(const netlist::System& system, unsigned seed) {
  const double best = Tree(system).cheapest();
  const auto sized = plan::size(system);
  ASSERT_TRUE(sized.has_value()) << sized.error();
  if (std::isinf(best)) {
    EXPECT_FALSE(sized->found) << "seed " << seed;
    EXPECT_FALSE(sized->proved);
    EXPECT_FALSE(sized->shortfalls.empty()) << "seed " << seed;
    return;
  }
  ASSERT_TRUE(sized->found) << "seed " << seed;
  EXPECT_TRUE(sized->proved) << "seed " << seed;
  EXPECT_NEAR(sized->cost, best, 1e-9 * best) << "seed " << seed;
  EXPECT_DOUBLE_EQ(sized->bound, sized->cost);
}

TEST(SizeOptimality, equals_trying_everything_with_loads_of_every_law) {
  for (int seed = 1; seed <= test::random_cases(140); ++seed)
    expect_cheapest(test::SizingSystems(static_cast<unsigned>(seed)).make({5, 6, 2, true, false}),
                    static_cast<unsigned>(seed));
}

TEST(SizeOptimality, equals_trying_everything_with_constant_power_and_current) {
  for (int seed = 1; seed <= test::random_cases(60); ++seed)
    expect_cheapest(
        test::SizingSystems(static_cast<unsigned>(1000 + seed)).make({5, 6, 3, false, seed % 2 == 0}),
        static_cast<unsigned>(seed));
}

}  // namespace
}  // namespace ohmtrail
