#include "render/diagram.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "render/wiring.hpp"
#include "support/render_shipped.hpp"
#include "support/report_input.hpp"

namespace ohmtrail::render {
namespace {

Box box_of(const Scene& scene, const std::string& label) {
  for (const Shape& shape : scene.shapes)
    if (const Text* text = std::get_if<Text>(&shape.what);
        text && shape.kind == Kind::label && text->text == label)
      return text->bounds;
  ADD_FAILURE() << "no label " << label;
  return {};
}

Scene yacht(std::size_t in_case = 0) {
  const ReportInput input = test::shipped_report("yacht-12v");
  return diagram(input.system, input.solved[in_case], input.hot_spots);
}

TEST(Diagram, SuppliesLeftLoadsRight) {
  const Scene scene = yacht();
  double left = 0, right = 1e9;
  for (const char* battery : {"A1", "A2", "B1", "B2"}) left = std::max(left, box_of(scene, battery).x);
  for (const char* load : {"inverter load", "windlass motor", "chart plotter"})
    right = std::min(right, box_of(scene, load).x);
  EXPECT_LT(left, right);
}

TEST(Diagram, PositiveAboveNegativeBelow) {
  const Scene scene = yacht();
  EXPECT_LT(box_of(scene, "inverter").y, box_of(scene, "inverter load").y);
  EXPECT_LT(box_of(scene, "inverter load").y, box_of(scene, "inverter (return)").y);
  EXPECT_LT(box_of(scene, "A2").y, box_of(scene, "A1").y) << "the plus end of a string is on top";
}

TEST(Diagram, PlacesDependOnTheSystemAlone) {
  const Scene evening = yacht(0), anchor = yacht(3);
  for (const char* label : {"windlass", "fridge breaker", "cabin lamps"})
    EXPECT_NEAR(box_of(evening, label).y - box_of(evening, "A1").y,
                box_of(anchor, label).y - box_of(anchor, "A1").y, 60)
        << label;
}

TEST(Diagram, ADiscForEveryHotSpot) {
  const ReportInput input = test::shipped_report("launch-24v");
  const Scene scene = diagram(input.system, input.solved.front(), input.hot_spots);
  ASSERT_FALSE(input.hot_spots.empty());
  for (const diagnose::HotSpot& spot : input.hot_spots) {
    // Once at its place, once in the list below.
    const auto discs = std::count_if(scene.shapes.begin(), scene.shapes.end(), [&](const Shape& shape) {
      const Text* text = std::get_if<Text>(&shape.what);
      return shape.kind == Kind::disc && text && text->text == std::to_string(spot.rank);
    });
    EXPECT_GE(discs, 2) << spot.id;
  }
}

TEST(Diagram, NoBarGoesUnnamedInTheShippedSystems) {
  for (const char* name : test::shipped_netlists) {
    const ReportInput input = test::shipped_report(name);
    const Scene scene = diagram(input.system, input.solved.front(), input.hot_spots, {Show::gauge});
    const Wiring wiring = make_wiring(input.solved.front().network);
    for (const Bar& bar : wiring.bars)
      if (bar.item < 0 && bar.lanes.size() >= 3)
        box_of(scene, input.solved.front().network.points[static_cast<std::size_t>(bar.point)]);
  }
}

TEST(Wiring, SeriesBatteriesBecomeOneString) {
  const ReportInput input = test::shipped_report("cart-48v");
  const Wiring wiring = make_wiring(input.solved.front().network);
  const auto strings = std::count_if(wiring.items.begin(), wiring.items.end(),
                                     [](const Item& item) { return item.kind == ItemKind::supply; });
  ASSERT_EQ(strings, 1);
  const auto string = std::find_if(wiring.items.begin(), wiring.items.end(),
                                   [](const Item& item) { return item.kind == ItemKind::supply; });
  ASSERT_EQ(string->elements.size(), 8u);
  ASSERT_EQ(string->links.size(), 7u);
  // The plus end is on top: battery 8 first.
  EXPECT_EQ(input.solved.front().network.elements[static_cast<std::size_t>(string->elements[0])].id, "8");
}

TEST(Wiring, EveryElementIsDrawnOnce) {
  for (const char* name : test::shipped_netlists) {
    const ReportInput input = test::shipped_report(name);
    const network::Network& network = input.solved.front().network;
    std::vector<int> times(network.elements.size(), 0);
    const Wiring wiring = make_wiring(network);
    const auto count = [&](const Piece& piece) {
      for (const int e : piece.elements) ++times[static_cast<std::size_t>(e)];
    };
    for (const Lane& lane : wiring.lanes)
      for (const Piece& piece : lane.pieces) count(piece);
    for (const Tie& tie : wiring.ties)
      for (const Piece& piece : tie.pieces) count(piece);
    for (const Item& item : wiring.items) {
      for (const int e : item.elements) ++times[static_cast<std::size_t>(e)];
      for (const auto& link : item.links)
        for (const Piece& piece : link) count(piece);
    }
    for (std::size_t e = 0; e < times.size(); ++e)
      EXPECT_EQ(times[e], 1) << name << " " << network.elements[e].id;
  }
}

TEST(Wiring, LanesOfOnePointMeetAtOneBar) {
  const ReportInput input = test::shipped_report("yacht-12v");
  const Wiring wiring = make_wiring(input.solved.front().network);
  EXPECT_TRUE(std::any_of(wiring.bars.begin(), wiring.bars.end(),
                          [](const Bar& bar) { return bar.lanes.size() >= 3; }));
  for (std::size_t b = 0; b < wiring.bars.size(); ++b)
    for (const int l : wiring.bars[b].lanes) {
      const Lane& lane = wiring.lanes[static_cast<std::size_t>(l)];
      EXPECT_TRUE(lane.left == static_cast<int>(b) || lane.right == static_cast<int>(b));
    }
}

}  // namespace
}  // namespace ohmtrail::render
