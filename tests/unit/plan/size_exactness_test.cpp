// `size` against every design of small systems, each judged by the real solve: strings in parallel, fuses
// whose rating the cable decides, loads of short duty, plus and minus conductors that branch differently.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "ohmtrail/plan/size.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "plan/assess.hpp"
#include "support/random_cases.hpp"

namespace ohmtrail::plan {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Invented systems: every wire a run of its own, without a return.
class Systems {
 public:
  explicit Systems(unsigned seed) : engine_(seed) {
    system_.info.name = "small (invented)";
    system_.info.nominal = units::Voltage{12};
    for (const int number : {16, 10, 6, 2}) {
      netlist::CableOffer offer;
      offer.gauge = trade::awg(number);
      offer.gauge_as_written = trade::print(offer.gauge);
      offer.price = (0.5 + share()) * std::pow(1.6, (16 - number) / 4.0);
      system_.cable_list.push_back(offer);
    }
  }

  double share() { return std::uniform_real_distribution<double>(0, 1)(engine_); }

  void battery(const std::string& id, const std::string& plus, const std::string& minus, double volts = 12) {
    netlist::Battery battery;
    battery.id = id, battery.plus = plus, battery.minus = minus;
    battery.nominal = units::Voltage{volts};
    battery.emf = units::Voltage{volts * (1.03 + 0.02 * share())};
    battery.resistance = units::Resistance{0.003 + 0.01 * share()};
    system_.batteries.push_back(battery);
  }

  void run(const std::string& id, const std::string& from, const std::string& to, double metres) {
    netlist::Run run;
    run.id = id, run.from = from, run.to = to;
    run.gauge = trade::awg(6);
    run.length = units::Length{metres * (0.5 + share())};
    system_.runs.push_back(run);
  }

  void fuse(const std::string& id, const std::string& from, const std::string& to, double amperes) {
    netlist::Fuse fuse;
    fuse.id = id, fuse.from = from, fuse.to = to;
    fuse.rating = units::Current{amperes};
    system_.fuses.push_back(fuse);
  }

  netlist::Load& load(const std::string& id, const std::string& plus, const std::string& minus) {
    netlist::Load load;
    load.id = id, load.plus = plus, load.minus = minus;
    const double watts = 40 + 200 * share(), kind = share();
    if (kind < 0.4)
      load.takes = units::Power{watts};
    else if (kind < 0.7)
      load.takes = units::Resistance{144 / watts};
    else
      load.takes = units::Current{watts / 12};
    load.load_class = share() < 0.4 ? netlist::LoadClass::critical : netlist::LoadClass::other;
    system_.loads.push_back(load);
    return system_.loads.back();
  }

  /// All loads on, and each alone.
  netlist::System done() {
    netlist::Case all;
    all.name = "all", all.all_on = true;
    system_.cases.push_back(all);
    for (const auto& load : system_.loads) {
      netlist::Case alone;
      alone.name = "only " + load.id;
      alone.on = {load.id};
      system_.cases.push_back(alone);
    }
    return system_;
  }

 private:
  std::mt19937 engine_;
  netlist::System system_;
};

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

TEST(SizeExactness, FusesThatTheCableDecides) {
  expect_cheapest_of_many(25, [](unsigned seed) {
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
  });
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
