// SAE J378/J1127/J1128: least conductor areas in circular mils as reprinted in small-craft conductor tables;
// 22 and 20 are from memory and not checked. ASTM B33-04 Table 2: greatest resistivity of tinned wire by
// diameter. MIL-T-7928E crimp limits as reproduced in aircraft-wiring training texts. MIL-DTL-83454A Table
// VIII.
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "ohmtrail/trade/sound.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace ohmtrail::trade {
namespace {

struct SaeRow {
  int number;
  double circular_mils;
};

const SaeRow sae_areas[] = {
    {18, 1537}, {16, 2336}, {14, 3702}, {12, 5833}, {10, 9343},   {8, 14810},   {6, 24538},
    {4, 37360}, {2, 62450}, {1, 77790}, {0, 98980}, {-1, 125100}, {-2, 158600}, {-3, 205500},
};

TEST(SaeJ1127, least_areas) {
  for (const auto& row : sae_areas) EXPECT_NEAR(circular_mils(sae(row.number).area), row.circular_mils, 1e-6);
}

// Small-craft tables: SAE sizes hold 3 to 11 % less copper than the same AWG.
TEST(SaeJ1127, holds_less_copper_than_the_same_awg) {
  for (const auto& row : sae_areas) {
    const double share = ratio(sae(row.number).area, awg(row.number).area);
    EXPECT_GT(share, 0.89) << row.number;
    EXPECT_LT(share, 0.975) << row.number;
  }
}

// ASTM B33-04 Table 2 in per cent of IACS: 97.66 above 7.4 mm, 97.16 to 2.6, 96.16 to 0.51, 94.15 to 0.28 mm.
TEST(AstmB33, tinned_solid_wire) {
  const struct {
    int awg;
    double percent_iacs;
  } wires[] = {{1, 97.16}, {0, 97.66}, {10, 96.16}, {8, 97.16}, {22, 96.16}};
  for (const auto& wire : wires)
    EXPECT_NEAR(100 / tin_factor(awg(wire.awg), ConductorKind::tinned_copper, Stranding::solid),
                wire.percent_iacs, 0.006)
        << wire.awg;
}

// A sound crimp is taken as half of what MIL-T-7928E still passes: millivolts over test current.
TEST(MilT7928, sound_crimps_are_half_the_limit) {
  const struct {
    int awg;
    double millivolts, amps;
  } limits[] = {{22, 7, 9},  {20, 6, 11}, {18, 5, 16}, {16, 7, 22}, {14, 6, 32},
                {12, 5, 41}, {10, 5, 55}, {8, 5, 73},  {6, 5, 101}, {4, 5, 135}};
  for (const auto& row : limits)
    EXPECT_NEAR(sound_crimp(TerminationKind::crimped, awg(row.awg)).value.si(),
                row.millivolts * 1e-3 / row.amps / 2, 1e-12)
        << row.awg;
}

// MIL-DTL-83454A Table VIII: 7.5 mV at 25, 30, 35 and 43 A over a stud terminal.
TEST(MilDtl83454, sound_studs_and_strips_are_half_the_limit) {
  for (const double amps : {25.0, 30.0, 35.0, 43.0})
    for (const JointKind kind : {JointKind::stud, JointKind::terminal_strip})
      EXPECT_NEAR(sound_joint(kind, units::Current{amps}).value.si(), 7.5e-3 / amps / 2, 1e-12);
}

// Common practice: a good heavy lug, crimp and stud, is 10 to 50 µΩ.
TEST(CommonPractice, heavy_lugs) {
  for (const int number : {2, 1, 0, -1, -2, -3}) {
    const double ohm = sound_termination(TerminationKind::crimped, awg(number)).value.si();
    EXPECT_GT(ohm, 10e-6) << number;
    EXPECT_LT(ohm, 50e-6) << number;
  }
}

// A vehicle-technology training page: 1 mV over a 10 A blade fuse means 130 mA. A trade magazine: 1.0 mV over
// a 15 A miniature blade means 218 mA.
TEST(FuseCharts, cold_blade_fuses) {
  EXPECT_NEAR(sound_fuse(FuseForm::blade, units::Current{10}).value.si(), 1e-3 / 0.130, 0.01e-3);
  EXPECT_NEAR(sound_fuse(FuseForm::blade, units::Current{15}).value.si() / (1e-3 / 0.218), 1, 0.05);
}

}  // namespace
}  // namespace ohmtrail::trade
