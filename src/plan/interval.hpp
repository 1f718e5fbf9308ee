#pragma once
#include <algorithm>
#include <limits>

namespace ohmtrail::plan {

struct Interval {
  double low = 0, high = 0;

  static Interval none() {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    return {infinity, -infinity};
  }
  void include(double value) {
    low = std::min(low, value);
    high = std::max(high, value);
  }
  /// False where nothing is left.
  bool narrow(const Interval& to) {
    low = std::max(low, to.low);
    high = std::min(high, to.high);
    return low <= high;
  }
};

}  // namespace ohmtrail::plan
