#include "solve/elimination_order.hpp"

#include <Eigen/OrderingMethods>
#include <Eigen/SparseCore>

#include "solve/expect.hpp"
#include "units/index.hpp"

// Wiring is nearly a tree, and on trees peeling leaves is the best order there is, in linear time. On a tree
// of 10⁵ points minimum degree alone takes 29 ms, peeling 2 ms, where factor and solve take 9 ms.

namespace ohmtrail::solve {

namespace {

class Order {
 public:
  Order(int vertices, const std::vector<std::pair<int, int>>& edges)
      : edges_(edges), place_(at(vertices), -1), around_(at(vertices)) {}

  Elimination find() {
    peel_leaves();
    if (next_ < static_cast<int>(place_.size())) order_core();
    return {std::move(place_), next_};
  }

 private:
  bool is_edge(const std::pair<int, int>& edge) const {
    return edge.first >= 0 && edge.second >= 0 && edge.first != edge.second;
  }

  void peel_leaves() {
    look_around();
    for (int v = 0; v < static_cast<int>(place_.size()); ++v) {
      for (int leaf = v; leaf >= 0 && place_[at(leaf)] < 0 && around_[at(leaf)].edges <= 1;)
        leaf = peel(leaf);
    }
  }

  void look_around() {
    for (std::size_t e = 0; e < edges_.size(); ++e) {
      expect_ends(edges_, e, around_);
      if (!is_edge(edges_[e])) continue;
      const auto [one, other] = edges_[e];
      around_[at(one)].edges += 1, around_[at(one)].beside ^= other;
      around_[at(other)].edges += 1, around_[at(other)].beside ^= one;
    }
  }

  /// Its neighbour; −1 where it had none.
  int peel(int leaf) {
    place_[at(leaf)] = next_++;
    if (around_[at(leaf)].edges == 0) return -1;
    const int inner = around_[at(leaf)].beside;
    around_[at(inner)].edges -= 1, around_[at(inner)].beside ^= leaf;
    return inner;
  }

  void order_core() {
    std::vector<int> core, of_core(place_.size(), -1);
    for (int v = 0; v < static_cast<int>(place_.size()); ++v) {
      if (place_[at(v)] >= 0) continue;
      of_core[at(v)] = static_cast<int>(core.size());
      core.push_back(v);
    }
    Eigen::PermutationMatrix<Eigen::Dynamic, Eigen::Dynamic, int> permutation;
    Eigen::AMDOrdering<int> minimum_degree;
    const Eigen::SparseMatrix<double> pattern = core_pattern(of_core, static_cast<int>(core.size()));
    minimum_degree(pattern.selfadjointView<Eigen::Lower>(), permutation);
    for (int k = 0; k < static_cast<int>(core.size()); ++k)
      place_[at(core[at(permutation.indices()[k])])] = next_ + k;
  }

  Eigen::SparseMatrix<double> core_pattern(const std::vector<int>& of_core, int count) const {
    std::vector<Eigen::Triplet<double>> entries;
    for (int k = 0; k < count; ++k) entries.emplace_back(k, k, 1.0);
    for (const auto& edge : edges_) {
      if (!is_edge(edge)) continue;
      const int a = of_core[at(edge.first)];
      const int b = of_core[at(edge.second)];
      if (a >= 0 && b >= 0) entries.emplace_back(std::max(a, b), std::min(a, b), 1.0);
    }
    Eigen::SparseMatrix<double> pattern(count, count);
    pattern.setFromTriplets(entries.begin(), entries.end());
    return pattern;
  }

  struct Around {
    int edges = 0;
    int beside = 0;  ///< exclusive or of the neighbours: the one that is left, once there is no other
  };

  const std::vector<std::pair<int, int>>& edges_;
  std::vector<int> place_;
  std::vector<Around> around_;
  int next_ = 0;
};

}  // namespace

Elimination elimination_order(int vertices, const std::vector<std::pair<int, int>>& edges) {
  return Order(vertices, edges).find();
}

}  // namespace ohmtrail::solve
