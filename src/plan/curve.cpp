#include "plan/curve.hpp"

namespace ohmtrail::plan {

void Curve::add(const ElementValue& value) {
  cold += value.at(0);
  if (value.alpha <= 0 || value.rated <= 0) return;
  const double k = value.ohms * value.alpha * value.rise / (value.rated * value.rated);
  least += k * value.duty;
  most += k;
}

}  // namespace ohmtrail::plan
