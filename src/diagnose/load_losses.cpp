#include "ohmtrail/diagnose/load_losses.hpp"

#include <algorithm>
#include <cmath>

#include "diagnose/infer/forward.hpp"
#include "diagnose/infer/mixture.hpp"
#include "diagnose/infer/optimum.hpp"
#include "diagnose/next/outlook.hpp"
#include "ohmtrail/diagnose/infer_apply.hpp"
#include "ohmtrail/solve/case_solution.hpp"
#include "units/index.hpp"

// Under one explanation a loss is nearly linear in the unknowns, so Gaussian: its mean is that of the solved
// network, its variance gᵀ Σ g with the gradient g from two adjoint solves. The interval is that of the
// mixture over the explanations.

namespace ohmtrail::diagnose {
namespace {

using inference::Mixture;
using next::Outlook;
using next::State;

constexpr double lower_share = 0.05, upper_share = 0.95;
constexpr double enough = 0.995;         // of the probability of all explanations
constexpr std::size_t most_states = 16;  // each costs a solve a case

/// A running load and who feeds it.
struct Fed {
  int load = -1;
  const solve::Supply* supply = nullptr;
  double nominal = 0;
  Mixture loss;
};

class CaseLosses {
 public:
  /// `as_found` is the system as its readings show it.
  CaseLosses(const netlist::System& as_found, const Outlook& outlook, std::size_t in_case)
      : outlook_(outlook),
        in_case_(in_case),
        network_(outlook.survey.networks[in_case]),
        likeliest_(solve::solve_case(network::build(as_found, as_found.cases[in_case]))) {
    if (!likeliest_ || likeliest_->solution.collapse) return;
    for (const solve::LoadResult& load : likeliest_->loads)
      if (load.running && load.supply >= 0) loads_.push_back(fed(as_found, load));
  }

  void weigh(inference::Forward& forward, const State& state) {
    const Eigen::VectorXd values = inference::values_at(outlook_.survey.model, state.x);
    const solve::Solver* solver = loads_.empty() ? nullptr : forward.solved_case(in_case_, values);
    for (Fed& one : loads_) {
      if (solver == nullptr || !forward.solution(in_case_).running[at(one.load)])
        one.loss.add(state.weight, 1, 0);
      else
        weigh(forward, *solver, state, one);
    }
  }

  void tell(std::vector<LossInterval>& out) const {
    for (const Fed& one : loads_)
      out.push_back({network_.case_name, network_.elements[at(one.load)].id, one.loss.quantile(lower_share),
                     one.loss.quantile(0.5), one.loss.quantile(upper_share)});
  }

 private:
  [[nodiscard]] Fed fed(const netlist::System& system, const solve::LoadResult& load) const {
    Fed out;
    out.load = load.element;
    out.nominal = network_.elements[at(load.element)].nominal.value_or(system.info.nominal).si();
    for (const solve::Supply& supply : likeliest_->supplies)
      if (std::find(supply.elements.begin(), supply.elements.end(), load.supply) != supply.elements.end())
        out.supply = &supply;
    return out;
  }

  void weigh(const inference::Forward& forward, const solve::Solver& solver, const State& state, Fed& one) {
    const auto& voltage = forward.solution(in_case_).voltage;
    Eigen::VectorXd by_value = Eigen::VectorXd::Zero(state.x.size());
    double lost = 0;
    const auto count = [&](int element, double sign) {
      const network::Element& e = network_.elements[at(element)];
      lost += sign * (voltage[at(e.from)] - voltage[at(e.to)]);
      by_value += sign * forward.by_parameter(in_case_, solver.gradient_of_voltage(e.from, e.to));
    };
    if (one.supply != nullptr)
      for (const int source : one.supply->elements) count(source, 1);
    count(one.load, -1);
    const Eigen::VectorXd scaled = by_value.cwiseProduct(state.scale);
    const double explained = (state.explained.transpose() * scaled).squaredNorm();
    const double variance = std::max(0.0, scaled.squaredNorm() - explained);
    one.loss.add(state.weight, lost / one.nominal, variance / (one.nominal * one.nominal));
  }

  const Outlook& outlook_;
  std::size_t in_case_;
  const network::Network& network_;
  tl::expected<solve::CaseSolution, solve::Failure> likeliest_;
  std::vector<Fed> loads_;
};

/// How many of the likeliest states hold nearly all probability.
std::size_t states_that_matter(const std::vector<State>& states) {
  double all = 0, sum = 0;
  for (const State& state : states) all += state.weight;
  std::size_t count = 0;
  while (count < std::min(states.size(), most_states) && sum < enough * all) sum += states[count++].weight;
  return count;
}

}  // namespace

std::vector<LossInterval> loss_intervals(const netlist::System& system, const InferResult& result) {
  NextOptions options;
  options.most_states = most_states;
  const netlist::System as_found = with_inferred(system, result);
  const Outlook outlook = next::make_outlook(system, *result.posterior, options);
  inference::Forward forward(outlook.survey.model);
  std::vector<LossInterval> out;
  for (std::size_t k = 0; k < outlook.survey.networks.size(); ++k) {
    CaseLosses losses(as_found, outlook, k);
    for (std::size_t s = 0; s < states_that_matter(outlook.states); ++s)
      losses.weigh(forward, outlook.states[s]);
    losses.tell(out);
  }
  return out;
}

}  // namespace ohmtrail::diagnose
