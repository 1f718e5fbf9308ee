#pragma once
#include <optional>
#include <string>
#include <vector>

#include "ohmtrail/diagnose/finding.hpp"
#include "ohmtrail/diagnose/hot_spot.hpp"
#include "ohmtrail/diagnose/split.hpp"
#include "ohmtrail/diagnose/staircase.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"
#include "render/picture.hpp"

/// The paper that a customer keeps: what was found, what to do, in which order, and how it is known.
namespace ohmtrail::render {

/// Everything that a report tells. Plain results of the layers to the left; nothing is computed here.
struct ReportInput {
  netlist::System system;
  std::vector<solve::CaseSolution> solved;       ///< every case, in file order
  std::vector<diagnose::HotSpot> hot_spots;      ///< worst first
  std::vector<diagnose::SagSplit> splits;        ///< of every case
  std::vector<diagnose::Finding> findings;       ///< worst first
  std::optional<diagnose::Staircase> staircase;  ///< of the load that `worst_split` names
  bool inferred = false;  ///< resistances come from readings, not from the file's values alone
};

/// The sag to explain: that of the running load that loses the largest share of its nominal voltage, over all
/// cases; loads outside their limit first. Index into `splits`; empty where no load runs.
[[nodiscard]] std::optional<std::size_t> worst_split(const netlist::System& system,
                                                     const std::vector<solve::CaseSolution>& solved,
                                                     const std::vector<diagnose::SagSplit>& splits);

/// PDF of a few pages.
[[nodiscard]] std::string report_pdf(const ReportInput& input, Paper paper = Paper::a4);

/// One self-contained HTML file without script; the pictures are SVG inside it.
[[nodiscard]] std::string report_html(const ReportInput& input);

}  // namespace ohmtrail::render
