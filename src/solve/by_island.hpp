#pragma once
#include <algorithm>
#include <functional>
#include <vector>

#include "units/index.hpp"

namespace ohmtrail::solve {

/// Sums (or maxima) per island of values that come in long stretches of one island. The present island's is
/// kept at hand: to fetch and store it for every value would make each wait for the one before it. The totals
/// are in their vector once this is gone.
template <class Combine>
class ByIsland {
 public:
  explicit ByIsland(std::vector<double>& totals) : totals_(totals) {}
  ByIsland(const ByIsland&) = delete;
  ByIsland& operator=(const ByIsland&) = delete;
  ~ByIsland() { store(); }

  void add(int island, double value) {
    if (island != island_) {
      store();
      island_ = island;
      total_ = totals_[at(island)];
    }
    total_ = Combine{}(total_, value);
  }

 private:
  void store() {
    if (island_ >= 0) totals_[at(island_)] = total_;
  }

  std::vector<double>& totals_;
  int island_ = -1;
  double total_ = 0;
};

struct Larger {
  double operator()(double a, double b) const { return std::max(a, b); }
};

using SumByIsland = ByIsland<std::plus<>>;
using LargestByIsland = ByIsland<Larger>;

}  // namespace ohmtrail::solve
