#pragma once
#include "plan/design_space.hpp"

/// The voltage that elements in series lose at a current.
namespace ohmtrail::plan {

/// V = (cold + k I²) I. Where loads of short duty run, how far a wire warms depends on what else it carries:
/// k then lies between `least` and `most`, which are equal otherwise.
struct Curve {
  double cold = 0;             ///< Ω, before the wire's own current warms it
  double least = 0, most = 0;  ///< Ω/A²

  void add(const ElementValue& value);
  [[nodiscard]] double least_ohms(double amperes) const { return cold + least * amperes * amperes; }
  [[nodiscard]] double most_ohms(double amperes) const { return cold + most * amperes * amperes; }
};

}  // namespace ohmtrail::plan
