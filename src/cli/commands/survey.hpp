#pragma once
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "cli/pipeline.hpp"
#include "ohmtrail/diagnose/hot_spot.hpp"
#include "ohmtrail/diagnose/load_losses.hpp"
#include "ohmtrail/diagnose/split.hpp"
#include "ohmtrail/diagnose/staircase.hpp"

namespace ohmtrail::cli {

/// Everything that pictures and reports show of one file.
struct Survey {
  netlist::System system;
  netlist::System as_written;  ///< with its readings
  SolvedCases solved;
  std::vector<diagnose::HotSpot> hot_spots;
  std::vector<diagnose::SagSplit> splits;
  std::vector<diagnose::LossInterval> losses;  ///< where readings were used
  bool inferred = false;                       ///< they were
  std::optional<diagnose::SagSplit> worst;     ///< of the load that is worst off; empty where none runs

  /// The case of the load that is worst off, else the first.
  [[nodiscard]] const solve::CaseSolution& case_to_show() const;
  /// To the load named, or to the one that is worst off; empty where it does not run.
  [[nodiscard]] std::optional<diagnose::Staircase> staircase(const std::string& load = "") const;
};

/// FILE and --case of the call, read, solved and ranked.
[[nodiscard]] tl::expected<Survey, Exit> make_survey(const Call& call, const Doors& doors);

/// The staircase to a load in one case of a system; empty where it does not run there.
[[nodiscard]] std::optional<diagnose::Staircase> staircase_to(const netlist::System& system,
                                                              const std::string& in_case,
                                                              const std::string& load);

}  // namespace ohmtrail::cli
