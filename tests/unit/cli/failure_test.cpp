#include "cli/text/failure.hpp"

#include <gtest/gtest.h>

namespace {

using namespace ohmtrail;
using solve::Failure;

network::Network network() {
  network::Network network;
  network.case_name = "start";
  network.points = {"+", "-"};
  const network::Origin origin{network::Section::batteries, 0};
  for (const auto& [id, role] :
       {std::pair{"house", network::Role::battery}, std::pair{"main", network::Role::switchgear},
        std::pair{"link", network::Role::joint}, std::pair{"shore", network::Role::charger}}) {
    network::Element element{};
    element.id = id;
    element.role = role;
    element.from = 0;
    element.to = 1;
    element.origin = origin;
    network.elements.push_back(element);
  }
  return network;
}

TEST(FailureInWords, AShortNamesTheBatteryTheSwitchAndTheCurrent) {
  EXPECT_EQ(cli::in_words({Failure::Kind::shorted_source, {0, 1}, 2500}, network()),
            "case \"start\": \"house\" is short-circuited through \"main\" (0 Ω); its own resistance would "
            "let 2500 A "
            "through, expected a load or a resistance on that way");
}

TEST(FailureInWords, AShortThroughSeveralNamesThemAll) {
  EXPECT_EQ(cli::in_words({Failure::Kind::shorted_source, {0, 1, 2}, 100}, network()),
            "case \"start\": \"house\" is short-circuited through \"main\" and \"link\" (0 Ω); its own "
            "resistance would "
            "let 100 A through, expected a load or a resistance on that way");
}

TEST(FailureInWords, BothPostsOnOnePoint) {
  EXPECT_EQ(cli::in_words({Failure::Kind::shorted_source, {0}, 100}, network()),
            "case \"start\": \"house\" is short-circuited: both its posts are one point; its own resistance "
            "would let "
            "100 A through, expected two different points");
}

TEST(FailureInWords, OpposedSources) {
  EXPECT_EQ(cli::in_words({Failure::Kind::opposed_sources, {0, 3}, 0}, network()),
            "case \"start\": \"house\" and \"shore\" hold unlike voltages across the same two points with no "
            "resistance; "
            "give them one, or open a switch between them");
}

TEST(FailureInWords, AChargerThatCannotGiveEnough) {
  EXPECT_EQ(cli::in_words({Failure::Kind::overloaded, {3}, 0}, network()),
            "case \"start\": \"shore\" at its limit cannot give what the loads of constant current take; "
            "switch some off, or add a battery");
}

TEST(FailureInWords, AnUncertifiedResultIsNotShownAndSaysSo) {
  EXPECT_NE(cli::in_words({}, network()).find("did not pass its own check"), std::string::npos);
}

}  // namespace
