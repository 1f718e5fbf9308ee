#include "solve/series_parallel.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

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
  enum class Kind : char { single, series, parallel } kind = Kind::single;
  signed char sign[2] = {1, 1};
  int part[2] = {-1, -1};
  double conductance = 0;
  Extremes inside = {};
};

/// Where a bundle is tied in. Arm 2k hangs at the first end of bundle k, arm 2k + 1 at its second; the arms
/// of a vertex are a list.
struct Link {
  int end[2];
  int next[2] = {-1, -1}, previous[2] = {-1, -1};
  [[nodiscard]] int beyond(int vertex) const { return end[end[0] == vertex ? 1 : 0]; }
};

// Edges between the same vertices are found when one of these is looked at, in the list of its arms: of a
// vertex with more than two neighbours no more than three arms are met that do not become one at once, so all
// looks together take a time in proportion to the edges.
class Reduction {
 public:
  Reduction(int vertices, const std::vector<LinearEdge>& edges)
      : ground_(vertices), head_(at(vertices) + 1, -1), edges_(edges.size()) {
    bundles_.reserve(2 * edges.size());
    links_.reserve(2 * edges.size());
    for (const LinearEdge& edge : edges) {
      Bundle single;
      single.conductance = edge.conductance;
      if (edge.load >= 0) single.inside = {{1, edge.load}, {1, edge.load}};
      add(single, edge.from < 0 ? ground_ : edge.from, edge.to < 0 ? ground_ : edge.to);
    }
  }

  [[nodiscard]] bool up() {
    int left = ground_;
    std::vector<int> waiting;
    std::vector<char> gone(at(ground_), 0);
    for (int v = ground_ - 1; v >= 0; --v) waiting.push_back(v);
    while (!waiting.empty()) {
      const int v = waiting.back();
      waiting.pop_back();
      int arms[2] = {-1, -1};
      if (v == ground_ || gone[at(v)] || !join_parallel(v, arms)) continue;
      gone[at(v)] = 1;
      --left;
      for (const int bundle : arms) {
        if (bundle >= 0) waiting.push_back(links_[at(bundle)].beyond(v));
      }
      if (!take_out(v, arms)) return false;
    }
    return left == 0;
  }

  /// Per edge of the file.
  std::vector<EdgeView> down() {
    views_.resize(bundles_.size());
    for (const auto& [bundle, resistance] : alone_) views_[at(bundle)].resistance = resistance;
    for (std::size_t k = bundles_.size(); k-- > edges_;) {
      for (const int which : {0, 1}) hand_down(k, which);
    }
    views_.resize(edges_);
    return std::move(views_);
  }

 private:
  int& next(int arm) { return links_[at(arm / 2)].next[arm % 2]; }
  int& previous(int arm) { return links_[at(arm / 2)].previous[arm % 2]; }

  /// Its number. One that joins a vertex to itself is tied in nowhere.
  int add(const Bundle& bundle, int from, int to) {
    const int number = static_cast<int>(bundles_.size());
    bundles_.push_back(bundle);
    links_.push_back({{from, to}});
    if (from == to) return number;
    for (const int side : {0, 1}) {
      int& head = head_[at(links_.back().end[side])];
      links_.back().next[side] = head;
      if (head >= 0) previous(head) = 2 * number + side;
      head = 2 * number + side;
    }
    return number;
  }

  void unlink(int bundle) {
    const Link& link = links_[at(bundle)];
    for (const int side : {0, 1}) {
      const int before = link.previous[side], after = link.next[side];
      if (after >= 0) previous(after) = before;
      (before >= 0 ? next(before) : head_[at(link.end[side])]) = after;
    }
  }

