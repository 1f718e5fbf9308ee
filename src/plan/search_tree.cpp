#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>

#include "plan/box_cut.hpp"
#include "plan/box_shrink.hpp"
#include "plan/box_split.hpp"
#include "plan/incumbent.hpp"
#include "plan/local_search.hpp"
#include "plan/search.hpp"
#include "plan/tree_cases.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

/// Labels kept in a front: at the root, and in the many smaller boxes.
constexpr std::size_t kRootLabels = 4000, kLabels = 1000;
/// Shares of the drop limits at which designs are looked for that surely keep them.
constexpr double kStrict[] = {0.995, 0.985, 0.97, 0.95, 0.92, 0.88, 0.8, 0.7};

class TreeSearch {
 public:
  TreeSearch(const DesignSpace& space, std::vector<RadialCase> cases, std::vector<LoadTree> trees,
             const Judge& judge)
      : space_(space),
        cases_(std::move(cases)),
        judge_(judge),
        local_(space, cases_, judge),
        joint_(space, cases_, std::move(trees)),
        best_(space, judge) {}

  Found run() {
    Box box = full_box(space_);
    auto known = shrink_box(cases_, space_, box);
    if (!known.empty()) narrow_devices(known, cases_), known = shrink_box(cases_, space_, box);
    if (known.empty()) return best_.proved();
    full_ = box;
    double cheapest = 0;
    for (std::size_t k = 0; k < box.size(); ++k) {
      cheapest += cheapest_of(k, box[k]);
      dearest_ += dearest_of(k, box[k]);
    }
    best_.raise_bound(cheapest);
    start(box, known);
    open_.push({cheapest, std::move(box)});
    while (judge_.in_time()) {
      BoxNode node = open_.top();
      open_.pop();
      if (node.bound >= best_.wanted()) return best_.proved();
      labels_ = best_.found().rounds == 0 ? kRootLabels : kLabels;
      best_.count_round();
      visit(std::move(node));
      if (open_.empty()) return best_.proved();
      best_.raise_bound(open_.top().bound);
      best_.report();
    }
    return best_.found();
  }

 private:
  [[nodiscard]] double ceiling() const { return std::min(best_.wanted(), dearest_ * (1 + 1e-6)); }

