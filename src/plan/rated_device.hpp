#pragma once
#include <limits>
#include <vector>

#include "plan/design_space.hpp"
#include "plan/guards.hpp"
#include "plan/interval.hpp"

/// Fuses and breakers whose rating, and with it their resistance, depends on the cable that they guard.
namespace ohmtrail::plan {

/// An overcurrent device that guards runs in scope. It keeps its rating where that serves,
/// else takes the least that does: a design decides its resistance by the ampacity of what it guards.
struct Device {
  int element = -1;
  int arm = -1;                ///< of a radial case
  std::vector<int> runs;       ///< in scope, that it guards
  std::vector<double> ladder;  ///< A, ratings that it may have, rising
  std::vector<double> ohms;    ///< Ω, new with each of these
  double rated = 0;            ///< A, as it is
  double found_ohms = 0;       ///< Ω, as it is
  /// A, in any design: its largest current over the cases.
  Interval most{0, std::numeric_limits<double>::infinity()};

  /// Ω, where the least ampacity of its runs lies in an interval.
  [[nodiscard]] Interval resistance(const Interval& ampacity) const;
};

/// Those of one case, file order.
[[nodiscard]] std::vector<Device> devices_of(const DesignSpace& space, const network::Network& network,
                                             const Guards& guards);

}  // namespace ohmtrail::plan
