#include "plan/guards.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "protection_rig.hpp"

namespace ohmtrail::plan {
namespace {

using test::Rig;

struct Guarded {
  netlist::System system;
  network::Network network;
  Guards guards;
  explicit Guarded(const Rig& rig)
      : system(rig.system),
        network(network::build(system, system.cases.front())),
        guards(find_guards(system, network)) {}

  [[nodiscard]] std::size_t at(const std::string& id) const {
    const auto element = network.element(id);
    EXPECT_TRUE(element) << id;
    return static_cast<std::size_t>(element.value_or(0));
  }
  /// Id of the device that guards an element; empty: none.
  [[nodiscard]] std::string guard(const std::string& id) const {
    const int device = guards.guard_of[at(id)];
    if (device < 0) return "";
    return network
        .elements[static_cast<std::size_t>(guards.devices[static_cast<std::size_t>(device)].element)]
        .id;
  }
  [[nodiscard]] bool unprotected(const std::string& id) const { return guards.unprotected[at(id)]; }
  [[nodiscard]] bool ungrounded(const std::string& id) const { return guards.ungrounded[at(id)]; }
  [[nodiscard]] bool link(const std::string& id) const { return guards.string_link[at(id)]; }
};

TEST(Guards, AFuseGuardsWhatLiesBeyondIt) {
  const Guarded rig(test::fused_at(0.1));
  EXPECT_EQ(rig.guard("branch"), "fuse");
  EXPECT_EQ(rig.guard("feed"), "fuse") << "from overload: it feeds that fuse alone";
  EXPECT_TRUE(rig.unprotected("feed")) << "not from a short circuit";
  EXPECT_FALSE(rig.unprotected("branch"));
}

TEST(Guards, TheWayBackIsGrounded) {
  const Guarded rig(test::fused_at(0.1));
  EXPECT_TRUE(rig.ungrounded("feed"));
  EXPECT_FALSE(rig.ungrounded("back"));
  EXPECT_EQ(rig.guard("back"), "");
}

TEST(Guards, TheNextDeviceTakesOver) {
  auto rig = test::fused_at(0.1);
  rig.system.fuses.front().form = trade::FuseForm::blade;
  rig.breaker("breaker", "g", "h", 10);
  rig.run("thin", "h", "m+", 16, 3);
  rig.load("radio", "m+", "l-", 2);
  const Guarded guarded(rig);
  EXPECT_EQ(guarded.guard("branch"), "fuse");
  EXPECT_EQ(guarded.guard("thin"), "breaker");
}

TEST(Guards, ABreakerWithoutRatingGuardsNothing) {
  auto rig = test::fused_at(0.1);
  rig.breaker("breaker", "g", "h", std::nullopt);
  rig.run("thin", "h", "m+", 16, 3);
  rig.load("radio", "m+", "l-", 2);
  EXPECT_EQ(Guarded(rig).guard("thin"), "fuse");
}

TEST(Guards, AnOpenSwitchMayBeClosedTomorrow) {
  auto rig = test::fused_at(0.1);
  netlist::Switch one;
  one.id = "aft", one.from = "g", one.to = "h", one.kind = trade::SwitchKind::toggle, one.closed = false;
  rig.system.switches.push_back(one);
  rig.run("thin", "h", "m+", 16, 3);
  rig.load("radio", "m+", "l-", 2);
  EXPECT_EQ(Guarded(rig).guard("thin"), "fuse");
}

TEST(Guards, ACableThatFeedsMoreThanOneFuseHasNoGuard) {
  auto rig = test::fused_at(0.1);
  rig.fuse("second", "f", "h", 10);
  rig.load("radio", "h", "l-", 2);
  EXPECT_EQ(Guarded(rig).guard("feed"), "");
}

/// Between two banks each side is fed by its own.
TEST(Guards, AFuseBetweenTwoBatteriesLeavesBothSidesUnprotected) {
  Rig rig;
  rig.battery("a", "a+", "b-");
  rig.battery("b", "b+", "b-");
  rig.run("link a", "a+", "f", 2, 2);
  rig.fuse("fuse", "f", "g", 150);
  rig.run("link b", "g", "b+", 2, 2);
  rig.load("lamp", "b+", "b-", 5);
  const Guarded guarded(rig);
  EXPECT_TRUE(guarded.unprotected("link a"));
  EXPECT_TRUE(guarded.unprotected("link b"));
  EXPECT_EQ(guarded.guard("link a"), "fuse");
}

TEST(Guards, FusesAtBothBatteriesGuardTheCableBetween) {
  Rig rig;
  rig.battery("a", "a+", "b-");
  rig.battery("b", "b+", "b-");
  rig.fuse("at a", "a+", "f", 150);
  rig.run("link", "f", "g", 2, 2);
  rig.fuse("at b", "g", "b+", 150);
  rig.load("lamp", "b+", "b-", 5);
  const Guarded guarded(rig);
  EXPECT_EQ(guarded.guard("link"), "at a");
  ASSERT_EQ(guarded.guards.devices.size(), 2U);
  for (const auto& device : guarded.guards.devices) {
    const auto wire = static_cast<int>(guarded.at("link"));
    EXPECT_NE(std::find(device.elements.begin(), device.elements.end(), wire), device.elements.end());
  }
}

Rig string_of_two() {
  Rig rig(24);
  rig.battery("low", "1+", "1-").nominal = units::Voltage{12};
  rig.battery("high", "2+", "2-").nominal = units::Voltage{12};
  rig.run("link", "1+", "2-", 2, 0.3);
  rig.fuse("main", "2+", "f", 100);
  rig.run("feed", "f", "l+", 4, 2);
  rig.load("motor", "l+", "l-", 50);
  rig.run("back", "l-", "1-", 4, 2);
  return rig;
}

TEST(Guards, TheLinkOfAStringIsOne) {
  const Guarded rig(string_of_two());
  EXPECT_TRUE(rig.link("link"));
  EXPECT_FALSE(rig.link("feed"));
  EXPECT_EQ(rig.guard("feed"), "main");
}

/// Twelve volts off the middle of a 24 V string: a conductor like any other, no link.
TEST(Guards, ATapOffTheMiddleOfAStringIsNoLink) {
  auto rig = string_of_two();
  rig.run("tap", "1+", "t+", 14, 3);
  rig.load("radio", "t+", "1-", 2);
  const Guarded guarded(rig);
  EXPECT_FALSE(guarded.link("tap"));
  EXPECT_TRUE(guarded.unprotected("tap"));
  EXPECT_TRUE(guarded.link("link"));
}

netlist::Converter converter_to_c(const std::string& id, const std::string& plus_in, double volts,
                                  double amperes) {
  netlist::Converter converter;
  converter.id = id, converter.plus_in = plus_in, converter.minus_in = "l-";
  converter.plus_out = "c+", converter.minus_out = "c-";
  converter.setpoint = units::Voltage{volts}, converter.limit = units::Current{amperes};
  return converter;
}

/// A converter's output has a ground of its own.
TEST(Guards, AnIsolatedOutputIsGroundedAtItsOwnMinus) {
  auto rig = test::fused_at(0.1);
  rig.system.converters.push_back(converter_to_c("converter", "g", 24, 5));
  rig.run("out", "c+", "m+", 16, 3);
  rig.run("out back", "m-", "c-", 16, 3);
  rig.load("radio", "m+", "m-", 2).nominal = units::Voltage{24};
  const Guarded guarded(rig);
  EXPECT_TRUE(guarded.ungrounded("out"));
  EXPECT_FALSE(guarded.ungrounded("out back"));
  EXPECT_FALSE(guarded.unprotected("out")) << "no battery feeds it";
}

/// With the plus grounded it is the minus that needs the fuse.
TEST(Guards, APositiveGroundTurnsTheSidesAround) {
  auto rig = test::fused_at(0.1);
  rig.system.reference = "b+";
  rig.system.fuses.clear();
  rig.run("bridge", "f", "g", 10, 0.1);
  const Guarded guarded(rig);
  EXPECT_FALSE(guarded.ungrounded("feed"));
  EXPECT_TRUE(guarded.ungrounded("back"));
  EXPECT_TRUE(guarded.unprotected("back"));
}

TEST(Guards, LaddersAreThoseOfTheForm) {
  auto rig = test::fused_at(0.1);
  rig.system.fuses.front().form = trade::FuseForm::blade;
  rig.breaker("breaker", "g", "h", 10);
  rig.load("radio", "h", "l-", 2);
  const auto network = network::build(rig.system, rig.system.cases.front());
  const auto& fuse = network.elements[static_cast<std::size_t>(*network.element("fuse"))];
  const auto& breaker = network.elements[static_cast<std::size_t>(*network.element("breaker"))];
  EXPECT_EQ(device_ladder(rig.system, fuse).back(), 100);  // blade, ISO 8820-3
  EXPECT_GT(device_ladder(rig.system, breaker).size(), device_ladder(rig.system, fuse).size());
  rig.system.fuses.front().form.reset();  // any may be fitted
  EXPECT_EQ(device_ladder(rig.system, fuse), device_ladder(rig.system, breaker));
}

/// A converter's output stands apart from every battery: its fuses guard all the same.
TEST(Guards, WhatOnlyAConverterFeedsIsGuardedByItsOwnFuses) {
  auto rig = test::fused_at(0.1);
  rig.system.converters.push_back(converter_to_c("to 12 V", "l+", 12.5, 20));
  rig.run("out", "c+", "panel", 10, 1);
  rig.fuse("pump fuse", "panel", "p", 10);
  rig.run("pump run", "p", "p+", 14, 3);
  rig.load("pump", "p+", "p-", 5);
  rig.run("pump back", "p-", "c-", 14, 3);
  const Guarded guarded(rig);
  EXPECT_EQ(guarded.guard("pump run"), "pump fuse");
  EXPECT_EQ(guarded.guard("branch"), "fuse");
  EXPECT_EQ(guarded.guard("pump back"), "") << "the way back";
  EXPECT_FALSE(guarded.unprotected("out")) << "the converter limits its own current";
}

}  // namespace
}  // namespace ohmtrail::plan
