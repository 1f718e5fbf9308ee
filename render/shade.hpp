#pragma once
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"
#include "render/scene.hpp"

namespace ohmtrail::render {

/// Colours by what is lost against what is allowed. Allowed is the strictest drop limit of the loads that
/// hang on the same supply, in volts; where none has a limit, the system's limit for other loads.
class Shade {
 public:
  Shade(const netlist::System& system, const solve::CaseSolution& solved);

  [[nodiscard]] double allowed(int element) const;
  /// Of the element's own drop; idle elements are grey.
  [[nodiscard]] Colour colour(int element) const;
  [[nodiscard]] bool idle(int element) const;
  /// The smallest and largest allowed loss in the drawing, V.
  [[nodiscard]] double least_allowed() const { return least_; }
  [[nodiscard]] double most_allowed() const { return most_; }

 private:
  const solve::CaseSolution& solved_;
  std::vector<double> allowed_;  ///< per element
  double least_ = 0, most_ = 0;
};

/// Width of a conductor's line for its copper area in m², in points.
[[nodiscard]] double line_width(double area);

}  // namespace ohmtrail::render
