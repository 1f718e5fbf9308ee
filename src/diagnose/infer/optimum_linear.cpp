#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <utility>

#include "diagnose/infer/optimum.hpp"
#include "diagnose/infer/scaled_problem.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

constexpr double log_two_pi = 1.8378770664093453;
constexpr int most_linear_steps = 25;

struct Step {
  Eigen::VectorXd x;
  LinearProblem problem;
  LinearFit fit;
};

// One Gauss–Newton step from x; not yet damped.
Step step_from(const ScaledProblem& problem, const Eigen::VectorXd& x) {
  ParallelColumns sensitivity = problem.sensitivity(x);
  const Eigen::VectorXd target = problem.target(sensitivity, x);
  Step out{problem.mean, LinearProblem(std::move(sensitivity)), {}};
  out.fit = out.problem.solve(target);
  out.x = problem.unknowns(out.fit.mean.tail(static_cast<Eigen::Index>(problem.columns.size())));
  return out;
}

// Where such a step leads, by a Cholesky factor: a fifth of the work, and half the digits. It only chooses
// where to look next; what is kept comes from the orthogonal factor of the last step.
Eigen::VectorXd direction_from(const ScaledProblem& problem, const Eigen::VectorXd& x) {
  const ParallelColumns sensitivity = problem.sensitivity(x);
  const Eigen::Index m = sensitivity.merged.rows();
  Eigen::MatrixXd normal = Eigen::MatrixXd::Identity(m, m);
  normal.selfadjointView<Eigen::Lower>().rankUpdate(sensitivity.merged);
  const Eigen::VectorXd weights = normal.llt().solve(problem.target(sensitivity, x));
  const Eigen::VectorXd merged = sensitivity.merged.transpose() * weights;
  return problem.unknowns(sensitivity.spread(merged));
}

// The point a share of the way to where a linear step leads: along a straight line in the values, on which
// the readings are linear too. A value that would fall below a fifth stops there.
Eigen::VectorXd on_the_way(const ScaledProblem& problem, const Eigen::VectorXd& x,
                           const Eigen::VectorXd& step, double share) {
  constexpr double lowest = 0.2;
  Eigen::VectorXd out = x + share * step;
  for (const int p : problem.columns) {
    if (problem.model.parameters[static_cast<std::size_t>(p)].scale == Scale::logarithmic) {
      out[p] = x[p] + std::log(std::max(1 + share * step[p], lowest));
    }
  }
  return out;
}

// As much of the step as does not raise the cost. Returns the largest move in prior standard deviations.
double advance(const ScaledProblem& problem, const Eigen::VectorXd& wanted, Eigen::VectorXd& x,
               double& cost) {
  const Eigen::VectorXd step = wanted - x;
  double share = 1;
  for (int halving = 0; halving < 12; ++halving, share *= 0.5) {
    const Eigen::VectorXd candidate = on_the_way(problem, x, step, share);
    const double reached = problem.cost(candidate);
    if (reached <= cost + 1e-9 * (1 + cost)) {
      const double moved = (candidate - x).cwiseQuotient(problem.sd).cwiseAbs().maxCoeff();
      x = candidate;
      cost = reached;
      return moved;
    }
  }
  return 0;
}

int right_observations(const Eigen::VectorXd& weight) {
  return static_cast<int>((weight.array() > 0).count());
}

double log_density(const ScaledProblem& problem, const LinearFit& fit, int counted) {
  double sum = -0.5 * fit.chi_square - fit.log_det - 0.5 * counted * log_two_pi;
  for (Eigen::Index i = 0; i < problem.weight.size(); ++i) {
    sum += problem.weight[i] > 0 ? std::log(problem.weight[i]) : 0;
  }
  return sum;
}

}  // namespace

Optimum optimise_linear(const Model& model, const Linearisation& near, const Hypothesis& hypothesis,
                        const Eigen::VectorXd& start) {
  const ScaledProblem problem(model, near, hypothesis);
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
  Optimum out{hypothesis, x, near, problem.columns, std::move(last.fit), problem.residual(x), counted, 0};
  out.log_density = log_density(problem, out.fit, counted);
  return out;
}

}  // namespace ohmtrail::diagnose::inference
