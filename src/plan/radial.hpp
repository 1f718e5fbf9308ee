#pragma once
#include <optional>
#include <vector>

#include "plan/curve.hpp"
#include "plan/design_space.hpp"
#include "plan/guards.hpp"

/// Systems with one supply and no rings, where every current is a sum of load currents: as plain numbers.
namespace ohmtrail::plan {

/// Elements that always carry the same current: one conductor of a run in scope, or fixed ones.
struct Arm {
  int run = -1;                      ///< run in scope; −1: fixed
  std::vector<Curve> choices;        ///< per candidate; one entry where fixed
  std::vector<double> most_amperes;  ///< A, per candidate: more is above its ampacity, whatever the duty
  std::vector<int> loads;            ///< indices of the loads that it feeds, rising
};

enum class Draw { current, power, resistance };

struct RadialLoad {
  int element = -1;
  Draw draw = Draw::current;
  double size = 0;        ///< A, W or Ω
  double limit = 0;       ///< V of drop from the supply's posts; infinite: none
  std::vector<int> path;  ///< arms from the supply to the load and back, links of the string included
};

/// An overcurrent device that carries current.
struct Device {
  std::vector<int> loads;      ///< whose currents it carries
  std::vector<int> runs;       ///< runs in scope that it guards
  std::vector<double> ladder;  ///< A, ratings that it may have, rising
};

struct RadialCase {
  double emf = 0;      ///< V, the string's
  double battery = 0;  ///< Ω, the string's
  std::vector<Arm> arms;
  std::vector<RadialLoad> loads;
  std::vector<Device> devices;
};

/// Empty where the case has rings, several supplies, chargers, isolators, converters or loads across part of
/// a string.
[[nodiscard]] std::optional<RadialCase> radial_case(const DesignSpace& space, const CaseSpace& in_case,
                                                    const Guards& guards);

}  // namespace ohmtrail::plan
