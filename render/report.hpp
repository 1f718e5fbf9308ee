#pragma once
#include <optional>
#include <string>
#include <vector>

#include "ohmtrail/diagnose/bank.hpp"
#include "ohmtrail/diagnose/bench_sheet.hpp"
#include "ohmtrail/diagnose/charging.hpp"
#include "ohmtrail/diagnose/compare.hpp"
#include "ohmtrail/diagnose/finding.hpp"
#include "ohmtrail/diagnose/hot_spot.hpp"
#include "ohmtrail/diagnose/load_losses.hpp"
#include "ohmtrail/diagnose/split.hpp"
#include "ohmtrail/diagnose/staircase.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/plan/size.hpp"
#include "ohmtrail/solve/case_solution.hpp"
#include "render/picture.hpp"

/// The paper that a customer keeps: what was found, what to do, in which order, and how it is known.
namespace ohmtrail::render {

/// Whether a limit is met, broken, or not decidable because the interval straddles it; in words.
[[nodiscard]] std::string_view limit_verdict(const solve::LoadResult& load,
                                             const diagnose::LossInterval* interval);

/// An earlier survey of the same system beside this one.
struct BeforeAfter {
  netlist::Job earlier;
  diagnose::Comparison comparison;
  /// Of the load and case that gained most, then and now.
  std::optional<diagnose::Staircase> then, now;
};

/// Everything that a report tells. Plain results of the layers to the left; nothing is computed here.
struct ReportInput {
  netlist::System system;
  std::vector<solve::CaseSolution> solved;             ///< every case, in file order
  std::vector<diagnose::HotSpot> hot_spots;            ///< worst first
  std::vector<diagnose::SagSplit> splits;              ///< of every case
  std::vector<diagnose::Finding> findings;             ///< worst first
  std::optional<diagnose::Staircase> staircase;        ///< of the load that `worst_split` names
  std::optional<diagnose::Bank> bank;                  ///< the batteries' own tests
  std::vector<diagnose::LossInterval> loss_intervals;  ///< where readings give them
  std::vector<diagnose::ChargeSplit> charging;         ///< of every case
  bool inferred = false;  ///< resistances come from readings, not from the file's values alone

  // Chapters that are told only where they were asked for
  std::optional<BeforeAfter> before_after;
  std::optional<plan::SizeResult> rewire;
  std::vector<diagnose::Finding> raised_by_rewire;  ///< what check would say of it and does not say today
  std::optional<diagnose::BenchSheet> bench_sheet;
};

/// The sag to explain: that of the running load that loses the largest share of its nominal voltage, over all
/// cases; loads outside their limit first; with a charger as supply only what is lost beyond it counts. Index
/// into `splits`; empty where no load runs.
[[nodiscard]] std::optional<std::size_t> worst_split(const netlist::System& system,
                                                     const std::vector<solve::CaseSolution>& solved,
                                                     const std::vector<diagnose::SagSplit>& splits);

/// The pages as drawings, before they become a PDF.
[[nodiscard]] std::vector<Scene> report_pages(const ReportInput& input, Paper paper = Paper::a4);

/// PDF of a few pages: text selectable, fonts embedded, title and language set.
[[nodiscard]] std::string report_pdf(const ReportInput& input, Paper paper = Paper::a4);

/// One self-contained HTML file without script; the pictures are SVG inside it.
[[nodiscard]] std::string report_html(const ReportInput& input);

}  // namespace ohmtrail::render
