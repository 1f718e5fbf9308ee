// `size` against every design of small systems, each judged by the real solve: strings in parallel, fuses
// whose rating the cable decides, loads of short duty, plus and minus conductors that branch differently.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "ohmtrail/plan/size.hpp"
#include "ohmtrail/trade/protection.hpp"
#include "plan/assess.hpp"
#include "small_systems.hpp"
#include "support/random_cases.hpp"

namespace ohmtrail::plan {
namespace {

using test::Systems;

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Least cost of all designs that the real solve accepts; infinite where none.
double by_trying(const netlist::System& system) {
  const DesignSpace space = design_space(system, {});
  std::vector<Guards> guards;
  for (const CaseSpace& in_case : space.cases) guards.push_back(find_guards(space.system, in_case.network));
  double best = kInfinity;
  Design design(space.runs.size(), 0);
  while (true) {
    if (cost(space, design) < best && assess(space, guards, rewired(space, design)).keeps_limits())
      best = cost(space, design);
    std::size_t k = 0;
    while (k < design.size() && ++design[k] == static_cast<int>(space.runs[k].candidates.size()))
      design[k++] = 0;
    if (k == design.size()) return best;
  }
}

/// Returns whether a design exists.
bool expect_cheapest(const netlist::System& system, unsigned seed) {
  const double best = by_trying(system);
  const auto sized = size(system);
  EXPECT_TRUE(sized.has_value());
  if (!sized) return false;
  EXPECT_EQ(sized->found, std::isfinite(best)) << "seed " << seed;
  if (!sized->found || !std::isfinite(best)) return false;
  EXPECT_TRUE(sized->proved) << "seed " << seed;
  EXPECT_NEAR(sized->cost, best, 1e-9 * best) << "seed " << seed;
  return true;
}

template <class Make>
void expect_cheapest_of_many(int count, Make make) {
  int solvable = 0;
  for (int turn = 1; turn <= test::random_cases(count); ++turn)
    if (expect_cheapest(make(static_cast<unsigned>(turn)), static_cast<unsigned>(turn))) ++solvable;
  EXPECT_GT(solvable, 0);
}

TEST(SizeExactness, TwoBatteriesInParallel) {
  expect_cheapest_of_many(25, [](unsigned seed) {
    Systems make(seed);
    make.battery("a", "a+", "a-");
    make.battery("b", "b+", "b-");
    make.run("jumper plus", "b+", "a+", 0.5);
    make.run("jumper minus", "b-", "a-", 0.5);
    make.run("out", "a+", "l+", 3);
    // Half of them take the minus from the other battery.
    make.run("back", "l-", seed % 2 == 0 ? "a-" : "b-", 3);
    make.load("load", "l+", "l-");
    return make.done();
  });
}

TEST(SizeExactness, TwoStringsOfTwoInParallel) {
  expect_cheapest_of_many(12, [](unsigned seed) {
    Systems make(seed);
    for (const std::string string : {"a", "b"}) {
      make.battery(string + "1", string + "1+", string + "-", 6);
      make.battery(string + "2", string + "+", string + "2-", 6);
      make.run("link " + string, string + "1+", string + "2-", 0.4);
    }
    make.run("jumper plus", "b+", "a+", 0.5);
    make.run("jumper minus", "b-", "a-", 0.5);
    make.run("out", "a+", "l+", 3);
    make.load("load", "l+", "a-");
    return make.done();
  });
}

netlist::System fused_branches(unsigned seed) {
  Systems make(seed);
  make.battery("a", "a+", "a-");
  make.fuse("main", "a+", "m", seed % 3 == 0 ? 100 : seed % 3 == 1 ? 30 : 24);  // no 24 A on the ladder
  make.run("trunk", "m", "p", 2);
  make.fuse("branch fuse", "p", "q", seed % 2 == 0 ? 5 : 22);
  make.run("branch", "q", "l+", 3);
  make.run("back", "l-", "a-", 3);
  make.run("other", "p", "k+", 2);
  make.load("lamp", "l+", "l-");
  make.load("pump", "k+", "a-");
  return make.done();
}

TEST(SizeExactness, FusesThatTheCableDecides) {
  expect_cheapest_of_many(25, fused_branches);
}

/// In a road vehicle the gauge decides as well.
TEST(SizeExactness, FusesThatTheGaugeDecides) {
  expect_cheapest_of_many(25, [](unsigned seed) {
    netlist::System system = fused_branches(seed);
    system.info.kind = netlist::SystemKind::vehicle;
    return system;
  });
}

/// What size chooses for a vehicle its own check would not refuse.
TEST(SizeExactness, FusesOfAVehicleAreAllowedOverTheirGauge) {
  int fused = 0;
  for (unsigned seed = 1; seed <= 12; ++seed) {
    netlist::System system = fused_branches(seed);
    system.info.kind = netlist::SystemKind::vehicle;
    const auto sized = size(system);
    ASSERT_TRUE(sized.has_value());
    for (const RunChoice& run : sized->runs) {
      if (!sized->found || !run.fuse) continue;
      const auto& renewed = sized->rewired.runs;
      const auto found = std::find_if(renewed.begin(), renewed.end(),
                                      [&](const netlist::Run& one) { return one.id == run.id; });
      if (const auto limit = trade::vehicle_fuse_limit(found->gauge)) {
        EXPECT_LE(*run.fuse, limit->limit.si()) << seed << ' ' << run.id;
        ++fused;
      }
    }
  }
  EXPECT_GT(fused, 0);
}

TEST(SizeExactness, LoadsOfShortDuty) {
  expect_cheapest_of_many(25, [](unsigned seed) {
    Systems make(seed);
    make.battery("a", "a+", "a-");
    make.run("trunk", "a+", "p", 1.5);
    make.run("winch", "p", "w+", 3);
    make.run("back", "p-", "a-", 1.5);
    make.run("lamp", "p", "l+", 3);
    auto& winch = make.load("winch motor", "w+", "p-");
    winch.takes = units::Current{30 + 60 * make.share()};
    winch.on_for = units::Time{60}, winch.rest_for = units::Time{600};
    make.load("lamps", "l+", "p-");
    return make.done();
  });
}

TEST(SizeExactness, PlusAndMinusThatBranchDifferently) {
  expect_cheapest_of_many(12, [](unsigned seed) {
    Systems make(seed);
    make.battery("a", "a+", "a-");
    make.run("plus", "a+", "p", 2);
    make.run("first", "p", "1+", 2);
    make.run("minus", "n", "a-", 2);
    make.run("third", "a+", "3+", 2);
    make.load("one", "1+", "a-");
    make.load("two", "p", "n");
    make.load("three", "3+", "n");
    return make.done();
  });
}

TEST(SizeExactness, AChargerBesideTheBattery) {
  expect_cheapest_of_many(8, [](unsigned seed) {
    Systems make(seed);
    make.battery("a", "a+", "a-");
    make.run("charger lead", "c+", "a+", 3);
    make.run("feed", "a+", "l+", 2);
    make.run("back", "l-", "a-", 2);
    make.load("lamp", "l+", "l-");
    netlist::System system = make.done();
    netlist::Charger charger;
    charger.id = "charger", charger.plus = "c+", charger.minus = "a-";
    charger.setpoint = units::Voltage{14}, charger.limit = units::Current{10 + 20 * make.share()};
    system.chargers.push_back(charger);
    for (auto& one : system.cases) one.chargers = {"charger"};
    return system;
  });
}

TEST(SizeExactness, ASecondBatteryBehindAnIsolator) {
  expect_cheapest_of_many(8, [](unsigned seed) {
    Systems make(seed);
    make.battery("a", "a+", "a-"), make.battery("b", "b+", "b-");
    make.run("splitter lead", "s", "b+", 1);
    make.run("feed", "b+", "l+", 2);
    make.run("back", "l-", "b-", 2);
    make.run("minus link", "a-", "b-", 0.5);
    make.load("lamp", "l+", "l-");
    netlist::System system = make.done();
    netlist::Isolator isolator;
    isolator.id = "splitter", isolator.from = "a+", isolator.to = "s";
    isolator.drop = units::Voltage{seed % 2 == 0 ? 0.05 : 0.6};
    system.isolators.push_back(isolator);
    return system;
  });
}

TEST(SizeExactness, AConverterThatFeedsALoadOfItsOwn) {
  expect_cheapest_of_many(8, [](unsigned seed) {
    Systems make(seed);
    make.battery("a", "a+", "a-");
    make.run("feed", "a+", "i+", 3);
    make.run("back", "i-", "a-", 3);
    make.run("out", "o+", "l+", 2);
    make.load("radio", "l+", "o-").takes = units::Current{2 + 4 * make.share()};
    make.load("lamp", "i+", "i-");
    netlist::System system = make.done();
    netlist::Converter converter;
    converter.id = "converter";
    converter.plus_in = "i+", converter.minus_in = "i-", converter.plus_out = "o+",
    converter.minus_out = "o-";
    converter.setpoint = units::Voltage{12.4}, converter.limit = units::Current{10};
    system.converters.push_back(converter);
    return system;
  });
}

TEST(SizeExactness, ARingOfWire) {
  expect_cheapest_of_many(8, [](unsigned seed) {
    Systems make(seed);
    make.battery("a", "a+", "a-");
    make.run("one way", "a+", "l+", 3);
    make.run("other way", "a+", "k+", 2);
    make.run("across", "k+", "l+", 2);
    make.run("back", "l-", "a-", 2);
    make.load("lamp", "l+", "l-");
    make.load("pump", "k+", "l-");
    return make.done();
  });
}

}  // namespace
}  // namespace ohmtrail::plan
