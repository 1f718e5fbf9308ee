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
    const Scene page = bank_page(bank_of(batteries, all_checks));
    EXPECT_TRUE(inside(page));
    EXPECT_THAT(texts(page), testing::Contains("Batteries: bank"));
  }
}

TEST(BankPage, IsNoWiderThanItsBatteriesNeed) {
  EXPECT_LT(bank_page(bank_of(1, all_checks)).width, bank_page(bank_of(4, all_checks)).width);
  EXPECT_EQ(bank_page(bank_of(6, all_checks)).width, bank_page(bank_of(12, all_checks)).width);
}

TEST(BankPicture, ShowsEveryCellsGravityAndBothVoltages) {
  const auto said = texts(bank_picture(bank_of(1, all_checks), 300));
  EXPECT_THAT(said, testing::Contains("1.150"));
  EXPECT_EQ(std::count(said.begin(), said.end(), "1.260"), 5);
  EXPECT_THAT(said, testing::Contains(testing::HasSubstr("12.6")));
  EXPECT_THAT(said, testing::Contains(testing::HasSubstr("10.1")));
}

TEST(BankPicture, AWeakCellStandsOutByItsColour) {
  const auto bars = [](const std::string& gravity) {
    const Scene scene =
        bank_picture(bank_of(1, R"({"cells": [{"sg": )" + gravity + "}, {}, {}, {}, {}, {}]}"), 300);
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

TEST(BankPicture, SaysWhereNothingWasTested) {
  const netlist::System untested = bank_of(2, "{}");
  EXPECT_FALSE(has_checks(untested));
  EXPECT_TRUE(has_checks(bank_of(1, all_checks)));
}

}  // namespace
}  // namespace ohmtrail::render
