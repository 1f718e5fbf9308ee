#include "cli/nearest.hpp"

#include <gtest/gtest.h>

namespace {

using ohmtrail::cli::nearest;

TEST(Nearest, FindsOneSlipOfEveryKind) {
  const std::vector<std::string> words{"solve", "rank", "tables"};
  EXPECT_EQ(nearest("solv", words), "solve");
  EXPECT_EQ(nearest("soolve", words), "solve");
  EXPECT_EQ(nearest("solvr", words), "solve");
  EXPECT_EQ(nearest("tabels", words), "tables");
  EXPECT_EQ(nearest("rnak", words), "rank");
}

TEST(Nearest, OffersNothingThatIsFarOff) {
  EXPECT_EQ(nearest("xyzzy", {"solve", "rank"}), "");
  EXPECT_EQ(nearest(std::string(10000, 'a'), {"solve"}), "");
  EXPECT_EQ(nearest("a", {}), "");
}

TEST(Nearest, TheFirstOfEqualsWins) {
  EXPECT_EQ(nearest("cat", {"car", "cap"}), "car");
}

}  // namespace
