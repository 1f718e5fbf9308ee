#include "solve/series_parallel.hpp"

#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <cmath>
#include <random>

namespace ohmtrail::solve {
namespace {

using Edges = std::vector<LinearEdge>;

/// The same by dense inversion.
class Dense {
 public:
  Dense(int vertices, const Edges& edges) : edges_(edges) {
    Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(vertices, vertices);
    for (const LinearEdge& edge : edges) {
      const Eigen::VectorXd ends = incidence(edge, vertices);
      matrix += edge.conductance * ends * ends.transpose();
    }
    inverse_ = matrix.inverse();
  }

  EdgeView view(std::size_t k) const {
    const auto column = (inverse_ * incidence(edges_[k], static_cast<int>(inverse_.rows()))).eval();
    EdgeView view{across(column, edges_[k]), {}};
    for (std::size_t other = 0; other < edges_.size(); ++other) {
      if (edges_[other].load < 0 || other == k) continue;
      const Response response{across(column, edges_[other]), edges_[other].load};
      if (view.loads.most.load < 0 || response.volts > view.loads.most.volts) view.loads.most = response;
      if (view.loads.least.load < 0 || response.volts < view.loads.least.volts) view.loads.least = response;
    }
    return view;
  }

  static double across(const Eigen::VectorXd& volts, const LinearEdge& edge) {
    return (edge.from >= 0 ? volts[edge.from] : 0) - (edge.to >= 0 ? volts[edge.to] : 0);
  }

 private:
  static Eigen::VectorXd incidence(const LinearEdge& edge, int vertices) {
    Eigen::VectorXd ends = Eigen::VectorXd::Zero(vertices);
    if (edge.from >= 0) ends[edge.from] += 1;
    if (edge.to >= 0) ends[edge.to] -= 1;
    return ends;
  }

