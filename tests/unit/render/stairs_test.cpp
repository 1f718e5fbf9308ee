#include "render/stairs.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "render/staircase.hpp"
#include "support/render_shipped.hpp"

namespace ohmtrail::render {
namespace {

using network::Role;

diagnose::Step step(const std::string& element, Role role, double lost, double rated) {
  diagnose::Step one;
  one.element = element;
  one.role = role;
  one.lost = lost;
  one.lost_as_rated = rated;
  return one;
}

diagnose::Staircase to_the_fridge(double end_lost = 0.001) {
  diagnose::Staircase stairs;
  stairs.in_case = "evening";
  stairs.load = "fridge compressor";
  stairs.supply = "A1";
  stairs.open_circuit = 12.6;
  stairs.terminal = 12.5;
  stairs.as_rated_known = true;
  stairs.steps = {step("A1", Role::battery, 0.1, 0.1),
                  step("fridge/from", Role::termination, 0.001, 0.001),
                  step("fridge/wire", Role::wire, 0.2, 0.2),
                  step("fridge/to", Role::termination, end_lost, 0.001),
                  step("fridge compressor", Role::load, 12, 12),
                  step("fridge/return-from", Role::termination, 0.001, 0.001),
                  step("fridge/return-wire", Role::wire, 0.2, 0.2)};
  return stairs;
}

std::vector<std::string> names(const std::vector<Stair>& stairs) {
  std::vector<std::string> all;
  for (const Stair& stair : stairs) all.push_back(stair.name);
  return all;
}

double lost(const std::vector<Stair>& stairs) {
  double sum = 0;
  for (const Stair& stair : stairs) sum += stair.lost;
  return sum;
}

TEST(Stairs, SoundEndsJoinTheirWire) {
  const auto stairs = stairs_of(test::shipped("yacht-12v"), to_the_fridge());
  EXPECT_EQ(names(stairs), (std::vector<std::string>{"inside battery A1", "cable fridge", "fridge compressor",
                                                     "return cable of fridge"}));
  EXPECT_NEAR(stairs[1].lost, 0.202, 1e-12);
  EXPECT_NEAR(lost(stairs), 12.503, 1e-12);
}

TEST(Stairs, ABadEndHasAStairOfItsOwn) {
  netlist::System system = test::shipped("yacht-12v");
  system.points.clear();
  const auto stairs = stairs_of(system, to_the_fridge(0.15));
  ASSERT_EQ(stairs.size(), 5u);
  EXPECT_EQ(stairs[2].name, "cable fridge, its end at fridge +");
  EXPECT_NEAR(stairs[2].lost, 0.15, 1e-12);
  EXPECT_NEAR(stairs[2].rated, 0.001, 1e-12);
  EXPECT_NEAR(lost(stairs), 12.652, 1e-12);
}

TEST(Stairs, AChargerHasOneOnlyBelowItsSetPoint) {
  diagnose::Staircase stairs = to_the_fridge();
  stairs.steps.front() = step("shore charger", Role::charger, 0, 0);
  EXPECT_EQ(names(stairs_of(test::shipped("yacht-12v"), stairs)).front(), "cable fridge");
  stairs.steps.front().lost = 0.4;
  EXPECT_EQ(names(stairs_of(test::shipped("yacht-12v"), stairs)).front(),
            "shore charger, below its set point");
}

std::vector<std::string> texts(const Scene& scene) {
  std::vector<std::string> all;
  for (const Shape& shape : scene.shapes)
    if (const Text* text = std::get_if<Text>(&shape.what)) all.push_back(text->text);
  return all;
}

double y_of(const Scene& scene, const std::string& wanted) {
  for (const Shape& shape : scene.shapes)
    if (const Text* text = std::get_if<Text>(&shape.what); text && text->text == wanted)
      return text->baseline;
  ADD_FAILURE() << wanted << " is not written";
  return 0;
}

TEST(Staircase, WhatIsLeftStandsAtItsFoot) {
  const Scene scene = staircase_picture(test::shipped("yacht-12v"), to_the_fridge());
  const double left = y_of(scene, "12.00\u202FV is left for fridge compressor");
  for (const char* words : {"From the battery to the load", "cable fridge",
                            "From the load back to the battery", "return cable of fridge"})
    EXPECT_LT(y_of(scene, words), left) << words;
}

TEST(Staircase, IsNamedAfterWhatFeedsTheLoad) {
  diagnose::Staircase stairs = to_the_fridge();
  stairs.supply = "light converter/out";
  const auto said = texts(staircase_picture(test::shipped("cart-48v"), stairs));
  EXPECT_EQ(std::count(said.begin(), said.end(), "From the converter to the load"), 1);
  EXPECT_EQ(std::count(said.begin(), said.end(), "From the load back to the converter"), 1);
}

}  // namespace
}  // namespace ohmtrail::render
