#include "diagnose/infer/optimum.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <utility>

namespace ohmtrail::diagnose::inference {
namespace {

constexpr double log_two_pi = 1.8378770664093453;
constexpr int most_linear_steps = 25;
constexpr int most_relinearisations = 8;

// The linearised problem under one hypothesis, in units of errors and priors.
struct Scaled {
  const Model& model;
  const Linearisation& near;
  const Hypothesis& hypothesis;
  Eigen::VectorXd weight;  // m: 1/sigma, 0 for wrong observations
  Eigen::VectorXd mean, sd;
  std::vector<int> columns;

  [[nodiscard]] Eigen::VectorXd residual(const Eigen::VectorXd& x) const {
    Eigen::VectorXd out(weight.size());
    const Eigen::VectorXd predicted = near.predicted + near.by_value * (values_at(model, x) - near.value);
    for (Eigen::Index i = 0; i < out.size(); ++i) {
      const Observation& o = model.observations[static_cast<std::size_t>(i)];
      out[i] = (o.measured - predicted[i]) / o.sigma;
    }
    return out;
  }

  [[nodiscard]] double cost(const Eigen::VectorXd& x) const {
    double sum = ((x - mean).cwiseQuotient(sd)).squaredNorm();
    const Eigen::VectorXd r = residual(x);
    for (Eigen::Index i = 0; i < r.size(); ++i) {
      sum += weight[i] > 0 ? r[i] * r[i] : 0;
    }
    return 0.5 * sum;
  }