  [[nodiscard]] double cheapest_of(std::size_t run, const std::vector<bool>& allowed) const {
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t c = 0; c < allowed.size(); ++c)
      if (allowed[c]) least = std::min(least, space_.runs[run].candidates[c].cost);
    return least;
  }

  [[nodiscard]] double dearest_of(std::size_t run, const std::vector<bool>& allowed) const {
    double most = 0;
    for (std::size_t c = 0; c < allowed.size(); ++c)
      if (allowed[c]) most = std::max(most, space_.runs[run].candidates[c].cost);
    return most;
  }

  // --- designs

  /// The thickest and, with a little less than the limits, the cheapest that the bound proposes, thinned.
  void start(const Box& box, const std::vector<Bounds>& known) {
    activate_heaviest(known);
    const Design thickest = LocalSearch::thickest(box);
    if (local_.keeps_limits(thickest)) best_.offer(local_.thinned(thickest, box));
    for (const double share : kStrict) {
      if (!judge_.in_time()) return;
      const auto joint = joint_.bound({box, known, ceiling(), kLabels, share});
      if (std::isinf(joint.bound)) return;
      if (activate_broken(joint.design, known) || !local_.keeps_limits(joint.design)) continue;
      best_.offer(local_.thinned(joint.design, box));
      return best_.report();
    }
  }

  void activate_heaviest(const std::vector<Bounds>& known) {
    std::size_t heaviest = 0;
    double most = -1;
    for (std::size_t s = 0; s < known.size(); ++s) {
      double sum = 0;
      for (const Interval& amperes : known[s].load_amperes) sum += amperes.low;
      if (sum > most) most = sum, heaviest = s;
    }
    joint_.activate(heaviest, known);
  }

  /// Lets those cases take part whose limits a design breaks that the others proposed. True where one was
  /// new.
  bool activate_broken(const Design& design, const std::vector<Bounds>& known) {
    bool any = false;
    const Box point = point_box(space_, design);
    for (std::size_t s = 0; s < cases_.size(); ++s) {
      if (joint_.is_active(s) || bounds(cases_[s], space_, point).possible) continue;
      joint_.activate(s, known);
      any = true;
    }
    return any;
  }

  // --- boxes

  void visit(BoxNode node) {
    while (true) {
      if (!judge_.in_time()) return open_.push(std::move(node));
      const auto known = shrink_box(cases_, space_, node.box);
      if (known.empty()) return;
      const TreeQuestion question{node.box, known, ceiling(), labels_};
      const auto joint = joint_.bound(question);
      node.bound = std::max(node.bound, joint.bound);
      if (node.bound >= best_.wanted()) return;
      if (activate_broken(joint.design, known)) {
        joint_.improve(question);
        continue;
      }
      examine(joint.design, node.box);
      if (is_point(node.box)) return;
      if (take_away(joint.least, node.box)) continue;
      if (!cut_off(node, joint)) branch(node, known, joint.design);
      return;
    }
  }

  void examine(const Design& design, const Box& box) {
    if (is_point(box) || local_.keeps_limits(design)) return best_.offer(design);
    if (best_.found().rounds < 50 || best_.found().rounds % 16 == 0)
      if (const auto mended = local_.mended(design, box, best_.wanted()))
        best_.offer(local_.thinned(*mended, full_));
    if (best_.found().rounds > 3 && best_.found().rounds % 64 != 0) return;
    if (const auto repaired = local_.repaired(design, full_)) best_.offer(*repaired);
  }

  /// Candidates whose every design is too dear. True where so many went that it is worth to bound anew.
  bool take_away(const std::vector<std::vector<double>>& least, Box& box) const {
    int gone = 0, left = 0;
    for (std::size_t k = 0; k < box.size(); ++k)
      for (std::size_t c = 0; c < box[k].size(); ++c) {
        if (!box[k][c]) continue;
        if (least[k][c] >= best_.wanted()) box[k][c] = false, ++gone;
        left += box[k][c] ? 1 : 0;
      }
    return gone > 0 && 8 * gone >= left - static_cast<int>(box.size());
  }

  /// Where the bounds refuse the design that was proposed: grows the refused box around it, and opens what is
  /// left as boxes of their own, one a run that must then choose otherwise.
  bool cut_off(const BoxNode& node, const JointBound& joint) {
    const Box point = point_box(space_, joint.design);
    for (std::size_t s = 0; s < cases_.size(); ++s) {
      const Bounds broken = bounds(cases_[s], space_, point);
      if (broken.possible) continue;
      const auto runs = off_path_first(cases_[s], broken, node.box.size());
      const Box refused = grow_refused_box(cases_[s], space_, node.box, joint.design, runs);
      for (BoxNode& outside : outside_of(node, refused, joint.least, best_.wanted()))
        open_.push(std::move(outside));
      return true;
    }
    return false;
  }

  /// In two at the run whose choice leaves most open what the others carry: the power lost in it, widest.
  void branch(const BoxNode& node, const std::vector<Bounds>& known, const Design& design) {
    int widest = -1;
    double most = -1;
    for (std::size_t s = 0; s < cases_.size(); ++s)
      for (std::size_t a = 0; joint_.is_active(s) && a < cases_[s].arms.size(); ++a) {
        const int run = cases_[s].arms[a].run;
        if (run < 0 || std::count(node.box[at(run)].begin(), node.box[at(run)].end(), true) < 2) continue;
        const Interval& volts = known[s].arm_volts[a];
        const double lost = (volts.high - volts.low) * known[s].arm_amperes[a].high;
        if (lost > most) most = lost, widest = run;
      }
    if (widest < 0) widest = first_open(node.box);
    for (BoxNode& half : split_at(node, widest, design[at(widest)])) open_.push(std::move(half));
  }

  static int first_open(const Box& box) {
    for (std::size_t k = 0; k < box.size(); ++k)
      if (std::count(box[k].begin(), box[k].end(), true) > 1) return static_cast<int>(k);
    return 0;
  }

  const DesignSpace& space_;
  std::vector<RadialCase> cases_;
  const Judge& judge_;
  LocalSearch local_;
  TreeCases joint_;
  Box full_;  ///< all that is not hopeless
  double dearest_ = 0;
  std::size_t labels_ = kRootLabels;
  std::priority_queue<BoxNode> open_;
  Incumbent best_;
};

}  // namespace

Found search_tree(const DesignSpace& space, const std::vector<RadialCase>& cases, const Judge& judge) {
  std::vector<LoadTree> trees;
  for (const RadialCase& in_case : cases) {
    auto tree = load_tree(in_case);
    if (!tree) return search_radial(space, cases, judge);
    trees.push_back(std::move(*tree));
  }
  return TreeSearch(space, cases, std::move(trees), judge).run();
}

}  // namespace ohmtrail::plan
