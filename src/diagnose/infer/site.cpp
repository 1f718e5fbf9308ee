#include "diagnose/infer/site.hpp"

#include <cmath>

namespace ohmtrail::diagnose::inference {

double log_integral(const Site& site, double at, double precision) {
  constexpr double log_two_pi = 1.8378770664093453;
  const double both = site.precision + precision, apart = at - site.at;
  return site.log_scale + 0.5 * (log_two_pi - std::log(both)) -
         0.5 * apart * apart * precision * site.precision / both;
}

}  // namespace ohmtrail::diagnose::inference
