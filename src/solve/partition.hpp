#pragma once
#include <numeric>
#include <vector>

namespace ohmtrail::solve {

/// Which points hang together: disjoint sets by size, with path halving (Tarjan and van Leeuwen 1984).
class Partition {
 public:
  explicit Partition(int count)
      : parent_(static_cast<std::size_t>(count)), size_(static_cast<std::size_t>(count), 1) {
    std::iota(parent_.begin(), parent_.end(), 0);
  }

  [[nodiscard]] int find(int member) {
    while (parent(member) != member) member = parent(member) = parent(parent(member));
    return member;
  }

  /// False where they were together already.
  bool join(int a, int b) {
    a = find(a);
    b = find(b);
    if (a == b) return false;
    if (size(a) < size(b)) std::swap(a, b);
    parent(b) = a;
    size(a) += size(b);
    return true;
  }

 private:
  int& parent(int member) { return parent_[static_cast<std::size_t>(member)]; }
  int& size(int member) { return size_[static_cast<std::size_t>(member)]; }

  std::vector<int> parent_, size_;
};

}  // namespace ohmtrail::solve
