#pragma once

/// A voltage as an unevaluated sum of two doubles, so that the drop over a microohm beside a kiloohm keeps
/// its digits. Error-free sums: Knuth, The Art of Computer Programming 2, 4.2.2 theorem B. Needs
/// -ffp-contract=off.
namespace ohmtrail::solve {

struct Precise {
  double hi = 0, lo = 0;
};

inline Precise two_sum(double a, double b) {
  const double sum = a + b;
  const double b_seen = sum - a;
  return {sum, (a - (sum - b_seen)) + (b - b_seen)};
}

inline Precise add(Precise a, Precise b) {
  const Precise sum = two_sum(a.hi, b.hi);
  return two_sum(sum.hi, sum.lo + (a.lo + b.lo));
}

inline Precise add(Precise a, double b) {
  return add(a, Precise{b, 0});
}

inline Precise negate(Precise a) {
  return {-a.hi, -a.lo};
}

/// a − b, rounded once.
inline double difference(Precise a, Precise b) {
  const Precise sum = two_sum(a.hi, -b.hi);
  return sum.hi + (sum.lo + (a.lo - b.lo));
}

}  // namespace ohmtrail::solve
