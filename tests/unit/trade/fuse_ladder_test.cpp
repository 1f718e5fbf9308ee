#include "ohmtrail/trade/fuse_ladder.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace ohmtrail::trade {
namespace {

using units::Current;

const FuseForm forms[] = {FuseForm::blade, FuseForm::bolt_down, FuseForm::cartridge, FuseForm::in_line};

TEST(FuseRatings, rise) {
  for (const FuseForm form : forms) {
    const auto& ladder = fuse_ratings(form);
    EXPECT_TRUE(std::is_sorted(ladder.begin(), ladder.end()));
    EXPECT_EQ(std::adjacent_find(ladder.begin(), ladder.end()), ladder.end());
  }
}

TEST(FuseRatings, all_together_hold_each_once) {
  const auto& all = all_fuse_ratings();
  EXPECT_TRUE(std::is_sorted(all.begin(), all.end()));
  EXPECT_EQ(std::adjacent_find(all.begin(), all.end()), all.end());
  for (const FuseForm form : forms)
    for (const Current rating : fuse_ratings(form))
      EXPECT_TRUE(std::binary_search(all.begin(), all.end(), rating));
}

TEST(FuseRatings, neighbours) {
  const auto& blade = fuse_ratings(FuseForm::blade);
  EXPECT_EQ(rating_at_least(blade, Current{7.5})->si(), 7.5);
  EXPECT_EQ(rating_at_least(blade, Current{7.6})->si(), 10);
  EXPECT_EQ(rating_at_most(blade, Current{9.9})->si(), 7.5);
  EXPECT_EQ(rating_at_most(blade, Current{10})->si(), 10);
  EXPECT_FALSE(rating_at_least(blade, Current{101}));
  EXPECT_FALSE(rating_at_most(blade, Current{0.5}));
}

TEST(FuseForms, usual_by_rating) {
  EXPECT_EQ(usual_fuse_form(Current{40}), FuseForm::blade);
  EXPECT_EQ(usual_fuse_form(Current{50}), FuseForm::bolt_down);
  EXPECT_EQ(usual_fuse_form(Current{600}), FuseForm::cartridge);
}

TEST(FuseForms, limits_are_in_their_order) {
  EXPECT_GT(usual_fuse_limits(FuseForm::cartridge).breaks, usual_fuse_limits(FuseForm::bolt_down).breaks);
  EXPECT_GT(usual_fuse_limits(FuseForm::bolt_down).breaks, usual_fuse_limits(FuseForm::blade).breaks);
  EXPECT_LT(usual_fuse_limits(FuseForm::in_line).breaks, usual_fuse_limits(FuseForm::blade).breaks);
  for (const FuseForm form : forms) EXPECT_FALSE(usual_fuse_limits(form).source.empty());
}

TEST(OpeningTime, need_not_open_at_its_rating) {
  EXPECT_FALSE(blade_opening_time(Current{10}, Current{10}));
  EXPECT_FALSE(blade_opening_time(Current{10}, Current{10.99}));
}

TEST(OpeningTime, at_110_percent_holds_100_hours_and_need_never_open) {
  const auto gate = blade_opening_time(Current{10}, Current{11});
  ASSERT_TRUE(gate);
  EXPECT_EQ(gate->no_sooner.si(), 360000);
  EXPECT_FALSE(gate->no_later);
}

TEST(OpeningTime, falls_as_the_current_grows) {
  double sooner = 1e9, later = 1e9;
  for (double amps = 13.5; amps < 80; amps *= 1.03) {
    const auto gate = blade_opening_time(Current{10}, Current{amps});
    ASSERT_TRUE(gate && gate->no_later) << amps;
    EXPECT_LE(gate->no_sooner.si(), sooner) << amps;
    EXPECT_LE(gate->no_later->si(), later) << amps;
    EXPECT_LE(gate->no_sooner, *gate->no_later);
    sooner = gate->no_sooner.si();
    later = gate->no_later->si();
  }
}

TEST(OpeningTime, beyond_the_table_is_sure_only_to_be_faster) {
  const auto gate = blade_opening_time(Current{10}, Current{500});
  ASSERT_TRUE(gate && gate->no_later);
  EXPECT_EQ(gate->no_sooner.si(), 0);
  EXPECT_EQ(gate->no_later->si(), 0.5);
}

}  // namespace
}  // namespace ohmtrail::trade
