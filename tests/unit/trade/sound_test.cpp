#include "ohmtrail/trade/sound.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "ohmtrail/trade/gauge.hpp"

namespace ohmtrail::trade {
namespace {

using ::testing::HasSubstr;
using units::Current;

const TerminationKind terminations[] = {TerminationKind::crimped, TerminationKind::soldered,
                                        TerminationKind::bolted_bare, TerminationKind::ferrule};

TEST(SoundTermination, is_crimp_and_contact_together) {
  for (const auto kind : terminations)
    for (const Gauge& gauge : known_gauges(GaugeSystem::awg)) {
      const auto whole = sound_termination(kind, gauge).value;
      EXPECT_DOUBLE_EQ(whole.si(), (sound_contact(kind, gauge).value + sound_crimp(kind, gauge).value).si());
      EXPECT_GT(whole.si(), 10e-6) << print(gauge);
      EXPECT_LT(whole.si(), 0.6e-3) << print(gauge);
    }
}

// 4/0: half of 5 mV at 380 A, and 15 µΩ on M8.
TEST(SoundTermination, of_4_0) {
  const Sound sound = sound_termination(TerminationKind::crimped, awg(-3));
  EXPECT_NEAR(sound.value.si(), 5e-3 / 380 / 2 + 15e-6, 1e-12);
  EXPECT_THAT(sound.basis, HasSubstr("from memory"));
  EXPECT_THAT(sound.basis, HasSubstr("common practice"));
}

TEST(SoundTermination, falls_as_the_wire_grows) {
  for (const auto system : {GaugeSystem::sae, GaugeSystem::metric}) {
    const auto& all = known_gauges(system);
    for (std::size_t i = 1; i < all.size(); ++i)
      EXPECT_LE(sound_termination(TerminationKind::crimped, all[i]).value.si(),
                1.05 * sound_termination(TerminationKind::crimped, all[i - 1]).value.si())
          << print(all[i]);
  }
}

TEST(SoundTermination, bare_ends_have_no_crimp) {
  EXPECT_EQ(sound_crimp(TerminationKind::bolted_bare, awg(8)).value.si(), 0);
  EXPECT_EQ(sound_contact(TerminationKind::bolted_bare, awg(8)).value.si(),
            2 * sound_contact(TerminationKind::crimped, awg(8)).value.si());
}

TEST(UsualStud, follows_the_gauge) {
  EXPECT_EQ(usual_stud(awg(-1)), 8);
  EXPECT_EQ(usual_stud(awg(4)), 8);
  EXPECT_EQ(usual_stud(awg(8)), 6);
  EXPECT_EQ(usual_stud(awg(12)), 5);
  EXPECT_EQ(usual_stud(awg(16)), 4);
  EXPECT_EQ(usual_stud(metric(35)), 8);
}

TEST(SoundJoint, each_kind_has_a_value_and_a_basis) {
  for (const auto kind :
       {JointKind::post_clamp, JointKind::stud, JointKind::splice, JointKind::plug, JointKind::terminal_strip,
        JointKind::fuse_clip, JointKind::bus_bar, JointKind::chassis})
    for (const auto rating :
         {std::optional<Current>{}, std::optional(Current{30}), std::optional(Current{300})}) {
      const Sound sound = sound_joint(kind, rating);
      EXPECT_GE(sound.value.si(), 10e-6);
      EXPECT_LE(sound.value.si(), 1.01e-3);
      EXPECT_GT(sound.basis.size(), 10u);
    }
}

TEST(SoundJoint, words_meet_their_rows) {
  EXPECT_THAT(sound_joint(JointKind::post_clamp, {}).basis, HasSubstr("clamp"));
  EXPECT_THAT(sound_joint(JointKind::splice, {}).basis, HasSubstr("two crimps"));
  EXPECT_THAT(sound_joint(JointKind::fuse_clip, {}).basis, HasSubstr("clips"));
  EXPECT_THAT(sound_joint(JointKind::chassis, {}).basis, HasSubstr("bonding"));
  EXPECT_EQ(sound_joint(JointKind::bus_bar, {}).value.si(), 15e-6);
}

TEST(SoundJoint, a_heavy_stud_is_never_below_a_bolted_contact) {
  EXPECT_EQ(sound_joint(JointKind::stud, Current{1000}).value.si(), 15e-6);
  EXPECT_EQ(sound_joint(JointKind::stud, {}).value.si(), 15e-6);
}

TEST(SoundSwitch, rows) {
  EXPECT_EQ(sound_switch(SwitchKind::battery_switch, Current{300}).value.si(), 0.12e-3);
  EXPECT_EQ(sound_switch(SwitchKind::contactor, {}).value.si(), 0.3e-3);
  EXPECT_NEAR(sound_switch(SwitchKind::breaker, Current{10}).value.si(), 10e-3, 1e-12);
  EXPECT_NEAR(sound_switch(SwitchKind::breaker, Current{100}).value.si(), 1e-3, 1e-12);
  EXPECT_NEAR(sound_switch(SwitchKind::toggle, Current{20}).value.si(), 2.5e-3, 1e-12);
  EXPECT_EQ(sound_switch(SwitchKind::toggle, {}).value.si(), 3e-3);
}

TEST(SoundFuse, blades_by_their_table_and_others_by_60_mV) {
  EXPECT_NEAR(sound_fuse(FuseForm::blade, Current{10}).value.si(), 7.7e-3, 1e-12);
  EXPECT_NEAR(sound_fuse({}, Current{10}).value.si(), 7.7e-3, 1e-12);
  EXPECT_NEAR(sound_fuse({}, Current{100}).value.si(), 0.6e-3, 1e-12);
  EXPECT_NEAR(sound_fuse(FuseForm::bolt_down, Current{300}).value.si(), 0.2e-3, 1e-12);
  EXPECT_NEAR(sound_fuse(FuseForm::blade, Current{60}).value.si(), 1e-3, 1e-12);
  EXPECT_THAT(sound_fuse({}, Current{100}).basis, HasSubstr("estimate"));
}

TEST(SoundFuse, falls_as_the_rating_grows) {
  double last = 1;
  for (const double rating : {0.5, 1.0, 2.0, 3.0, 6.0, 7.5, 12.0, 30.0, 37.0, 40.0}) {
    const double ohm = sound_fuse(FuseForm::blade, Current{rating}).value.si();
    EXPECT_LT(ohm, last) << rating;
    last = ohm;
  }
}

}  // namespace
}  // namespace ohmtrail::trade
