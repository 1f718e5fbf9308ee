// Wire sizes of published tables as `size` chooses them on systems of one run: 46 CFR 183.340(p) (all 55
// cells, its breaker rule included), FAA AC 43.13-1B Change 1 Tables 11-7 and 11-8 and the example of
// paragraph 11-67, 33 CFR 183.455(c) and 183.425 Table 5.
#include <gtest/gtest.h>

#include "ohmtrail/plan/size.hpp"
#include "ohmtrail/trade/ampacity.hpp"
#include "ohmtrail/trade/fuse_ladder.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "ohmtrail/trade/sound.hpp"
#include "published/cells_46cfr183.hpp"

namespace ohmtrail {
namespace {

constexpr double foot = 0.3048;

struct OneRun {
  netlist::System system;

  /// A stiff source, a run out and back, a critical load; `volts` may be lost in the conductor.
  OneRun(double nominal, double amperes, double one_way_feet, double insulation) {
    system.info.name = "one run";
    system.info.nominal = units::Voltage{nominal};
    netlist::Battery battery;
    battery.id = "source", battery.plus = "+", battery.minus = "-";
    battery.nominal = battery.emf.emplace(units::Voltage{nominal});
    battery.resistance = units::Resistance{0};
    system.batteries.push_back(battery);
    netlist::Run run;
    run.id = "run", run.from = "+", run.to = "load +";
    run.gauge = trade::awg(10);
    run.length = units::Length{one_way_feet * foot};
    run.insulation = units::Temperature{insulation};
    netlist::ReturnConductor back;
    back.from = "load -", back.to = "-";
    run.return_conductor = back;
    system.runs.push_back(run);
    netlist::Load load;
    load.id = "load", load.plus = "load +", load.minus = "load -";
    load.takes = units::Current{amperes};
    system.loads.push_back(load);
    netlist::Case all;
    all.name = "all", all.all_on = true;
    system.cases.push_back(all);
  }

  void offer(std::initializer_list<int> gauges) {
    for (const int number : gauges) {
      netlist::CableOffer one;
      one.gauge = trade::awg(number);
      one.gauge_as_written = trade::print(one.gauge);
      system.cable_list.push_back(one);
    }
  }

  void put_a_fuse_at_the_source(double rating) {
    netlist::Fuse fuse;
    fuse.id = "fuse", fuse.from = "+", fuse.to = "fused +";
    fuse.rating = units::Current{rating};
    fuse.resistances.sound = units::Resistance{0};
    system.fuses.push_back(fuse);
    system.runs[0].from = "fused +";
  }

  /// The published rules speak of the conductor alone: what its four ends lose in this size comes on top.
  void allow(double volts, int awg) {
    const auto& load = system.loads[0];
    const double ends =
        4 * trade::sound_termination(trade::TerminationKind::crimped, trade::awg(awg)).value.si() *
        std::get<units::Current>(load.takes).si();
    system.info.limits.other_drop = units::Fraction{(volts + ends) / system.info.nominal.si()};
  }

