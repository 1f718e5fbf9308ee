#include "diagnose/infer/optimum.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace ohmtrail::diagnose::inference {
namespace {

constexpr int most_relinearisations = 8;

// Largest departure of the real network from the linear function, in standard deviations of the readings.
double departure(const Model& model, const Optimum& optimum, const Eigen::VectorXd& predicted) {
  double largest = 0;
  for (Eigen::Index i = 0; i < predicted.size(); ++i) {
    const Observation& o = model.observations[static_cast<std::size_t>(i)];
    if (!optimum.hypothesis.is_wrong(static_cast<int>(i))) {
      const double linear = o.measured - optimum.residual[i] * o.sigma;
      largest = std::max(largest, std::abs(predicted[i] - linear) / o.sigma);
    }
  }
  return largest;
}

// Predictions at x, going back towards `from` until the network has a solution.
std::optional<Eigen::VectorXd> predict_towards(Forward& forward, const Eigen::VectorXd& from,
                                               Eigen::VectorXd& x) {
  for (int k = 0; k < 6; ++k) {
    if (auto predicted = forward.predict(values_at(forward.model(), x))) {
      return predicted;
    }
    x = 0.5 * (x + from);
  }
  return std::nullopt;
}

}  // namespace

Eigen::VectorXd values_at(const Model& model, const Eigen::VectorXd& x) {
  Eigen::VectorXd out(x.size());
  for (Eigen::Index p = 0; p < x.size(); ++p) {
    out[p] = model.parameters[static_cast<std::size_t>(p)].value(x[p]);
  }
  return out;
}

Eigen::VectorXd xs_at(const Model& model, const Eigen::VectorXd& value) {
  Eigen::VectorXd out(value.size());
  for (Eigen::Index p = 0; p < value.size(); ++p) {
    out[p] = model.parameters[static_cast<std::size_t>(p)].x_of(value[p]);
  }
  return out;
}

Eigen::VectorXd prior_means(const Model& model, const Hypothesis& hypothesis) {
  Eigen::VectorXd out(static_cast<Eigen::Index>(model.parameters.size()));
  for (Eigen::Index p = 0; p < out.size(); ++p) {
    out[p] = prior_of(model, hypothesis, static_cast<int>(p)).mean;
  }
  return out;
}

std::optional<Optimum> optimise(Forward& forward, Optimum best) {
  constexpr double exact = 0.02, close_enough = 0.05, nearly = 0.5;
  const Model& model = forward.model();
  const Hypothesis hypothesis = best.hypothesis;
  Eigen::VectorXd from = xs_at(model, best.near.value);
  for (int k = 0; k < most_relinearisations; ++k) {
    Eigen::VectorXd x = best.x;
    const auto predicted = predict_towards(forward, from, x);
    if (!predicted) {
      return std::nullopt;
    }
    const double off = departure(model, best, *predicted);
    if (off < exact) {
      break;
    }
    Linearisation here{values_at(model, x), *predicted, best.near.by_value};
    if (off > nearly) {
      auto again = forward.linearise(here.value);
      if (!again) {
        return std::nullopt;
      }
      here = std::move(*again);
    }
    from = x;
    best = optimise_linear(model, here, hypothesis, x);
    if (off < close_enough) {
      break;
    }
  }
  return best;
}

}  // namespace ohmtrail::diagnose::inference
