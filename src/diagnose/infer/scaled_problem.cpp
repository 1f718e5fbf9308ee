#include "diagnose/infer/scaled_problem.hpp"

#include <algorithm>
#include <cmath>

#include "diagnose/infer/optimum.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

// A column that cannot move any reading by a ten-millionth of its error, even tenfold up, says nothing.
std::vector<int> informed_columns(const Model& model, const Linearisation& near, const Eigen::VectorXd& sd) {
  std::vector<int> out;
  for (int p = 0; p < static_cast<int>(model.parameters.size()); ++p) {
    const Parameter& parameter = model.parameters[static_cast<std::size_t>(p)];
    double largest = 0;
    for (Eigen::Index i = 0; i < near.by_value.rows(); ++i) {
      largest = std::max(
          largest, std::abs(near.by_value(i, p)) / model.observations[static_cast<std::size_t>(i)].sigma);
    }
    const double size =
        parameter.scale == Scale::logarithmic ? std::max(near.value[p], parameter.centre) : 1.0;
    if (largest * size * sd[p] > 1e-7) {
      out.push_back(p);
    }
  }
  return out;
}

Eigen::VectorXd weights(const Model& model, const Hypothesis& hypothesis) {
  Eigen::VectorXd out(static_cast<Eigen::Index>(model.observations.size()));
  for (Eigen::Index i = 0; i < out.size(); ++i) {
    out[i] = hypothesis.is_wrong(static_cast<int>(i))
                 ? 0
                 : 1 / model.observations[static_cast<std::size_t>(i)].sigma;
  }
  return out;
}

}  // namespace

ScaledProblem::ScaledProblem(const Model& its_model, const Linearisation& its_near,
                             const Hypothesis& its_hypothesis)
    : model(its_model),
      near(its_near),
      hypothesis(its_hypothesis),
      weight(weights(its_model, its_hypothesis)),
      mean(static_cast<Eigen::Index>(its_model.parameters.size())),
      sd(mean.size()) {
  for (Eigen::Index p = 0; p < mean.size(); ++p) {
    const Normal& prior = prior_of(model, hypothesis, static_cast<int>(p));
    mean[p] = prior.mean;
    sd[p] = prior.sd;
  }
  columns = informed_columns(model, near, sd);
  weighted = directions_of(weight.asDiagonal() * near.by_value(Eigen::all, columns));
}

Eigen::VectorXd ScaledProblem::residual(const Eigen::VectorXd& x) const {
  Eigen::VectorXd out(weight.size());
  const Eigen::VectorXd predicted = near.predicted + near.by_value * (values_at(model, x) - near.value);
  for (Eigen::Index i = 0; i < out.size(); ++i) {
    const Observation& o = model.observations[static_cast<std::size_t>(i)];
    out[i] = (o.measured - predicted[i]) / o.sigma;
  }
  return out;
}

double ScaledProblem::cost(const Eigen::VectorXd& x) const {
  const Eigen::VectorXd right = (weight.array() > 0).select(residual(x), 0.0);
  return 0.5 * (((x - mean).cwiseQuotient(sd)).squaredNorm() + right.squaredNorm());
}

// The directions are the same everywhere, only their lengths change.
ParallelColumns ScaledProblem::sensitivity(const Eigen::VectorXd& x) const {
  Eigen::VectorXd scale(static_cast<Eigen::Index>(columns.size()));
  for (std::size_t k = 0; k < columns.size(); ++k) {
    const int p = columns[k];
    scale[static_cast<Eigen::Index>(k)] = model.parameters[static_cast<std::size_t>(p)].slope(x[p]) * sd[p];
  }
  return merge_scaled(weighted, scale);
}

Eigen::VectorXd ScaledProblem::target(const ParallelColumns& sensitivity, const Eigen::VectorXd& x) const {
  const Eigen::VectorXd right = (weight.array() > 0).select(residual(x), 0.0);
  const Eigen::VectorXd departure = (x - mean).cwiseQuotient(sd)(columns);
  return right + sensitivity.times(departure);
}

Eigen::VectorXd ScaledProblem::unknowns(const Eigen::VectorXd& scaled) const {
  Eigen::VectorXd out = mean;
  for (std::size_t k = 0; k < columns.size(); ++k) {
    const int p = columns[k];
    out[p] += sd[p] * scaled[static_cast<Eigen::Index>(k)];
  }
  return out;
}

}  // namespace ohmtrail::diagnose::inference
