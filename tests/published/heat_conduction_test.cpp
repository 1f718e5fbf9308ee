// How a rod warms that loses heat at its surface and is heated at its end: θ(t) = θ∞ erf √(t/τ). From memory:
// Carslaw and Jaeger, Conduction of Heat in Solids, 1959. Held here against the equation itself, θt = θxx − θ
// in units of τ and of the fin's length, solved by finite differences; and erf against Abramowitz and Stegun,
// Handbook of Mathematical Functions, table 7.1.
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "ohmtrail/trade/fin_turns.hpp"

namespace ohmtrail::trade {
namespace {

using units::Time;

TEST(ErrorFunction, HandbookValues) {
  const struct {
    double x, erf;
  } rows[] = {{0.1, 0.1124629160},
              {0.5, 0.5204998778},
              {1.0, 0.8427007929},
              {1.5, 0.9661051465},
              {2.0, 0.9953222650}};
  for (const auto& row : rows)
    EXPECT_NEAR(fin_warming(Time{row.x * row.x}, Time{1}), row.erf, 5e-11) << row.x;
}

/// A rod from 0 to 8 fin lengths, heated at 0 so that its steady rise there is 1.
class Rod {
 public:
  void run(double time, bool heated) {
    for (int steps = static_cast<int>(std::lround(time / dt)); steps > 0; --steps) step(heated ? 1 : 0);
  }
  [[nodiscard]] double root() const { return rise_.front(); }

 private:
  static constexpr double dx = 0.04, dt = 0.4 * dx * dx;

  void step(double flux) {
    next_ = rise_;
    const std::size_t last = rise_.size() - 1;
    // Half a cell at the end: what comes in less what is passed on and lost.
    next_[0] += dt * (2 / dx * (flux - (rise_[0] - rise_[1]) / dx) - rise_[0]);
    for (std::size_t i = 1; i < last; ++i)
      next_[i] += dt * ((rise_[i - 1] - 2 * rise_[i] + rise_[i + 1]) / (dx * dx) - rise_[i]);
    rise_.swap(next_);
  }

  std::vector<double> rise_ = std::vector<double>(200), next_;
};

TEST(HeatedRod, WarmsAsTheEquationSays) {
  Rod rod;
  double time = 0;
  for (const double until : {0.1, 0.25, 0.5, 1.0, 2.0, 4.0}) {
    rod.run(until - time, true);
    time = until;
    EXPECT_NEAR(rod.root(), fin_warming(Time{time}, Time{1}), 2e-3) << time;
  }
}

TEST(HeatedRod, InTurnsAsTheEquationSays) {
  const struct { double on, rest; } turns[] = {{0.3, 0.7}, {0.1, 0.1}, {1, 2}, {0.05, 0.45}};
  for (const auto& turn : turns) {
    Rod rod;
    for (double time = 0; time < 10; time += turn.on + turn.rest) {
      rod.run(turn.on, true);
      rod.run(turn.rest, false);
    }
    rod.run(turn.on, true);
    EXPECT_NEAR(rod.root(), fin_turn_share(Time{turn.on}, Time{turn.rest}, Time{1}), 5e-3) << turn.on;
  }
}

}  // namespace
}  // namespace ohmtrail::trade
