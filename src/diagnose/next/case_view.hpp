#pragma once
#include <optional>
#include <vector>

#include "diagnose/infer/forward.hpp"
#include "diagnose/next/information.hpp"
#include "diagnose/next/outlook.hpp"

namespace ohmtrail::diagnose::next {

/// What every state foretells of some points and branches in one case, before the meter's error.
struct CaseView {
  std::size_t in_case = 0;
  std::vector<int> points, branches;
  std::vector<std::size_t> states;          ///< those with a solution, indices into Outlook::states
  std::vector<Eigen::VectorXd> mean;        ///< per state: volts at the points, then amperes in the branches
  std::vector<Eigen::MatrixXd> covariance;  ///< per state, of the same
  Eigen::VectorXd sound;                    ///< the same of the sound system
  solve::Solution typical;                  ///< of the likeliest state
};

/// Empty where the likeliest state or the sound system has no solution in the case.
[[nodiscard]] std::optional<CaseView> view_case(const Outlook& outlook, inference::Forward& forward,
                                                std::size_t in_case, const std::vector<int>& points,
                                                const std::vector<int>& branches);

/// Readings between two of the view's points (indices into `points`), with the meter's error.
[[nodiscard]] std::vector<Forecast> forecast_volts(const Outlook& outlook, const CaseView& view,
                                                   std::size_t red, std::size_t black);
/// Clamp readings of one of the view's branches.
[[nodiscard]] std::vector<Forecast> forecast_amps(const Outlook& outlook, const CaseView& view,
                                                  std::size_t branch);

}  // namespace ohmtrail::diagnose::next