  /// Makes one of the edges between v and each of its neighbours; false where there are more than two.
  bool join_parallel(int v, int (&arms)[2]) {
    for (int arm = head_[at(v)]; arm >= 0;) {
      const int bundle = arm / 2, neighbour = links_[at(bundle)].beyond(v);
      arm = next(arm);
      const auto same = [&](int other) { return other < 0 || links_[at(other)].beyond(v) == neighbour; };
      if (!same(arms[0]) && !same(arms[1])) return false;
      int& place = arms[same(arms[0]) ? 0 : 1];
      place = place < 0 ? bundle : in_parallel(place, bundle);
    }
    return true;
  }

  int in_parallel(int first, int second) {
    const Bundle &a = bundles_[at(first)], &b = bundles_[at(second)];
    const auto [from, to] = links_[at(first)].end;
    Bundle both{Bundle::Kind::parallel, {1, 1}, {first, second}, a.conductance + b.conductance};
    if (links_[at(second)].end[0] != from) both.sign[1] = -1;
    both.inside = merged(a.inside, scaled(b.inside, both.sign[1]));
    unlink(first);
    unlink(second);
    return add(both, from, to);
  }

  /// Takes out a vertex with these arms; false where it has no conductance.
  bool take_out(int v, const int (&arms)[2]) {
    for (const int bundle : arms) {
      if (bundle >= 0) unlink(bundle);
    }
    if (arms[1] >= 0) return in_series(arms[0], arms[1], v);
    if (arms[0] < 0) return true;
    const double conductance = bundles_[at(arms[0])].conductance;
    alone_.emplace_back(arms[0], 1 / conductance);
    return conductance > 0;
  }

  bool in_series(int first, int second, int v) {
    const Bundle &a = bundles_[at(first)], &b = bundles_[at(second)];
    const double sum = a.conductance + b.conductance;
    if (!(sum > 0)) return false;
    Bundle both{Bundle::Kind::series, {1, 1}, {first, second}, a.conductance / sum * b.conductance};
    if (links_[at(first)].end[1] != v) both.sign[0] = -1;
    if (links_[at(second)].end[0] != v) both.sign[1] = -1;
    both.inside = merged(scaled(a.inside, both.sign[0] * b.conductance / sum),
                         scaled(b.inside, both.sign[1] * a.conductance / sum));
    add(both, links_[at(first)].beyond(v), links_[at(second)].beyond(v));
    return true;
  }

  void hand_down(std::size_t k, int which) {
    const Bundle& whole = bundles_[k];
    const EdgeView& above = views_[k];
    const Bundle& part = bundles_[at(whole.part[which])];
    const Bundle& other = bundles_[at(whole.part[1 - which])];
    const Extremes beside = scaled(other.inside, whole.sign[1 - which]);
    EdgeView& view = views_[at(whole.part[which])];
    if (whole.kind == Bundle::Kind::parallel) {
      view = {above.resistance, merged(above.loads, scaled(beside, above.resistance))};
    } else {
      const double sum = part.conductance + other.conductance;
      const double own = other.conductance / sum;
      const double across = own * (part.conductance / sum) * above.resistance - 1 / sum;
      view = {own * own * above.resistance + 1 / sum,
              merged(scaled(above.loads, own), scaled(beside, across))};
    }
    view.loads = scaled(view.loads, whole.sign[which]);
  }

  int ground_;
  std::vector<int> head_;                      ///< per vertex, its first arm
  std::size_t edges_;                          ///< bundles that are edges of the file; they stand first
  std::vector<Bundle> bundles_;                ///< parts stand before what they became
  std::vector<Link> links_;                    ///< per bundle
  std::vector<std::pair<int, double>> alone_;  ///< bundles left alone at a vertex, and what they see
  std::vector<EdgeView> views_;                ///< per bundle
};

}  // namespace

Extremes merged(const Extremes& a, const Extremes& b) {
  return {better(a.most, b.most, 1) ? b.most : a.most, better(a.least, b.least, -1) ? b.least : a.least};
}

std::optional<std::vector<EdgeView>> view_edges(int vertices, const std::vector<LinearEdge>& edges) {
  Reduction reduction(vertices, edges);
  if (!reduction.up()) return std::nullopt;
  return reduction.down();
}

}  // namespace ohmtrail::solve
