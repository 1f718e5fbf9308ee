#include <gtest/gtest.h>

#include <cstdio>

#include "support/probing_game.hpp"
#include "support/random_cases.hpp"

namespace ohmtrail::test {
namespace {

TEST(NextGame, FindsTheRepairInFewReadings) {
  const int games = random_cases(200);
  int right = 0;
  double readings = 0, sure = 0, allowed = 0, slowest = 0;
  SeededRandom sizes(77);
  for (int g = 0; g < games; ++g) {
    LayoutOptions layout;
    layout.elements = sizes.integer(20, 60);
    const Played played = play(static_cast<std::uint64_t>(g) + 500, layout);
    right += played.right ? 1 : 0;
    readings += played.readings;
    sure += played.until_sure;
    allowed += std::log2(played.elements);
    slowest = std::max(slowest, played.slowest);
  }
  std::printf(
      "right %d of %d; readings %.2f (until sure %.2f), log2(elements) %.2f; slowest answer %.0f ms\n", right,
      games, readings / games, sure / games, allowed / games, slowest * 1000);
  EXPECT_GE(right, 0.93 * games);
  EXPECT_LE(sure / games, allowed / games + 0.2);
}

}  // namespace
}  // namespace ohmtrail::test
