#pragma once
#include <optional>
#include <vector>

#include "plan/curve.hpp"
#include "plan/design_space.hpp"
#include "plan/guards.hpp"
#include "plan/rated_device.hpp"

/// Systems without rings of wire, fed by one string of batteries or by several in parallel: as plain numbers.
/// Every current is a sum of load currents or the current of one string.
namespace ohmtrail::plan {

/// Elements that always carry the same current: of one run in scope, or fixed ones.
struct Arm {
  int run = -1;                      ///< run in scope; −1: fixed
  std::vector<Curve> choices;        ///< per candidate; one entry where fixed
  std::vector<double> most_amperes;  ///< A, per candidate: more is above its ampacity, whatever the duty
  std::vector<int> loads;            ///< indices of the loads that it feeds, rising
  int string = -1;                   ///< or the string whose current it carries
  int device = -1;                   ///< index into RadialCase::devices of the one that it is
};

/// Batteries in series. Several strings stand in parallel across the two points from which all loads are fed.
struct BankString {
  double emf = 0;         ///< V
  double ohms = 0;        ///< Ω, of the batteries
  std::vector<int> arms;  ///< that carry its current alone, links included; none where it is the only string
};

enum class Draw { current, power, resistance };

struct RadialLoad {
  int element = -1;
  Draw draw = Draw::current;
  double size = 0;        ///< A, W or Ω
  double limit = 0;       ///< V of drop from the supply's posts; infinite: none
  std::vector<int> path;  ///< arms from the bank to the load and back; links of an only string included
};

struct RadialCase {
  std::vector<BankString> strings;
  std::vector<Arm> arms;
  std::vector<RadialLoad> loads;
  std::vector<Device> devices;

  [[nodiscard]] double highest_emf() const;
};

/// Empty where the case has rings of wire, chargers, isolators, converters, loads across part of a string, or
/// strings that are not plainly in parallel.
[[nodiscard]] std::optional<RadialCase> radial_case(const DesignSpace& space, const CaseSpace& in_case,
                                                    const Guards& guards);

}  // namespace ohmtrail::plan
