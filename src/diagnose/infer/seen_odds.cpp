#include "diagnose/infer/seen_odds.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace ohmtrail::diagnose::inference {
namespace {

double factor(trade::Observation found) {
  switch (found) {
    case trade::Observation::looks_sound:
      return 0.4;
    case trade::Observation::not_reached:
      return 1;
    case trade::Observation::wing_nut:
      return 2;
    case trade::Observation::shrunken_jacket:
    case trade::Observation::bulging_jacket:
    case trade::Observation::white_corrosion:
    case trade::Observation::pitted:
    case trade::Observation::warm:
      return 5;
    case trade::Observation::broken_strands:
    case trade::Observation::washer_under_lug:
    case trade::Observation::darkened:
      return 6;
    case trade::Observation::green_corrosion:
    case trade::Observation::loose_nut:
    case trade::Observation::bulged_case:
    case trade::Observation::frozen:
      return 8;
    case trade::Observation::moves_reading:
      return 15;
    case trade::Observation::turns_by_hand:
    case trade::Observation::melted:
      return 20;
  }
  return 1;
}

}  // namespace

double seen_odds(const netlist::Seen& seen) {
  std::vector<double> factors;
  for (const trade::Observation found : seen) {
    factors.push_back(factor(found));
  }
  std::sort(factors.begin(), factors.end(), std::greater<>());
  double odds = 1;
  for (std::size_t k = 0; k < factors.size(); ++k) {
    odds *= k == 0 || factors[k] < 1 ? factors[k] : std::sqrt(factors[k]);
  }
  return odds;
}

}  // namespace ohmtrail::diagnose::inference
