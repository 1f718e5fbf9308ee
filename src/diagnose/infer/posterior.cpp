#include "diagnose/infer/posterior.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "diagnose/infer/mixing.hpp"
#include "diagnose/infer/weighing.hpp"

namespace ohmtrail::diagnose::inference {

std::shared_ptr<Posterior> find_posterior(Survey survey, const InferOptions& options) {
  auto out = std::make_shared<Posterior>();
  out->survey = std::move(survey);
  Forward forward(out->survey.model);
  auto weighing = weigh_hypotheses(forward, options);
  if (!weighing) {
    return nullptr;
  }
  mix(std::move(*weighing), options, *out);
  return out;
}

double deviation_of(const Model& model, const Optimum& optimum, const Eigen::VectorXd& by_value) {
  const auto c = static_cast<Eigen::Index>(optimum.columns.size());
  Eigen::VectorXd scaled(c);
  double uninformed = 0;
  for (Eigen::Index p = 0, k = 0; p < by_value.size(); ++p) {
    const Parameter& unknown = model.parameters[static_cast<std::size_t>(p)];
    const double a = by_value[p] * unknown.slope(optimum.x[p]) *
                     prior_of(model, optimum.hypothesis, static_cast<int>(p)).sd;
    if (k < c && optimum.columns[static_cast<std::size_t>(k)] == p) {
      scaled[k++] = a;
    } else {
      uninformed += a * a;
    }
  }
  const Eigen::VectorXd explained = optimum.fit.basis.bottomRows(c).transpose() * scaled;
  return std::sqrt(std::max(0.0, scaled.squaredNorm() - explained.squaredNorm()) + uninformed);
}

}  // namespace ohmtrail::diagnose::inference
