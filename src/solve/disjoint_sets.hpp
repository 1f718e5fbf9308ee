#pragma once
#include <cstddef>
#include <numeric>
#include <utility>
#include <vector>

#include "solve/precise.hpp"
#include "units/index.hpp"

namespace ohmtrail::solve {

/// Disjoint sets whose members each know their voltage above their set's root. Most circuits join none: until
/// the first is joined they take no room.
class DisjointSets {
 public:
  explicit DisjointSets(int count) : count_(at(count)) {}

  /// Whether each member is still a set of its own.
  [[nodiscard]] bool all_apart() const { return parent_.empty(); }

  struct Place {
    int root;
    Precise above;  ///< V(member) − V(root)
  };

  [[nodiscard]] Place find(int member) const {
    Precise above;
    if (all_apart()) return {member, above};
    while (parent_[at(member)] != member) {
      above = add(above, above_[at(member)]);
      member = parent_[at(member)];
    }
    return {member, above};
  }

  /// Joins the sets of a and b so that V(a) − V(b) = volts. They must be apart.
  void join(int a, int b, double volts) {
    if (all_apart()) make_room();
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
  void make_room() {
    parent_.resize(count_);
    std::iota(parent_.begin(), parent_.end(), 0);
    above_.resize(count_);
    size_.resize(count_, 1);
  }

  std::size_t count_;
  std::vector<int> parent_;
  std::vector<Precise> above_;
  std::vector<int> size_;  // by size instead of path compression: find() stays const and log n deep
};

}  // namespace ohmtrail::solve
