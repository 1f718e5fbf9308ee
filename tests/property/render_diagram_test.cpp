#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "render/diagram.hpp"
#include "support/random_cases.hpp"
#include "support/random_system.hpp"

/// What every wiring diagram keeps, whatever the system: nothing is hidden under anything else.
namespace ohmtrail::render {
namespace {

struct Drawn {
  netlist::System system;
  Scene scene;
};

/// The first thirty elements that were found worse than sound. Ranking them is not what is tested here.
std::vector<diagnose::HotSpot> hot_spots(const solve::CaseSolution& solved) {
  std::vector<diagnose::HotSpot> spots;
  for (const network::Element& element : solved.network.elements) {
    if (!element.as_found_given || element.role == network::Role::battery || spots.size() == 30) continue;
    spots.emplace_back();
    spots.back().id = element.id;
    spots.back().rank = static_cast<int>(spots.size());
    if (spots.size() % 3 == 0) spots.back().likelihood = 0.7;
  }
  return spots;
}

Drawn drawn(unsigned seed, const test::DrawnSystem& wanted, Show show = Show::volts) {
  netlist::System system = test::random_system(seed, wanted);
  auto solved = solve::solve_case(network::build(system, system.cases.front()));
  if (!solved) throw std::runtime_error("the random system has no solution");
  Scene scene = diagram(system, *solved, hot_spots(*solved), {show});
  return {std::move(system), std::move(scene)};
}

struct Placed {
  const Shape* shape;
  Box box;
};

std::vector<Placed> of_kind(const Scene& scene, Kind kind) {
  std::vector<Placed> found;
  for (const Shape& shape : scene.shapes)
    if (shape.kind == kind) found.push_back({&shape, bounds(shape)});
  return found;
}

std::string text_of(const Shape& shape) {
  const Text* text = std::get_if<Text>(&shape.what);
  return text ? text->text : "?";
}

std::vector<Placed> labels(const Scene& scene) {
  auto found = of_kind(scene, Kind::label);
  // A hair of slack: boxes that share an edge do not overlap.
  for (Placed& label : found) label.box = label.box.grown(-0.2);
  return found;
}

int overlapping_labels(const Scene& scene) {
  const auto all = labels(scene);
  int count = 0;
  for (std::size_t i = 0; i < all.size(); ++i)
    for (std::size_t k = i + 1; k < all.size(); ++k)
      if (all[i].box.overlaps(all[k].box)) {
        ADD_FAILURE() << '"' << text_of(*all[i].shape) << "\" overlaps \"" << text_of(*all[k].shape) << '"';
        ++count;
      }
  return count;
}

/// Each stretch of a line on its own: the box of a bent line is not the line.
std::vector<Box> stretches(const Shape& shape) {
  const Line* line = std::get_if<Line>(&shape.what);
  if (!line) return {bounds(shape)};
  std::vector<Box> boxes;
  for (std::size_t k = 1; k < line->points.size(); ++k) {
    const Point a = line->points[k - 1], b = line->points[k];
    boxes.push_back(
        Box{std::min(a.x, b.x), std::min(a.y, b.y), std::fabs(a.x - b.x), std::fabs(a.y - b.y)}.grown(
            line->stroke.width / 2));
  }
  return boxes;
}

int covered_labels(const Scene& scene, Kind by) {
  int count = 0;
  const auto all = labels(scene);
  for (const Placed& other : of_kind(scene, by))
    for (const Box& box : stretches(*other.shape))
      for (const Placed& label : all)
        if (box.overlaps(label.box)) {
          ADD_FAILURE() << '"' << text_of(*label.shape) << "\" is crossed by something of kind "
                        << static_cast<int>(by);
          ++count;
        }
  return count;
}

void expect_inside_the_page(const Scene& scene) {
  const Box page{0, 0, scene.width, scene.height};
  for (const Shape& shape : scene.shapes) {
    const Box box = bounds(shape);
    EXPECT_TRUE(page.holds(box)) << text_of(shape) << " at " << box.x << "," << box.y << " to " << box.right()
                                 << "," << box.bottom() << " on " << scene.width << "x" << scene.height;
  }
}

void expect_straight(const Scene& scene) {
  for (const Kind kind : {Kind::conductor, Kind::post})
    for (const Placed& placed : of_kind(scene, kind)) {
      const Line* line = std::get_if<Line>(&placed.shape->what);
      for (std::size_t k = 1; line && k < line->points.size(); ++k) {
        const Point a = line->points[k - 1], b = line->points[k];
        EXPECT_TRUE(a.x == b.x || a.y == b.y);
      }
    }
}

void expect_clean(const Scene& scene) {
  EXPECT_EQ(overlapping_labels(scene), 0);
  for (const Kind kind : {Kind::conductor, Kind::post, Kind::symbol, Kind::disc, Kind::arrow})
    EXPECT_EQ(covered_labels(scene, kind), 0);
  expect_inside_the_page(scene);
  expect_straight(scene);
}

class RandomDiagram : public testing::TestWithParam<int> {};

TEST_P(RandomDiagram, TreesAreClean) {
  const int cases = test::random_cases(GetParam() > 100 ? 4 : 12);
  for (int k = 0; k < cases; ++k) {
    SCOPED_TRACE(k);
    expect_clean(drawn(static_cast<unsigned>(1000 + k), {GetParam()}).scene);
  }
}

TEST_P(RandomDiagram, RingsAndOddThingsAreClean) {
  const int cases = test::random_cases(GetParam() > 100 ? 4 : 12);
  for (int k = 0; k < cases; ++k) {
    SCOPED_TRACE(k);
    expect_clean(
        drawn(static_cast<unsigned>(2000 + k), {GetParam(), true, true}, static_cast<Show>(k % 4)).scene);
  }
}

TEST_P(RandomDiagram, LongNamesAreClean) {
  const int cases = test::random_cases(GetParam() > 100 ? 2 : 6);
  for (int k = 0; k < cases; ++k) {
    SCOPED_TRACE(k);
    expect_clean(drawn(static_cast<unsigned>(3000 + k), {GetParam(), true, true, true}).scene);
  }
}

TEST_P(RandomDiagram, OnSheetsEveryPartIsCleanAndNothingIsLost) {
  const int cases = test::random_cases(GetParam() > 100 ? 2 : 6);
  for (int k = 0; k < cases; ++k) {
    SCOPED_TRACE(k);
    const netlist::System system =
        test::random_system(static_cast<unsigned>(5000 + k), {GetParam(), true, true, k % 3 == 2});
    const auto solved = solve::solve_case(network::build(system, system.cases.front()));
    ASSERT_TRUE(solved);
    const DiagramSheets sheets =
        diagram_sheets(system, *solved, hot_spots(*solved), Paper::a4, {static_cast<Show>(k % 4)});
    std::set<std::string> ids;
    const auto look = [&](const Scene& scene) {
      expect_clean(scene);
      for (const Group& group : scene.groups) ids.insert(group.id);
    };
    look(sheets.trunk);
    for (const Scene& board : sheets.boards) look(board);
    for (const auto& run : system.runs) EXPECT_TRUE(ids.contains(run.id)) << run.id;
    for (const auto& load : system.loads) EXPECT_TRUE(ids.contains(load.id)) << load.id;
    for (const auto& fuse : system.fuses) EXPECT_TRUE(ids.contains(fuse.id)) << fuse.id;
  }
}

TEST_P(RandomDiagram, EveryPartIsInIt) {
  const Drawn d = drawn(77, {GetParam(), true, true});
  ASSERT_FALSE(d.system.runs.empty() || d.system.loads.empty() || d.system.batteries.empty());
  std::set<std::string> ids;
  for (const Group& group : d.scene.groups) ids.insert(group.id);
  for (const auto& run : d.system.runs) EXPECT_TRUE(ids.contains(run.id)) << run.id;
  for (const auto& load : d.system.loads) EXPECT_TRUE(ids.contains(load.id)) << load.id;
  for (const auto& battery : d.system.batteries) EXPECT_TRUE(ids.contains(battery.id)) << battery.id;
  for (const auto& fuse : d.system.fuses) EXPECT_TRUE(ids.contains(fuse.id)) << fuse.id;
  for (const auto& item : d.system.switches) EXPECT_TRUE(ids.contains(item.id)) << item.id;
  for (const auto& joint : d.system.joints) EXPECT_TRUE(ids.contains(joint.id)) << joint.id;
}

INSTANTIATE_TEST_SUITE_P(Sizes, RandomDiagram, testing::Values(10, 30, 60, 100, 200, 300));

}  // namespace
}  // namespace ohmtrail::render
