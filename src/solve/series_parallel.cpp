#include "solve/series_parallel.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <unordered_map>

#include "units/index.hpp"

// Up: a vertex with two neighbours is taken out, and its two edges become one,
//   g = g1 g2/(g1 + g2),   w1 = s1 w, w2 = s2 w with s1 = g2/(g1 + g2), s2 = g1/(g1 + g2)
// where w is the voltage across an edge; edges between the same vertices become one, g = g1 + g2. With each
// edge goes the largest and smallest voltage of the loads in it for w = 1 V.
// Down: R is the resistance seen at an edge's ends. An edge that is left alone at a vertex sees nothing but
// itself. In parallel both see R. In series, 1 A driven through the ends of the first is s1 A through the
// ends of the pair and an electromotive force inside it (Thévenin):
//   R1 = s1² R + 1/(g1 + g2),   w2 = s1 s2 R − 1/(g1 + g2);
// what is outside the pair answers s1 times what it answers to 1 A through the pair.

namespace ohmtrail::solve {

namespace {

/// Whether b stands before a: clearly larger (smaller for `sign` −1), or as large and earlier in the list.
bool better(const Response& a, const Response& b, double sign) {
  if (b.load < 0 || a.load < 0) return a.load < 0;
  const double gain = sign * (b.volts - a.volts);
  const double same = 1e-9 * std::max(std::abs(a.volts), std::abs(b.volts));
  return gain > same || (gain >= -same && b.load < a.load);
}

Extremes scaled(Extremes x, double by) {
  x.most.volts *= by;
  x.least.volts *= by;
  if (by < 0) std::swap(x.most, x.least);
  return x;
}

/// An edge of the file, or two that became one. `sign` of a part: −1 where it points the other way.
struct Bundle {
  int from = -1, to = -1;
  double conductance = 0;
  enum class Kind { single, series, parallel } kind = Kind::single;
  int part[2] = {-1, -1};
  double sign[2] = {1, 1};
  Extremes inside = {}, outside = {};
  double seen = 0;
};

class Reduction {
 public:
  Reduction(int vertices, const std::vector<LinearEdge>& edges)
      : ground_(vertices), head_(at(vertices) + 1, -1), degree_(at(vertices) + 1, 0) {
    bundles_.reserve(3 * edges.size());
    alive_.reserve(edges.size());
    for (const LinearEdge& edge : edges) {
      Bundle single{edge.from < 0 ? ground_ : edge.from, edge.to < 0 ? ground_ : edge.to, edge.conductance};
      if (edge.load >= 0) single.inside = {{1, edge.load}, {1, edge.load}};
      bundles_.push_back(single);
    }
    for (int k = 0; k < static_cast<int>(edges.size()); ++k) join(k);
  }

  [[nodiscard]] bool up() {
    int left = ground_;
    std::vector<int> waiting;
    std::vector<char> gone(at(ground_), 0);
    for (int v = ground_ - 1; v >= 0; --v) waiting.push_back(v);
    while (!waiting.empty()) {
      const int v = waiting.back();
      waiting.pop_back();
      if (v == ground_ || gone[at(v)] || degree_[at(v)] > 2) continue;
      gone[at(v)] = 1;
      --left;
      int beside[2] = {-1, -1};
      if (!take_out(v, beside)) return false;
      for (const int other : beside) {
        if (other >= 0) waiting.push_back(other);
      }
    }
    return left == 0;
  }

  void down() {
    for (int k = static_cast<int>(bundles_.size()) - 1; k >= 0; --k) {
      const Bundle& whole = bundles_[at(k)];
      if (whole.kind == Bundle::Kind::single) continue;
      for (const int which : {0, 1}) hand_down(whole, which);
    }
  }

  [[nodiscard]] EdgeView view(std::size_t edge) const {
    return {bundles_[edge].seen, bundles_[edge].outside};
  }

 private:
  static std::uint64_t pair_of(const Bundle& b) {
    const auto [low, high] = std::minmax(b.from, b.to);
    return (static_cast<std::uint64_t>(low) << 32) | static_cast<std::uint32_t>(high);
  }

  // Arm 2k hangs at the `from` of bundle k, arm 2k + 1 at its `to`; the arms of a vertex are a list.
  int& next(int arm) { return next_[at(arm)]; }
  int& previous(int arm) { return previous_[at(arm)]; }
  int vertex_of(int arm) const {
    return arm % 2 == 0 ? bundles_[at(arm / 2)].from : bundles_[at(arm / 2)].to;
  }

  void link(int bundle) {
    next_.resize(2 * bundles_.size(), -1);
    previous_.resize(2 * bundles_.size(), -1);
    for (const int arm : {2 * bundle, 2 * bundle + 1}) {
      int& head = head_[at(vertex_of(arm))];
      next(arm) = head;
      previous(arm) = -1;
      if (head >= 0) previous(head) = arm;
      head = arm;
      ++degree_[at(vertex_of(arm))];
    }
  }

