#pragma once
#include <cmath>
#include <cstdint>
#include <random>

namespace ohmtrail::test {

/// Random numbers that are the same on every standard library.
class SeededRandom {
 public:
  explicit SeededRandom(std::uint64_t seed) : engine_(seed) {}

  double uniform() { return (static_cast<double>(engine_() >> 11) + 0.5) / 9007199254740992.0; }
  double uniform(double low, double high) { return low + (high - low) * uniform(); }
  int integer(int low, int high) { return low + static_cast<int>(uniform() * (high - low + 1)); }
  bool chance(double share) { return uniform() < share; }
  double normal() {
    const double radius = std::sqrt(-2 * std::log(uniform())), angle = 6.283185307179586 * uniform();
    return radius * std::cos(angle);
  }
  double normal(double mean, double sd) { return mean + sd * normal(); }

 private:
  std::mt19937_64 engine_;
};

}  // namespace ohmtrail::test
