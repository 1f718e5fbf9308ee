#include <fmt/core.h>
#include <gtest/gtest.h>

#include <cstdio>

#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/diagnose/load_losses.hpp"
#include "render/report.hpp"
#include "render/text.hpp"
#include "support/random_cases.hpp"
#include "support/simulated_survey.hpp"

/// Against simulated truth: of the intervals of lost volts that are said to hold with 90 %, about 90 % do,
/// and what is called met or broken mostly is.
namespace ohmtrail::test {
namespace {

constexpr int systems = 200;

SimulatedSurvey survey(int k, Readings readings) {
  SurveyOptions options = varied_options(k);
  options.readings = readings;
  return simulate(20000 + static_cast<std::uint64_t>(k), options);
}

struct Count {
  long intervals = 0, holding = 0, below = 0;
  long verdicts = 0, undecided = 0, wrong = 0;

  void add(const diagnose::LossInterval& interval, double truth) {
    ++intervals;
    holding += truth >= interval.low && truth <= interval.high ? 1 : 0;
    below += truth < interval.low ? 1 : 0;
    // Limits inside the interval, just outside it and clear of it; one it never sees is no test of it.
    for (const double widths : {-0.8, -0.55, -0.3, 0.3, 0.55, 0.8})
      judge(interval, truth, interval.median + widths * (interval.high - interval.low));
  }

  void judge(const diagnose::LossInterval& interval, double truth, double limit) {
    solve::LoadResult load;
    load.running = true;
    load.limit_fraction = limit;
    const auto verdict = render::limit_verdict(load, &interval);
    ++verdicts;
    if (verdict == render::text::limit_undecided)
      ++undecided;
    else
      wrong += (verdict == render::text::limit_met) == (truth > limit) ? 1 : 0;
  }

  [[nodiscard]] double share_holding() const { return of(holding, intervals); }
  [[nodiscard]] double share_wrong() const { return of(wrong, verdicts - undecided); }
  [[nodiscard]] double share_undecided() const { return of(undecided, verdicts); }
  static double of(long part, long whole) {
    return whole > 0 ? static_cast<double>(part) / static_cast<double>(whole) : 0;
  }

  [[nodiscard]] std::string summary() const {
    return fmt::format(
        "{} intervals of lost volts: {:.3f} hold, {:.3f} lie too high; {} verdicts: {:.3f} not "
        "decidable, of the others {:.4f} wrong\n",
        intervals, share_holding(), of(below, intervals), verdicts, share_undecided(), share_wrong());
  }
};

Count count_of(Readings readings) {
  Count count;
  for (int k = 0; k < random_cases(systems); ++k) {
    const SimulatedSurvey one = survey(k, readings);
    const auto result = diagnose::infer(one.system);
    EXPECT_TRUE(result) << k;
    if (!result) continue;
    for (const diagnose::LossInterval& interval : diagnose::loss_intervals(one.system, *result))
      if (interval.in_case == "under load") count.add(interval, one.truth.loss.at(interval.load));
  }
  std::fputs(count.summary().c_str(), stdout);
  return count;
}

// The bounds are for the full count; a twentieth of the systems cannot prove a percent.
void expect_calibrated(const Count& count) {
  const bool full = random_cases(systems) >= systems;
  EXPECT_GE(count.share_holding(), full ? 0.86 : 0.7);
  EXPECT_LE(count.share_holding(), full ? 0.96 : 1.0);
  EXPECT_LE(count.share_wrong(), full ? 0.05 : 0.15);
  EXPECT_GT(count.verdicts, count.undecided) << "something can be decided";
  EXPECT_GT(count.undecided, 0) << "not everything can";
}

TEST(LossIntervals, HoldAsOftenAsTheySayWhereEveryElementWasRead) {
  expect_calibrated(count_of(Readings::every_element));
}

TEST(LossIntervals, HoldAsOftenAsTheySayWhereEveryThirdPointWasRead) {
  expect_calibrated(count_of(Readings::every_third_point));
}

}  // namespace
}  // namespace ohmtrail::test
