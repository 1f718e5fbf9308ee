#pragma once
#include <cstddef>
#include <numeric>
#include <utility>
#include <vector>

#include "solve/precise.hpp"
#include "units/index.hpp"

namespace ohmtrail::solve {

/// Disjoint sets whose members each know their voltage above their set's root.
class DisjointSets {
 public:
  explicit DisjointSets(int count)
      : parent_(static_cast<std::size_t>(count)), above_(parent_.size()), size_(parent_.size(), 1) {
    std::iota(parent_.begin(), parent_.end(), 0);
  }

  struct Place {
    int root;
    Precise above;  ///< V(member) − V(root)
  };

  [[nodiscard]] Place find(int member) const {
    Precise above;
    while (parent_[at(member)] != member) {
      above = add(above, above_[at(member)]);
      member = parent_[at(member)];
    }
    return {member, above};
  }

  /// Joins the sets of a and b so that V(a) − V(b) = volts. They must be apart.
  void join(int a, int b, double volts) {
    Place first = find(a);
    Place second = find(b);
    Precise rise = add(add(second.above, volts), negate(first.above));  // root of a above root of b
    if (size_[at(first.root)] > size_[at(second.root)]) {
      std::swap(first, second);
      rise = negate(rise);
    }
    parent_[at(first.root)] = second.root;
    above_[at(first.root)] = rise;
    size_[at(second.root)] += size_[at(first.root)];
  }

 private:
  std::vector<int> parent_;
  std::vector<Precise> above_;
  std::vector<int> size_;  // by size instead of path compression: find() stays const and log n deep
};

}  // namespace ohmtrail::solve