  [[nodiscard]] std::string chosen() const {
    const auto sized = plan::size(system);
    EXPECT_TRUE(sized && sized->found && sized->proved);
    return sized && sized->found ? sized->runs[0].gauge : "";
  }
};

/// The table's constant, 10.75 ohm circular mil per foot, is our stranded copper at 24 °C, warmth of the
/// current included. Ours warm themselves, so the air is as much cooler as the wire of the table's size is
/// warmer.
units::Temperature air_for(const test::SizeCell& cell, double insulation) {
  const auto rating = trade::ampacity({trade::awg(cell.awg), units::Temperature{insulation}});
  const double load = cell.amperes / rating.amps.si();
  return units::Temperature{24.0 - rating.rise_at_rated.si() * load * load};
}

/// 60 °C insulation may carry 20, 25 and 40 A in 14, 12 and 10 AWG (33 CFR 183.425 Table 5), and a fuse
/// of 1.25 times the load must fit under that: the same two cells as the regulation's breakers of 15, 20 and
/// 30 A govern.
OneRun run_of(const test::SizeCell& cell, bool fused) {
  OneRun one(12, cell.amperes, cell.feet, 60);
  one.offer({14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3});
  one.system.runs[0].conductor = trade::ConductorKind::bare_copper;
  one.system.info.ambient = air_for(cell, 60);
  one.allow(0.10 * 12, cell.awg);
  // Without resistance, and of the rating that it keeps: another one would have the table's resistance.
  if (fused)
    one.put_a_fuse_at_the_source(
        trade::rating_at_least(trade::all_fuse_ratings(), units::Current{1.25 * cell.amperes})->si());
  return one;
}

TEST(SizeByTables, all_55_cells_of_46_CFR_183_340) {
  ASSERT_EQ(std::size(test::cells_46cfr183), 55U);
  for (const auto& cell : test::cells_46cfr183)
    EXPECT_EQ(run_of(cell, true).chosen(), trade::print(trade::awg(cell.awg)))
        << cell.amperes << " A over " << cell.feet << " ft";
}

TEST(SizeByTables, without_the_fuse_the_two_short_cells_come_out_thinner) {
  int thinner = 0;
  for (const auto& cell : test::cells_46cfr183)
    thinner += run_of(cell, false).chosen() != trade::print(trade::awg(cell.awg)) ? 1 : 0;
  EXPECT_GE(thinner, 1);
  EXPECT_LE(thinner, 2);
}

// FAA AC 43.13-1B Change 1, Table 11-7 rows 1 to 4 and paragraph 11-67 example 1: lengths are of the whole
// conductor, out and back; the answers are readings of a chart, the next larger even size.
const struct FaaExample {
  double system, limit_volts, feet, amperes;
  int awg;
} faa_sizes[] = {{28, 1, 107, 20, 6},
                 {14, 0.5, 90, 20, 4},
                 {115, 4, 88, 20, 12},
                 {200, 7, 100, 20, 14},
                 {28, 1, 50, 20, 8}};

OneRun faa_run(const FaaExample& example) {
  OneRun one(example.system, example.amperes, example.feet / 2, 105);
  one.offer({22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2});
  one.system.info.ambient = units::Temperature{20};
  one.allow(example.limit_volts, example.awg);
  return one;
}

TEST(SizeByTables, FAA_AC_43_13_1B_table_11_7) {
  for (const auto& example : faa_sizes)
    EXPECT_EQ(faa_run(example).chosen(), trade::print(trade::awg(example.awg))) << example.feet << " ft";
}

// Table 11-8: the longest runs of 10 AWG at 20 A. Its wire may resist 19 % more than ours (Table 11-9 is a
// limit), so 10 AWG or thinner must do at the printed length, and a length a quarter longer wants more than
// 10 AWG.
TEST(SizeByTables, FAA_AC_43_13_1B_table_11_8) {
  const struct {
    double system, limit_volts, feet;
  } rows[] = {{28, 1, 39}, {14, 0.5, 19.5}, {115, 4, 156}, {200, 7, 273}};
  for (const auto& row : rows) {
    EXPECT_EQ(faa_run({row.system, row.limit_volts, row.feet, 20, 10}).chosen(), "10 AWG") << row.feet;
    EXPECT_EQ(faa_run({row.system, row.limit_volts, row.feet * 1.25, 20, 10}).chosen(), "8 AWG") << row.feet;
  }
}

// 33 CFR 183.425 Table 5, 105 °C: 10 AWG 60 A, 8 AWG 80 A. The ceiling of 150 % (183.455(c)(1)) is never the
// choice.
TEST(SizeByTables, allowable_current_and_fuse_of_33_CFR_183) {
  for (const auto& [amperes, gauge] :
       {std::pair{60.0, "10 AWG"}, std::pair{60.5, "8 AWG"}, std::pair{80.0, "8 AWG"}}) {
    OneRun bare(12, amperes, 0.5, 105);
    bare.offer({10, 8, 6});
    bare.system.info.limits.other_drop = units::Fraction{0.5};
    EXPECT_EQ(bare.chosen(), gauge) << amperes;
  }
  OneRun fused(12, 60, 0.5, 105);  // 75 A at least: 80 A, which wants 8 AWG
  fused.offer({10, 8, 6});
  fused.system.info.limits.other_drop = units::Fraction{0.5};
  fused.put_a_fuse_at_the_source(100);
  const auto sized = plan::size(fused.system);
  ASSERT_TRUE(sized && sized->found);
  EXPECT_EQ(sized->runs[0].gauge, "8 AWG");
  EXPECT_EQ(sized->runs[0].fuse, 80);
  EXPECT_LE(*sized->runs[0].fuse, sized->runs[0].ampacity);
}

}  // namespace
}  // namespace ohmtrail
