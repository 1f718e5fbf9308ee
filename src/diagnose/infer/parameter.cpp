#include "diagnose/infer/parameter.hpp"

#include <cmath>

namespace ohmtrail::diagnose::inference {

double Parameter::value(double x) const {
  return scale == Scale::logarithmic ? centre * std::exp(x) : centre + x;
}

double Parameter::slope(double x) const {
  return scale == Scale::logarithmic ? centre * std::exp(x) : 1.0;
}

double Parameter::x_of(double value) const {
  return scale == Scale::logarithmic ? std::log(value / centre) : value - centre;
}

}  // namespace ohmtrail::diagnose::inference