  void unlink(int bundle) {
    for (const int arm : {2 * bundle, 2 * bundle + 1}) {
      if (next(arm) >= 0) previous(next(arm)) = previous(arm);
      (previous(arm) >= 0 ? next(previous(arm)) : head_[at(vertex_of(arm))]) = next(arm);
      --degree_[at(vertex_of(arm))];
    }
  }

  /// Into the network; edges between the same vertices become one.
  void join(int k) {
    if (bundles_[at(k)].from == bundles_[at(k)].to) return;
    const auto [place, is_new] = alive_.try_emplace(pair_of(bundles_[at(k)]), k);
    if (!is_new) {
      const int other = place->second;
      unlink(other);
      k = place->second = in_parallel(other, k);
    }
    link(k);
  }

  int in_parallel(int first, int second) {
    const Bundle &a = bundles_[at(first)], &b = bundles_[at(second)];
    Bundle both{a.from, a.to, a.conductance + b.conductance, Bundle::Kind::parallel, {first, second}};
    both.sign[1] = a.from == b.from ? 1 : -1;
    both.inside = merged(a.inside, scaled(b.inside, both.sign[1]));
    bundles_.push_back(both);
    return static_cast<int>(bundles_.size()) - 1;
  }

  /// Takes out a vertex of at most two neighbours, which it gives; false where it has no conductance.
  bool take_out(int v, int (&beside)[2]) {
    const int arm = head_[at(v)];
    if (arm < 0) return true;
    const int first = arm / 2;
    const int second = next(arm) < 0 ? -1 : next(arm) / 2;
    beside[0] = far_end(first, v);
    leave(first);
    if (second < 0) {
      Bundle& alone = bundles_[at(first)];
      alone.seen = 1 / alone.conductance;
      return alone.conductance > 0;
    }
    beside[1] = far_end(second, v);
    leave(second);
    return in_series(first, second, v);
  }

  int far_end(int bundle, int v) const {
    const Bundle& b = bundles_[at(bundle)];
    return b.from == v ? b.to : b.from;
  }

  void leave(int bundle) {
    alive_.erase(pair_of(bundles_[at(bundle)]));
    unlink(bundle);
  }

  bool in_series(int first, int second, int v) {
    const Bundle &a = bundles_[at(first)], &b = bundles_[at(second)];
    const double sum = a.conductance + b.conductance;
    if (!(sum > 0)) return false;
    Bundle both{far_end(first, v),
                far_end(second, v),
                a.conductance / sum * b.conductance,
                Bundle::Kind::series,
                {first, second}};
    both.sign[0] = a.to == v ? 1 : -1;
    both.sign[1] = b.from == v ? 1 : -1;
    both.inside = merged(scaled(a.inside, both.sign[0] * b.conductance / sum),
                         scaled(b.inside, both.sign[1] * a.conductance / sum));
    bundles_.push_back(both);
    join(static_cast<int>(bundles_.size()) - 1);
    return true;
  }

  void hand_down(const Bundle& whole, int which) {
    Bundle& part = bundles_[at(whole.part[which])];
    const Bundle& other = bundles_[at(whole.part[1 - which])];
    const Extremes beside = scaled(other.inside, whole.sign[1 - which]);
    Extremes outside;
    if (whole.kind == Bundle::Kind::parallel) {
      part.seen = whole.seen;
      outside = merged(whole.outside, scaled(beside, whole.seen));
    } else {
      const double sum = part.conductance + other.conductance;
      const double own = other.conductance / sum;
      part.seen = own * own * whole.seen + 1 / sum;
      const double across = own * (part.conductance / sum) * whole.seen - 1 / sum;
      outside = merged(scaled(whole.outside, own), scaled(beside, across));
    }
    part.outside = scaled(outside, whole.sign[which]);
  }

  int ground_;
  std::vector<Bundle> bundles_;  ///< parts stand before what they became
  std::vector<int> head_, degree_, next_, previous_;
  std::unordered_map<std::uint64_t, int> alive_;  ///< by vertices
};

}  // namespace

Extremes merged(const Extremes& a, const Extremes& b) {
  return {better(a.most, b.most, 1) ? b.most : a.most, better(a.least, b.least, -1) ? b.least : a.least};
}

std::optional<std::vector<EdgeView>> view_edges(int vertices, const std::vector<LinearEdge>& edges) {
  Reduction reduction(vertices, edges);
  if (!reduction.up()) return std::nullopt;
  reduction.down();
  std::vector<EdgeView> views(edges.size());
  for (std::size_t k = 0; k < edges.size(); ++k) views[k] = reduction.view(k);
  return views;
}

}  // namespace ohmtrail::solve
