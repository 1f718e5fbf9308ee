#include "diagnose/infer/set_splits.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace ohmtrail::diagnose::inference {
namespace {

Parameter resistance(double centre, double sd, Normal fault, double log_odds) {
  Parameter out;
  out.centre = centre;
  out.sound = {0, sd};
  out.fault = Fault{fault, log_odds};
  return out;
}

// Two lugs and their wire, in milliohms.
Model run() {
  Model out;
  out.parameters = {resistance(0.06, 0.35, {std::log(12.0), 1.2}, -3.5),
                    resistance(2.0, 0.08, {std::log(2.0), 0.6}, -4.6),
                    resistance(0.09, 0.35, {std::log(12.0), 1.2}, -3.2)};
  return out;
}

ParallelSet whole() {
  return {{0, 1, 2}, {1, 1, 1}};
}

struct Grid {
  std::vector<double> value, weight;
};

// A faulty member may be many deviations of the sum from the next node, unless the nodes lie close.
Grid grid_of(const Parameter& p, bool faulty) {
  const int nodes = faulty ? 601 : 41;
  const double reach = faulty ? 6 : 5, step = 2 * reach / (nodes - 1);
  const Normal& prior = faulty ? p.fault->prior : p.sound;
  Grid out;
  for (int n = 0; n < nodes; ++n) {
    const double z = -reach + step * n;
    out.value.push_back(p.value(prior.mean + prior.sd * z));
    out.weight.push_back(step / std::sqrt(2 * 3.14159265358979) * std::exp(-0.5 * z * z));
  }
  return out;
}

// ln of prior odds × ∫ Π priors × cavity, over a grid of each member's x.
double by_grid(const Model& model, const Cavity& sum, const std::vector<int>& faulty) {
  std::vector<Grid> grid;
  double odds = 0, total = 0;
  for (int k = 0; k < 3; ++k) {
    const Parameter& p = model.parameters[static_cast<std::size_t>(k)];
    const bool bad = std::count(faulty.begin(), faulty.end(), k) > 0;
    odds += bad ? p.fault->log_odds : 0;
    grid.push_back(grid_of(p, bad));
  }
  for (std::size_t i = 0; i < grid[0].value.size(); ++i)
    for (std::size_t j = 0; j < grid[1].value.size(); ++j)
      for (std::size_t k = 0; k < grid[2].value.size(); ++k) {
        const double off = grid[0].value[i] + grid[1].value[j] + grid[2].value[k] - sum.at;
        const double bent = 0.5 * sum.precision * off * off;
        if (bent < 40) total += grid[0].weight[i] * grid[1].weight[j] * grid[2].weight[k] * std::exp(-bent);
      }
  return odds + std::log(total);
}

class SplitAt : public testing::TestWithParam<std::pair<double, double>> {};  // sum and its deviation, mΩ

TEST_P(SplitAt, EveryStateWeighsWhatTheGridSays) {
  const Model model = run();
  const ParallelSet set = whole();
  const auto [at, sd] = GetParam();
  const Cavity sum{at, 1 / (sd * sd)};
  const SetSplit split = SetPrior(model, set).split(sum);
  ASSERT_EQ(split.states.size(), 7U);
  double heaviest = split.states.front().log_weight;
  for (const SetState& state : split.states) heaviest = std::max(heaviest, state.log_weight);
  for (const SetState& state : split.states) {
    if (state.log_weight < heaviest - 12) continue;  // too light to matter
    // Two faults at once are integrated over a coarse grid: a tenth of what is little anyway.
    EXPECT_NEAR(state.log_weight, by_grid(model, sum, state.faulty), state.faulty.size() > 1 ? 0.15 : 0.06)
        << testing::PrintToString(state.faulty);
  }
}

INSTANTIATE_TEST_SUITE_P(Sums, SplitAt,
                         testing::Values(std::pair{2.15, 0.05}, std::pair{2.6, 0.05}, std::pair{3.2, 0.1},
                                         std::pair{4.5, 0.3}, std::pair{9.0, 0.1}, std::pair{2.5, 5.0}));

TEST(SetSplit, LikeMembersShareAlikeAndTheirOddsDecide) {
  Model model = run();
  model.parameters[2] = model.parameters[0];
  model.parameters[2].fault->log_odds += std::log(4.0);
  const ParallelSet set = whole();
  const SetSplit split = SetPrior(model, set).split({3.0, 400});
  EXPECT_NEAR(split.states[3].log_weight - split.states[1].log_weight, std::log(4.0), 1e-9);
  double shares = 0;
  for (std::size_t k = 1; k < split.states.size(); ++k) shares += split.share(k);
  EXPECT_NEAR(shares, 1, 1e-12);
}

TEST(SetSplit, TwinsAreWeighedAlikeHoweverManyThereAre) {
  constexpr int lugs = 13;
  Model model;
  ParallelSet set;
  for (int k = 0; k <= lugs; ++k) {
    model.parameters.push_back(k == 0 ? run().parameters[1] : run().parameters[0]);
    set.member.push_back(k);
    set.length.push_back(k % 2 == 0 ? 1 : 1 + 1e-9);
  }
  const SetSplit split = SetPrior(model, set).split({2.78 + 0.7, 400});
  std::vector<double> chance(set.member.size(), 0);
  std::size_t pairs = 0;
  for (std::size_t k = 1; k < split.states.size(); ++k) {
    pairs += split.states[k].faulty.size() == 2 && split.states[k].faulty.front() > 0 ? 1 : 0;
    for (const int p : split.states[k].faulty) chance[static_cast<std::size_t>(p)] += split.share(k);
  }
  EXPECT_EQ(pairs, lugs * (lugs - 1) / 2);
  for (int k = 2; k <= lugs; ++k) EXPECT_NEAR(chance[static_cast<std::size_t>(k)], chance[1], 1e-6) << k;
}

TEST(SetSplit, NothingReadLeavesThePriorOdds) {
  const Model model = run();
  const ParallelSet set = whole();
  const SetSplit split = SetPrior(model, set).split({});
  EXPECT_NEAR(split.states[0].log_weight, 0, 0.01);
  EXPECT_NEAR(split.states[1].log_weight, -3.5, 0.01);
  const auto pair = std::find_if(split.states.begin(), split.states.end(), [](const SetState& state) {
    return state.faulty == std::vector<int>{0, 1};
  });
  ASSERT_NE(pair, split.states.end());
  EXPECT_NEAR(pair->log_weight, -3.5 - 4.6, 0.02) << "a pair's odds multiply";
}

// The sum is 1 mΩ over what is sound: the culprit has it, the others are as they were.
TEST(SetSplit, TheFaultyMemberHasWhatTheOthersLeave) {
  const Model model = run();
  const ParallelSet set = whole();
  const SetPrior prior(model, set);
  const Cavity sum{3.15, 1e4};
  const auto views = prior.members(sum, {{0}, 0});
  const double wire = model.parameters[1].value(views[1].mean_x);
  EXPECT_NEAR(model.parameters[0].value(views[0].mean_x), 1.06, 0.08);
  EXPECT_NEAR(wire, 2.0, 0.05);
  const auto sound = prior.members({2.3, 1e4}, {{}, 0});  // all sound: the wire takes most of the rest
  EXPECT_GT(model.parameters[1].value(sound[1].mean_x), 2.05);
}

TEST(SetSplits, AreWorkedOutOnceForAlikeSums) {
  const Model model = run();
  ParallelSets sets{{whole()}, {0, 0, 0}};
  SetSplits splits(model, sets);
  const SetSplit& one = splits.of(0, {3.0, 100});
  EXPECT_EQ(&one, &splits.of(0, {3.0001, 100.1}));
  EXPECT_NE(&one, &splits.of(0, {3.5, 100}));
  EXPECT_NEAR(splits.log_divided(0, {3.0, 100}, {0}), one.log_any - one.states[1].log_weight, 1e-12);
  EXPECT_GE(splits.log_divided(0, {3.0, 100}, {0, 1, 2}), 0) << "three at once are no state of the split";
}

TEST(ParallelSetsKey, StandsForWhicheverMemberIsFaulty) {
  const ParallelSets sets{{{{1, 3, 4}, {1, 1, 1}}}, {-1, 0, -1, 0, 0}};
  const Hypothesis one{{0, 3}, {2}}, two{{0, 1, 4}, {2}}, other{{0}, {2}};
  EXPECT_EQ(sets.key(one), (Hypothesis{{0, 1}, {2}}));
  EXPECT_EQ(sets.key(one), sets.key(two));
  EXPECT_EQ(sets.key(other), other);
  EXPECT_EQ(sets.faulty_in(0, two), (std::vector<int>{1, 4}));
  EXPECT_EQ(sets.touched(two), std::vector<int>{0});
  EXPECT_TRUE(sets.touched(other).empty());
  EXPECT_EQ(ParallelSets{}.key(two), two) << "without sets every hypothesis is its own key";
}

}  // namespace
}  // namespace ohmtrail::diagnose::inference