  const Edges& edges_;
  Eigen::MatrixXd inverse_;
};

void expect_same(const EdgeView& a, const EdgeView& b, double scale) {
  EXPECT_NEAR(a.resistance, b.resistance, 1e-10 * scale);
  EXPECT_NEAR(a.loads.most.volts, b.loads.most.volts, 1e-10 * scale);
  EXPECT_NEAR(a.loads.least.volts, b.loads.least.volts, 1e-10 * scale);
}

/// A tree of cables, conductors out and back, a load at every end; vertex 0 is the battery's plus post.
Edges radial(std::mt19937& random, int cables, int& vertices) {
  std::uniform_real_distribution<double> siemens(50, 5000), load(-0.5, 2);
  struct Port {
    int plus, minus;
  };
  std::vector<Port> ports{{0, -1}};
  Edges edges{{0, -1, 100}};
  vertices = 1;
  for (int k = 0; k < cables; ++k) {
    const Port from = ports[random() % ports.size()];
    const Port to{vertices, vertices + 1};
    vertices += 2;
    edges.push_back({from.plus, to.plus, siemens(random)});
    edges.push_back({from.minus, to.minus, siemens(random)});  // against the flow
    if (random() % 2 == 0) std::swap(edges.back().from, edges.back().to);
    ports.push_back(to);
  }
  int number = 0;
  for (std::size_t k = 1; k < ports.size(); ++k)
    edges.push_back({ports[k].plus, ports[k].minus, random() % 3 == 0 ? 0 : load(random), number++});
  return edges;
}

TEST(SeriesParallel, OneSourceOneWireOneLoad) {
  const Edges edges{{0, -1, 10}, {0, 1, 5}, {1, -1, 2, 0}};
  const auto views = view_edges(2, edges);
  ASSERT_TRUE(views);
  // 1 A through the wire's ends: 0.2 Ω beside 0.1 + 0.5 Ω.
  EXPECT_NEAR((*views)[1].resistance, 0.2 * 0.6 / 0.8, 1e-15);
  EXPECT_NEAR((*views)[1].loads.most.volts, -0.5 * 0.2 / 0.8, 1e-15);
  EXPECT_EQ((*views)[1].loads.most.load, 0);
}

TEST(SeriesParallel, ALoadOfConstantCurrentTakesTheWholeAnswer) {
  const Edges edges{{0, -1, 10}, {0, 1, 5}, {1, -1, 0, 0}};
  const auto views = view_edges(2, edges);
  ASSERT_TRUE(views);
  EXPECT_NEAR((*views)[1].resistance, 0.2, 1e-16);
  EXPECT_NEAR((*views)[1].loads.most.volts, -0.2, 1e-16);
}

TEST(SeriesParallel, RadialSystemsAreAsDenseInversionSaysThem) {
  for (unsigned seed = 1; seed <= 60; ++seed) {
    std::mt19937 random(seed);
    int vertices = 0;
    const Edges edges = radial(random, 1 + static_cast<int>(seed) % 25, vertices);
    const auto views = view_edges(vertices, edges);
    ASSERT_TRUE(views) << seed;
    const Dense dense(vertices, edges);
    for (std::size_t k = 0; k < edges.size(); ++k) {
      SCOPED_TRACE(testing::Message() << "seed " << seed << " edge " << k);
      expect_same((*views)[k], dense.view(k), edges[k].conductance != 0 ? 0.1 : 1);
    }
  }
}

TEST(SeriesParallel, OfEqualLoadsTheFirst) {
  const Edges edges{{0, -1, 10}, {0, 1, 5}, {1, -1, 0, 3}, {1, -1, 0, 1}, {1, -1, 0, 2}};
  const auto views = view_edges(2, edges);
  ASSERT_TRUE(views);
  EXPECT_EQ((*views)[1].loads.most.load, 1);
  EXPECT_EQ((*views)[1].loads.least.load, 1);
}

TEST(SeriesParallel, SeveralIslands) {
  const Edges edges{{0, -1, 10}, {0, 1, 5}, {1, -1, 2, 0}, {2, -1, 4}, {2, 3, 8}, {-1, 3, 1, 1}};
  const auto views = view_edges(4, edges);
  ASSERT_TRUE(views);
  EXPECT_EQ((*views)[1].loads.most.load, 0);
  EXPECT_EQ((*views)[4].loads.most.load, 1);
  EXPECT_GT((*views)[4].loads.most.volts, 0);  // it points the other way
}

TEST(SeriesParallel, EdgesBetweenMergedPointsSeeNothing) {
  const Edges edges{{0, -1, 10}, {-1, -1, 0}, {0, 0, 0}};
  const auto views = view_edges(1, edges);
  ASSERT_TRUE(views);
  EXPECT_EQ((*views)[1].resistance, 0);
  EXPECT_EQ((*views)[2].loads.most.load, -1);
}

TEST(SeriesParallel, ABridgeOfFiveIsNot) {
  const Edges bridge{{0, -1, 1}, {0, 1, 1}, {0, 2, 1},  {1, 2, 1},
                     {1, 3, 1},  {2, 3, 1}, {3, -1, 1}, {1, -1, 1}};
  EXPECT_FALSE(view_edges(4, bridge));
}

TEST(SeriesParallel, AVertexWithoutConductanceIsNot) {
  EXPECT_FALSE(view_edges(2, {{0, -1, 10}, {1, -1, 0, 0}}));
}

/// Of 2·10⁵ edges each: a look at all arms of the hub for every leaf would take 10¹⁰ steps.
TEST(SeriesParallel, HubsOfManyArmsAreLookedAtOnce) {
  constexpr int arms = 100000;
  Edges star{{0, -1, 10}};
  for (int k = 1; k <= arms; ++k) {
    star.push_back({0, k, 5});
    star.push_back({k, -1, 2, k - 1});
  }
  const auto views = view_edges(arms + 1, star);
  ASSERT_TRUE(views);
  const double branch = 1 / (1.0 / 5 + 1.0 / 2), hub = 10 + (arms - 1) * branch;
  EXPECT_NEAR((*views)[1].resistance, 1 / (5 + 1 / (1 / hub + 0.5)), 1e-9);
}

TEST(SeriesParallel, LongLaddersTakeOneStepARung) {
  constexpr int rungs = 100000;
  Edges ladder{{0, -1, 10}};
  for (int k = 1; k <= rungs; ++k) {
    ladder.push_back({k - 1, k, 5});
    ladder.push_back({k, -1, 2, k - 1});
  }
  const auto views = view_edges(rungs + 1, ladder);
  ASSERT_TRUE(views);
  // Far from its beginning a rung sees g = 5(2 + g)/(7 + g) of the ladder behind it: g² + 2g − 10 = 0.
  const double behind = std::sqrt(11) - 1, before = behind;
  EXPECT_NEAR((*views)[2 * 1000].resistance, 1 / (2 + behind + before), 1e-12);
}

TEST(SeriesParallel, NothingAtAll) {
  const auto views = view_edges(0, {});
  ASSERT_TRUE(views);
  EXPECT_TRUE(views->empty());
}

}  // namespace
}  // namespace ohmtrail::solve