  [[nodiscard]] Eigen::MatrixXd sensitivity(const Eigen::VectorXd& x) const {
    Eigen::MatrixXd out(weight.size(), static_cast<Eigen::Index>(columns.size()));
    for (std::size_t k = 0; k < columns.size(); ++k) {
      const int p = columns[k];
      const double scale = model.parameters[static_cast<std::size_t>(p)].slope(x[p]) * sd[p];
      out.col(static_cast<Eigen::Index>(k)) = near.by_value.col(p).cwiseProduct(weight) * scale;
    }
    return out;
  }
};

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

Scaled scaled(const Model& model, const Linearisation& near, const Hypothesis& hypothesis) {
  Scaled out{model, near, hypothesis, {}, {}, {}, {}};
  const auto n = static_cast<Eigen::Index>(model.parameters.size());
  out.weight.resize(static_cast<Eigen::Index>(model.observations.size()));
  for (Eigen::Index i = 0; i < out.weight.size(); ++i) {
    out.weight[i] = hypothesis.is_wrong(static_cast<int>(i))
                        ? 0
                        : 1 / model.observations[static_cast<std::size_t>(i)].sigma;
  }
  out.mean.resize(n);
  out.sd.resize(n);
  for (Eigen::Index p = 0; p < n; ++p) {
    const Normal& prior = prior_of(model, hypothesis, static_cast<int>(p));
    out.mean[p] = prior.mean;
    out.sd[p] = prior.sd;
  }
  out.columns = informed_columns(model, near, out.sd);
  return out;
}

// ln R follows the value that a linear step asks for, so that a step far upwards does not overshoot
// exponentially.
double damped(double step) {
  return step > 0.5 ? std::log1p(step) + 0.0945 : std::max(step, -1.5);
}

struct Step {
  Eigen::VectorXd x;
  Eigen::MatrixXd sensitivity;
  LinearProblem problem;
  LinearFit fit;
};

// What the linear fit about x must meet: the readings' residuals, with the unknowns counted from their
// priors.
Eigen::VectorXd target_at(const Scaled& problem, const Eigen::MatrixXd& sensitivity,
                          const Eigen::VectorXd& x) {
  Eigen::VectorXd target = problem.residual(x);
  for (Eigen::Index i = 0; i < target.size(); ++i) {
    target[i] = problem.weight[i] > 0 ? target[i] : 0;
  }
  Eigen::VectorXd departure(sensitivity.cols());
  for (std::size_t k = 0; k < problem.columns.size(); ++k) {
    const int p = problem.columns[k];
    departure[static_cast<Eigen::Index>(k)] = (x[p] - problem.mean[p]) / problem.sd[p];
  }
  return target + sensitivity * departure;
}

Eigen::VectorXd unknowns_at(const Scaled& problem, const Eigen::VectorXd& scaled) {
  Eigen::VectorXd out = problem.mean;
  for (std::size_t k = 0; k < problem.columns.size(); ++k) {
    const int p = problem.columns[k];
    out[p] += problem.sd[p] * scaled[static_cast<Eigen::Index>(k)];
  }
  return out;
}

// One Gauss–Newton step from x; not yet damped.
Step step_from(const Scaled& problem, const Eigen::VectorXd& x) {
  Eigen::MatrixXd sensitivity = problem.sensitivity(x);
  LinearProblem factor(sensitivity);
  const Eigen::VectorXd target = target_at(problem, sensitivity, x);
  Step out{problem.mean, std::move(sensitivity), std::move(factor), {}};
  out.fit = out.problem.solve(target);
  out.x = unknowns_at(problem, out.fit.mean.tail(out.sensitivity.cols()));
  return out;
}

// Where such a step leads, by a Cholesky factor: a fifth of the work, and half the digits. It only chooses
// where to look next; what is kept comes from the orthogonal factor of the last step.
Eigen::VectorXd direction_from(const Scaled& problem, const Eigen::VectorXd& x) {
  const Eigen::MatrixXd sensitivity = problem.sensitivity(x);
  const Eigen::Index m = sensitivity.rows();
  Eigen::MatrixXd normal = Eigen::MatrixXd::Identity(m, m);
  normal.selfadjointView<Eigen::Lower>().rankUpdate(sensitivity);
  const Eigen::VectorXd weights = normal.llt().solve(target_at(problem, sensitivity, x));
  return unknowns_at(problem, sensitivity.transpose() * weights);
}

// Damps the step, then halves it until the cost does not rise. Returns the largest move in prior standard
// deviations.
double advance(const Scaled& problem, const Eigen::VectorXd& wanted, Eigen::VectorXd& x, double& cost) {
  Eigen::VectorXd move = wanted - x;
  for (const int p : problem.columns) {
    if (problem.model.parameters[static_cast<std::size_t>(p)].scale == Scale::logarithmic) {
      move[p] = damped(move[p]);
    }
  }
  for (int halving = 0; halving < 8; ++halving) {
    const Eigen::VectorXd candidate = x + move;
    const double reached = problem.cost(candidate);
    if (reached <= cost + 1e-9 * (1 + cost)) {
      x = candidate;
      cost = reached;
      break;
    }
    move *= 0.5;
  }
  return move.cwiseQuotient(problem.sd).cwiseAbs().maxCoeff();
}

int right_observations(const Eigen::VectorXd& weight) {
  return static_cast<int>((weight.array() > 0).count());
}

double log_density(const Scaled& problem, const LinearFit& fit, int counted) {
  double sum = -0.5 * fit.chi_square - fit.log_det - 0.5 * counted * log_two_pi;
  for (Eigen::Index i = 0; i < problem.weight.size(); ++i) {
    sum += problem.weight[i] > 0 ? std::log(problem.weight[i]) : 0;
  }
  return sum;
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

Optimum optimise_linear(const Model& model, const Linearisation& near, const Hypothesis& hypothesis,
                        const Eigen::VectorXd& start) {
  const Scaled problem = scaled(model, near, hypothesis);
  Eigen::VectorXd x = problem.mean;
  for (const int p : problem.columns) {
    x[p] = start[p];
  }
  double cost = problem.cost(x);
  for (int k = 0; k < most_linear_steps; ++k) {
    const double before = cost;
    const double move = advance(problem, direction_from(problem, x), x, cost);
    // About a point that close the Gaussian is the same.
    if (move < 0.02 || before - cost < 1e-3) {
      break;
    }
  }
  Step last = step_from(problem, x);
  advance(problem, last.x, x, cost);
  last.fit.basis = last.problem.basis();
  const int counted = right_observations(problem.weight);
  Optimum out{
      hypothesis,          x,       near, problem.columns, std::move(last.sensitivity), std::move(last.fit),
      problem.residual(x), counted, 0};
  out.log_density = log_density(problem, out.fit, counted);
  return out;
}

namespace {

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
