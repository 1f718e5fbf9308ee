#pragma once
#include <memory>
#include <string>
#include <vector>

#include "diagnose/infer/posterior.hpp"
#include "ohmtrail/diagnose/next.hpp"

/// What the posterior foretells in every case of the file, also in those in which nothing was read yet.
namespace ohmtrail::diagnose::next {

/// One hypothesis, its unknowns written in the wider model.
struct State {
  double weight = 0;
  std::vector<std::string> repairs;  ///< called faulty
  int label = 0;                     ///< index of that set
  Eigen::VectorXd x;                 ///< of the wider model
  Eigen::VectorXd scale;             ///< deviation by prior of each value: slope · sd
  Eigen::MatrixXd explained;         ///< covariance of values / scale = I − explained · explainedᵀ
};

/// The states, and a model with every case, each read once by the meter at hand with both quantities.
struct Outlook {
  netlist::System system;  ///< with one clamp and one voltage reading more a case
  std::string meter;       ///< that further readings are taken with; empty: the built-in one
  int taken = 0;           ///< readings that the file had
  std::vector<ReadingPlace> passed_over;
  inference::Survey survey;
  std::vector<State> states;  ///< by falling weight
  Eigen::VectorXd sound;      ///< x of the likeliest state with every element made good
  int volts_gain = -1, amps_gain = -1, amps_zero = -1;  ///< unknowns of the meter at hand
};

/// Takes the loads of one case a fifth smaller in every state.
void lower_loads(Outlook& outlook, int in_case);

[[nodiscard]] Outlook make_outlook(const netlist::System& system, const Posterior& posterior,
                                   const NextOptions& options);

}  // namespace ohmtrail::diagnose::next
