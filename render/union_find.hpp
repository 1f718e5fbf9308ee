#pragma once
#include <cstddef>
#include <numeric>
#include <vector>

namespace ohmtrail::render {

/// Sets that are joined two by two.
class UnionFind {
 public:
  explicit UnionFind(std::size_t size) : parent_(size) { std::iota(parent_.begin(), parent_.end(), 0); }
  int find(int a) {
    while (parent_[index(a)] != a) a = parent_[index(a)] = parent_[index(parent_[index(a)])];
    return a;
  }
  void join(int a, int b) { parent_[index(find(b))] = find(a); }

 private:
  static std::size_t index(int i) { return static_cast<std::size_t>(i); }
  std::vector<int> parent_;
};

}  // namespace ohmtrail::render
