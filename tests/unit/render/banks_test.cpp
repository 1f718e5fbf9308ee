#include "render/banks.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "ohmtrail/netlist/read.hpp"
#include "render/diagram.hpp"

namespace ohmtrail::render {
namespace {

/// `strings` strings of two 6 V batteries, posts in parallel; `ties` is further runs as JSON. Invented.
netlist::System bank(int strings, const std::string& ties) {
  std::string batteries, runs;
  for (int s = 0; s < strings; ++s) {
    const std::string n = std::to_string(s);
    for (const std::string half : {"hi", "lo"})
      batteries += std::string(batteries.empty() ? "" : ",") + R"({"id":")" + half + n + R"(","plus":")" +
                   half + n + R"(+","minus":")" + half + n + R"(-","nominal":"6 V","capacity":"200 Ah"})";
    runs += R"({"id":"link)" + n + R"(","from":"lo)" + n + R"(+","to":"hi)" + n +
            R"(-","gauge":"35 mm2","length":"0.3 m"},)";
    if (s > 0)
      for (const std::string post : {"hi", "lo"}) {
        const std::string sign = post == "hi" ? "+" : "-";
        runs += R"({"id":")" + post + " tie" + n + R"(","from":")" + post + "0" + sign + R"(","to":")" +
                post + n + sign + R"(","gauge":"35 mm2","length":"0.3 m"},)";
      }
  }
  const std::string text = R"({"ohmtrail":1,"system":{"name":"bank","nominal":"12 V"},"batteries":[)" +
                           batteries + R"(],"runs":[)" + runs + ties +
                           R"({"id":"feed","from":"hi0+","to":"bus","gauge":"35 mm2","length":"1 m"}],)"
                           R"("loads":[{"id":"lamp","plus":"bus","minus":"lo0-","takes":"5 A"}]})";
  auto read = netlist::read(text);
  if (!read) throw std::runtime_error("the test's own file is wrong");
  return read->system;
}

std::string tie(const std::string& id, const std::string& from, const std::string& to) {
  return R"({"id":")" + id + R"(","from":")" + from + R"(","to":")" + to +
         R"(","gauge":"16 mm2","length":"0.3 m"},)";
}

Wiring wiring_of(const netlist::System& system) {
  return make_wiring(network::build(system, system.cases.front()));
}

std::vector<std::string> strings_of(const netlist::System& system, const Wiring& wiring) {
  const network::Network network = network::build(system, system.cases.front());
  std::vector<std::string> list;
  for (const int item : wiring.banks.at(0))
    list.push_back(
        network.elements[static_cast<std::size_t>(wiring.items[static_cast<std::size_t>(item)].elements[0])]
            .id);
  return list;
}

TEST(TiedBank, MiddlesTiedMakeOneBankOfTwoStrings) {
  const netlist::System system = bank(2, tie("middle", "lo0+", "lo1+"));
  const Wiring wiring = wiring_of(system);
  ASSERT_EQ(wiring.banks.size(), 1u);
  ASSERT_EQ(wiring.ties.size(), 1u);
  EXPECT_EQ(strings_of(system, wiring), (std::vector<std::string>{"hi0", "hi1"}));
  EXPECT_EQ(wiring.ties[0].junction, 0);
  EXPECT_TRUE(wiring.ties[0].below_link) << "it joins the lower batteries' plus posts";
  ASSERT_EQ(wiring.ties[0].pieces.size(), 1u);
}

TEST(TiedBank, WithoutTiesThereAreTwoStringsAndNoBank) {
  const Wiring wiring = wiring_of(bank(2, ""));
  EXPECT_TRUE(wiring.banks.empty());
  EXPECT_EQ(std::count_if(wiring.items.begin(), wiring.items.end(),
                          [](const Item& item) { return item.elements.size() == 2; }),
            2);
}

TEST(TiedBank, ThreeStringsStandInTheOrderOfTheirTies) {
  const netlist::System system = bank(3, tie("first", "lo0+", "lo2+") + tie("second", "lo2+", "lo1+"));
  EXPECT_EQ(strings_of(system, wiring_of(system)), (std::vector<std::string>{"hi0", "hi2", "hi1"}));
}

TEST(TiedBank, TiesAboveAndBelowTheLinkAreBothDrawn) {
  const Wiring wiring = wiring_of(bank(2, tie("upper", "hi0-", "hi1-") + tie("lower", "lo0+", "lo1+")));
  ASSERT_EQ(wiring.ties.size(), 2u);
  EXPECT_NE(wiring.ties[0].below_link, wiring.ties[1].below_link);
}

TEST(TiedBank, ARingOrAStarOfTiesFallsBack) {
  const std::string ring = tie("a", "lo0+", "lo1+") + tie("b", "lo1+", "lo2+") + tie("c", "lo2+", "lo0+");
  EXPECT_TRUE(wiring_of(bank(3, ring)).banks.empty());
  const std::string star = tie("a", "lo0+", "lo1+") + tie("b", "lo0+", "lo2+") + tie("c", "lo0+", "lo3+");
  EXPECT_TRUE(wiring_of(bank(4, star)).banks.empty());
}

TEST(TiedBank, TiesAreTurnedFromLeftToRight) {
  const netlist::System system = bank(2, tie("middle", "lo1+", "lo0+"));
  const Wiring wiring = wiring_of(system);
  ASSERT_EQ(wiring.ties.size(), 1u);
  EXPECT_EQ(wiring.ties[0].left, wiring.banks[0][0]);
  EXPECT_EQ(wiring.ties[0].right, wiring.banks[0][1]);
  EXPECT_TRUE(wiring.ties[0].pieces[0].reversed);
}

TEST(TiedBank, InTheDiagramTheTieIsLevelBetweenItsStrings) {
  const netlist::System system = bank(2, tie("middle", "lo0+", "lo1+"));
  const auto solved = solve::solve_case(network::build(system, system.cases.front()));
  ASSERT_TRUE(solved);
  const Scene scene = diagram(system, *solved, {});
  const auto box = [&](const std::string& label) {
    for (const Shape& shape : scene.shapes)
      if (const Text* text = std::get_if<Text>(&shape.what);
          text && shape.kind == Kind::label && text->text == label)
        return text->bounds;
    ADD_FAILURE() << "no label " << label;
    return Box{};
  };
  EXPECT_NEAR(box("hi0").y, box("hi1").y, 1e-6) << "strings of a bank stand level";
  EXPECT_GT(box("middle").y, box("hi0").y);
  EXPECT_LT(box("middle").y, box("lo0").y);
  EXPECT_GT(box("middle").x, box("hi0").x - 20);
  EXPECT_LT(box("middle").right(), box("hi1").x);
}

}  // namespace
}  // namespace ohmtrail::render
