#include "plan/load_tree.hpp"

#include <gtest/gtest.h>

namespace ohmtrail::plan {
namespace {

Arm arm(std::vector<int> loads) {
  return {-1, {Curve{0.01, 0, 0}}, {1e9}, std::move(loads)};
}

RadialCase in_case(std::vector<Arm> arms, std::size_t loads) {
  RadialCase radial;
  radial.arms = std::move(arms);
  radial.loads.resize(loads);
  return radial;
}

TEST(LoadTree, HangsArmsByWhatTheyFeed) {
  const auto tree = load_tree(in_case({arm({0}), arm({0, 1}), arm({0, 1, 2}), arm({2})}, 3));
  ASSERT_TRUE(tree);
  ASSERT_EQ(tree->size(), 4U);
  EXPECT_EQ((*tree)[0].arms, std::vector<int>{2});
  EXPECT_EQ((*tree)[0].children.size(), 2U);
  for (const TreeNode& node : *tree)
    for (const int child : node.children) {
      EXPECT_GT((*tree)[static_cast<std::size_t>(child)].parent, -1);
      EXPECT_LT((*tree)[static_cast<std::size_t>(child)].fed.size(), node.fed.size());
    }
}

TEST(LoadTree, ALoadHangsAtTheLastArmThatFeedsIt) {
  const auto tree = load_tree(in_case({arm({0, 1}), arm({1})}, 2));
  ASSERT_TRUE(tree);
  EXPECT_EQ((*tree)[0].loads, std::vector<int>{0});
  EXPECT_EQ((*tree)[1].loads, std::vector<int>{1});
}

TEST(LoadTree, PlusAndMinusOfTheSameLoadsStandInOneNode) {
  const auto tree = load_tree(in_case({arm({0}), arm({0}), arm({1})}, 2));
  ASSERT_TRUE(tree);
  EXPECT_TRUE((*tree)[0].arms.empty());
  EXPECT_EQ((*tree)[1].arms, (std::vector<int>{0, 1}));
}

TEST(LoadTree, ArmsThatBranchDifferentlyHaveNone) {
  EXPECT_FALSE(load_tree(in_case({arm({0, 1}), arm({1, 2})}, 3)));
  EXPECT_FALSE(load_tree(in_case({arm({0, 1, 2}), arm({0, 1}), arm({1, 2}), arm({2})}, 3)));
}

TEST(LoadTree, WithoutLoadsItIsItsRoot) {
  const auto tree = load_tree(in_case({}, 0));
  ASSERT_TRUE(tree);
  EXPECT_EQ(tree->size(), 1U);
}

}  // namespace
}  // namespace ohmtrail::plan
