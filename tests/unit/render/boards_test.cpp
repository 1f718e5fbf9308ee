#include "render/boards.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "render/diagram.hpp"
#include "render/sheets.hpp"
#include "support/random_system.hpp"
#include "support/render_shipped.hpp"
#include "support/report_input.hpp"

namespace ohmtrail::render {
namespace {

struct Large {
  netlist::System system;
  solve::CaseSolution solved;
};

Large large(unsigned seed = 501, int elements = 200) {
  netlist::System system = test::random_system(seed, {elements, true, true});
  auto solved = solve::solve_case(network::build(system, system.cases.front()));
  if (!solved) throw std::runtime_error("no solution");
  return {std::move(system), std::move(*solved)};
}

void count(const std::vector<Piece>& pieces, std::vector<int>& times) {
  for (const Piece& piece : pieces)
    for (const int e : piece.elements) ++times[static_cast<std::size_t>(e)];
}

std::vector<int> times_drawn(const SplitWiring& split, std::size_t elements) {
  std::vector<int> times(elements, 0);
  for (const Lane& lane : split.trunk.lanes) count(lane.pieces, times);
  for (const Tie& tie : split.trunk.ties) count(tie.pieces, times);
  const auto count_item = [&](const Item& item) {
    for (const int e : item.elements) ++times[static_cast<std::size_t>(e)];
    for (const auto& link : item.links) count(link, times);
  };
  for (const Item& item : split.trunk.items) count_item(item);
  for (const Board& board : split.boards)
    for (const Circuit& circuit : board.circuits) {
      count(circuit.feed, times);
      count(circuit.back, times);
      count_item(circuit.load);
    }
  return times;
}

TEST(Boards, TrunkAndBoardsTogetherHaveEveryElementOnce) {
  for (unsigned seed = 501; seed < 506; ++seed) {
    const Large one = large(seed);
    const SplitWiring split = split_circuits(make_wiring(one.solved.network));
    EXPECT_FALSE(split.boards.empty());
    for (const int times : times_drawn(split, one.solved.network.elements.size())) EXPECT_EQ(times, 1);
  }
}

TEST(Boards, TheTrunkIsSound) {
  const Large one = large();
  const Wiring trunk = split_circuits(make_wiring(one.solved.network)).trunk;
  ASSERT_FALSE(trunk.bars.empty());
  ASSERT_FALSE(trunk.lanes.empty());
  for (std::size_t b = 0; b < trunk.bars.size(); ++b)
    for (const int l : trunk.bars[b].lanes) {
      ASSERT_LT(static_cast<std::size_t>(l), trunk.lanes.size());
      const Lane& lane = trunk.lanes[static_cast<std::size_t>(l)];
      EXPECT_TRUE(lane.left == static_cast<int>(b) || lane.right == static_cast<int>(b));
    }
  for (const Bar& bar : trunk.bars) EXPECT_LT(bar.item, static_cast<int>(trunk.items.size()));
}

TEST(Boards, EachBarWithABoardSaysWhichSheet) {
  const Large one = large();
  const SplitWiring split = split_circuits(make_wiring(one.solved.network));
  for (const Board& board : split.boards) {
    EXPECT_GE(board.circuits.size(), 3u);
    const auto bar = std::find_if(split.trunk.bars.begin(), split.trunk.bars.end(),
                                  [&](const Bar& b) { return b.note == "sheet " + board.sign; });
    ASSERT_NE(bar, split.trunk.bars.end());
    EXPECT_EQ(bar->point, board.plus);
  }
  EXPECT_EQ(split.boards.front().sign, "A");
}

TEST(Boards, AFeedLeadsFromTheBarToTheLoad) {
  const Large one = large();
  const network::Network& network = one.solved.network;
  const SplitWiring split = split_circuits(make_wiring(network));
  ASSERT_FALSE(split.boards.empty());
  for (const Board& board : split.boards)
    for (const Circuit& circuit : board.circuits) {
      const auto end = [&](const Piece& piece, bool left) {
        const network::Element& e =
            network.elements[static_cast<std::size_t>(left ? piece.elements.front() : piece.elements.back())];
        return left != piece.reversed ? e.from : e.to;
      };
      const network::Element& load =
          network.elements[static_cast<std::size_t>(circuit.load.elements.front())];
      EXPECT_EQ(end(circuit.feed.front(), true), board.plus);
      EXPECT_EQ(end(circuit.feed.back(), false), load.from);
      EXPECT_EQ(end(circuit.back.front(), true), load.to);
      EXPECT_EQ(end(circuit.back.back(), false), circuit.minus);
    }
}

TEST(Boards, WithTooFewCircuitsNothingIsSplit) {
  const Large one = large();
  const Wiring wiring = make_wiring(one.solved.network);
  const SplitWiring split = split_circuits(wiring, 1000);
  EXPECT_TRUE(split.boards.empty());
  EXPECT_EQ(split.trunk.lanes.size(), wiring.lanes.size());
  EXPECT_EQ(split.trunk.items.size(), wiring.items.size());
}

TEST(DiagramSheetsTest, WhatFitsOnAPageStaysWhole) {
  for (const char* name : test::shipped_netlists) {
    const ReportInput input = test::shipped_report(name);
    const DiagramSheets sheets =
        diagram_sheets(input.system, input.solved.front(), input.hot_spots, Paper::a4);
    EXPECT_TRUE(sheets.boards.empty()) << name;
    EXPECT_EQ(sheets.trunk.shapes.size(),
              diagram(input.system, input.solved.front(), input.hot_spots).shapes.size());
  }
}

TEST(DiagramSheetsTest, ThreeHundredElementsAreReadableOnA4) {
  const Large one = large(9, 300);
  const DiagramSheets sheets = diagram_sheets(one.system, one.solved, {}, Paper::a4);
  EXPECT_GT(sheets.boards.size(), 2u);
  EXPECT_LT(
      sheets.trunk.width * sheets.trunk.height, 0.3 * [&] {
        const Scene whole = diagram(one.system, one.solved, {});
        return whole.width * whole.height;
      }());
  for (const Scene& board : sheets.boards) {
    EXPECT_TRUE(is_readable_on(board, Paper::a4)) << board.title << " " << board.width << "x" << board.height;
    EXPECT_THAT(board.title, testing::HasSubstr("Sheet "));
  }
}

TEST(DiagramSheetsTest, BoardsShareThePagesTheyFitOn) {
  const Large one = large(9, 300);
  const DiagramSheets sheets = diagram_sheets(one.system, one.solved, {}, Paper::letter);
  const auto pages = on_pages(sheets.boards, Paper::letter);
  EXPECT_LT(pages.size(), sheets.boards.size());
  for (const Scene& page : pages)
    for (const Shape& shape : page.shapes)
      EXPECT_TRUE((Box{0, 0, page.width, page.height}.holds(bounds(shape))));
}

}  // namespace
}  // namespace ohmtrail::render
