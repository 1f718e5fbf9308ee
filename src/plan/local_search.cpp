#include "plan/local_search.hpp"

#include <algorithm>
#include <utility>

#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

/// The next thicker candidate in the box, or the same.
int thicker(const std::vector<bool>& allowed, int than) {
  for (std::size_t c = at(than) + 1; c < allowed.size(); ++c)
    if (allowed[c]) return static_cast<int>(c);
  return than;
}

}  // namespace

bool LocalSearch::keeps_limits(const Design& design) const {
  const Box point = point_box(space_, design);
  bool certain = true;
  for (const RadialCase& in_case : cases_) {
    const Bounds known = bounds(in_case, space_, point);
    if (!known.possible) return false;
    certain = certain && known.certain;
  }
  return certain || judge_.accepts(design);
}

Design LocalSearch::thinned(Design design, const Box& box) const {
  for (bool moved = true; moved && judge_.in_time();) {
    moved = false;
    for (std::size_t k = 0; k < design.size(); ++k)
      for (const int candidate : cheaper(k, design[k], box)) {
        const int was = std::exchange(design[k], candidate);
        if (keeps_limits(design)) {
          moved = true;
          break;
        }
        design[k] = was;
      }
  }
  return design;
}

/// The two smallest steps down in cost.
std::vector<int> LocalSearch::cheaper(std::size_t run, int than, const Box& box) const {
  const auto& candidates = space_.runs[run].candidates;
  std::vector<int> found;
  for (std::size_t c = 0; c < candidates.size(); ++c)
    if (box[run][c] && candidates[c].cost < candidates[at(than)].cost) found.push_back(static_cast<int>(c));
  std::stable_sort(found.begin(), found.end(),
                   [&](int a, int b) { return candidates[at(a)].cost > candidates[at(b)].cost; });
  if (found.size() > 2) found.resize(2);
  return found;
}

std::optional<Design> LocalSearch::mended(const Design& design, const Box& box, double below) const {
  struct Change {
    double cost;
    std::size_t run;
    int candidate;
  };
  std::vector<Change> changes;
  const double before = cost(space_, design);
  for (std::size_t k = 0; k < design.size(); ++k)
    for (std::size_t c = 0; c < box[k].size(); ++c) {
      const auto& candidates = space_.runs[k].candidates;
      const double after = before + candidates[c].cost - candidates[at(design[k])].cost;
      if (box[k][c] && static_cast<int>(c) > design[k] && after < below)
        changes.push_back({after, k, static_cast<int>(c)});
    }
  std::sort(changes.begin(), changes.end(), [](const Change& a, const Change& b) { return a.cost < b.cost; });
  for (const Change& change : changes) {
    Design mended = design;
    mended[change.run] = change.candidate;
    if (!judge_.in_time()) break;
    if (keeps_limits(mended)) return mended;
  }
  return std::nullopt;
}

std::optional<Design> LocalSearch::repaired(Design design, const Box& box) const {
  while (judge_.in_time()) {
    if (keeps_limits(design)) return thinned(std::move(design), box);
    bool moved = false;
    for (std::size_t k = 0; k < design.size(); ++k) {
      const int next = thicker(box[k], design[k]);
      moved = moved || next != design[k];
      design[k] = next;
    }
    if (!moved) break;
  }
  return std::nullopt;
}

Design LocalSearch::thickest(const Box& box) {
  Design design;
  for (const auto& allowed : box) {
    int last = static_cast<int>(allowed.size()) - 1;
    while (last > 0 && !allowed[at(last)]) --last;
    design.push_back(last);
  }
  return design;
}

}  // namespace ohmtrail::plan
