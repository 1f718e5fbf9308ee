#include <fmt/core.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "ohmtrail/netlist/read.hpp"
#include "render/bank.hpp"

namespace ohmtrail::render {
namespace {

netlist::System bank_of(int batteries, const std::string& checks) {
  std::string text = R"({"ohmtrail": 1, "system": {"name": "bank", "nominal": 12}, "batteries": [)";
  for (int k = 0; k < batteries; ++k) {
    text += fmt::format(R"({}{{"id": "battery {}", "plus": "+", "minus": "-", "nominal": 12, "checks": {}}})",
                        k ? "," : "", k, checks);
  }
  const auto read =
      netlist::read(text + R"(], "loads": [{"id": "lamp", "plus": "+", "minus": "-", "takes": "1 A"}]})");
  if (!read) throw std::runtime_error(netlist::format(read.error().front(), "bank"));
  return read->system;
}

const std::string all_checks = R"({"rest": {"volts": 12.6, "hours": 8, "temperature": 20},
  "load_test": {"before": 12.6, "amps": 250, "volts": 10.1, "seconds": 15},
  "cells": [{"sg": 1.26}, {"sg": 1.26}, {"sg": 1.15}, {"sg": 1.26}, {"sg": 1.26}, {"sg": 1.26}]})";

Scene page_of(const netlist::System& system) {
  return bank_page(system, diagnose::judge_bank(system));
}

Scene picture_of(const netlist::System& system, double width) {
  return bank_picture(system, diagnose::judge_bank(system), width);
}

/// A full battery of 500 CCA that keeps so much under 250 A for so long.
netlist::System load_tested(double volts, double seconds = 15) {
  netlist::System system = bank_of(1, all_checks);
  netlist::Battery& battery = system.batteries.front();
  battery.cca = units::Current{500};
  battery.checks.cells.clear();
  battery.checks.load_test->volts = units::Voltage{volts};
  battery.checks.load_test->duration = units::Time{seconds};
  return system;
}

std::vector<std::string> texts(const Scene& scene) {
  std::vector<std::string> found;
  for (const Shape& shape : scene.shapes) {
    if (const auto* text = std::get_if<Text>(&shape.what)) found.push_back(text->text);
  }
  return found;
}

bool inside(const Scene& scene) {
  return std::all_of(scene.shapes.begin(), scene.shapes.end(), [&](const Shape& shape) {
    const Box box = bounds(shape);
    return box.x >= 0 && box.y >= 0 && box.right() <= scene.width && box.bottom() <= scene.height;
  });
}

TEST(BankPage, HasAHeadingAndKeepsInsideItsEdges) {
  for (const int batteries : {1, 2, 4, 6, 9, 30}) {
    SCOPED_TRACE(batteries);
    const Scene page = page_of(bank_of(batteries, all_checks));
    EXPECT_TRUE(inside(page));
    EXPECT_THAT(texts(page), testing::Contains("Batteries: bank"));
  }
}

TEST(BankPage, IsNoWiderThanItsBatteriesNeed) {
  EXPECT_LT(page_of(bank_of(1, all_checks)).width, page_of(bank_of(4, all_checks)).width);
  EXPECT_EQ(page_of(bank_of(6, all_checks)).width, page_of(bank_of(12, all_checks)).width);
}

TEST(BankPicture, ShowsEveryCellsGravityAndBothVoltages) {
  const auto said = texts(picture_of(bank_of(1, all_checks), 300));
  EXPECT_THAT(said, testing::Contains("1.150"));
  EXPECT_EQ(std::count(said.begin(), said.end(), "1.260"), 5);
  EXPECT_THAT(said, testing::Contains(testing::HasSubstr("12.6")));
  EXPECT_THAT(said, testing::Contains(testing::HasSubstr("10.1")));
}

TEST(BankPicture, AWeakCellStandsOutByItsColour) {
  const auto bars = [](const std::string& gravity) {
    const Scene scene =
        picture_of(bank_of(1, R"({"cells": [{"sg": )" + gravity + "}, {}, {}, {}, {}, {}]}"), 300);
    std::vector<Colour> fills;
    for (const Shape& shape : scene.shapes) {
      const auto* line = std::get_if<Line>(&shape.what);
      if (shape.kind == Kind::symbol && line && line->fill) fills.push_back(*line->fill);
    }
    return fills;
  };
  ASSERT_EQ(bars("1.26").size(), 1U);
  ASSERT_EQ(bars("1.15").size(), 1U);
  EXPECT_EQ(bars("1.26")[0], palette::sound);
  EXPECT_EQ(bars("1.15")[0], palette::alarm);
}

/// The colour in which the voltage under load is written.
Colour colour_of(const Scene& scene, const std::string& words) {
  for (const Shape& shape : scene.shapes)
    if (const auto* text = std::get_if<Text>(&shape.what); text && text->text == words) return text->colour;
  ADD_FAILURE() << words << " is not written";
  return {};
}

TEST(BankPicture, AFailedLoadTestIsShownAsTheBankCommandJudgesIt) {
  const Scene failed = picture_of(load_tested(8.2), 300), passed = picture_of(load_tested(10.6), 300);
  EXPECT_THAT(texts(failed), testing::Contains("at 250\u202FA: failed"));
  EXPECT_EQ(colour_of(failed, "8.20\u202FV"), palette::alarm);
  EXPECT_THAT(texts(passed), testing::Contains("at 250\u202FA: passed"));
  EXPECT_EQ(colour_of(passed, "10.60\u202FV"), palette::ink);
}

TEST(BankPicture, ALoadTestThatProvesNothingHasNoVerdict) {
  netlist::System discharged = load_tested(8.2);
  discharged.batteries.front().checks.rest->volts = units::Voltage{11.9};
  const Scene scene = picture_of(discharged, 300);
  EXPECT_THAT(texts(scene), testing::Contains("at 250\u202FA"));
  EXPECT_EQ(colour_of(scene, "8.20\u202FV"), palette::ink);
}

TEST(BankPicture, SaysWhereNothingWasTested) {
  const netlist::System untested = bank_of(2, "{}");
  EXPECT_FALSE(has_checks(untested));
  EXPECT_TRUE(has_checks(bank_of(1, all_checks)));
}

}  // namespace
}  // namespace ohmtrail::render
