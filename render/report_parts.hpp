#pragma once
#include <optional>
#include <string>

#include "render/document.hpp"
#include "render/report.hpp"

/// The report, chapter by chapter, onto any document.
namespace ohmtrail::render {

/// How much is told where space is short. What is left out is counted; nothing urgent ever is.
struct Brevity {
  std::size_t places = 5;          ///< of one finding
  std::size_t full_findings = 40;  ///< with risk, remedy and rule each on its own line; the rest run in
  std::size_t connections = 30;
  std::size_t limits = 60;
  std::size_t charging = 12;
};

/// Drawn once, however often the pages are laid out.
struct ReportPictures {
  std::string diagram_heading, staircase_heading;
  std::optional<Scene> diagram, staircase;
  std::vector<Scene> boards;  ///< of a diagram that takes several sheets
};
/// `paper`: what the diagram must be readable on; empty: on a screen, as one.
[[nodiscard]] ReportPictures draw_pictures(const ReportInput& input, std::optional<Paper> paper);
/// The sheets that the diagram refers to.
void tell_boards(Document& document, const ReportPictures& pictures);

void tell_front(Document& document, const ReportInput& input);
void tell_findings(Document& document, const ReportInput& input, const Brevity& brevity);
void tell_limits(Document& document, const ReportInput& input, const Brevity& brevity);
void tell_not_examined(Document& document, const ReportInput& input);
/// What can hurt whoever works on the system, and how far this advice goes.
void tell_cautions(Document& document);
void tell_pictures(Document& document, const ReportPictures& pictures);
void tell_connections(Document& document, const ReportInput& input, const Brevity& brevity);
void tell_batteries(Document& document, const ReportInput& input);
/// What is lost between each charger and the batteries.
void tell_charging(Document& document, const ReportInput& input, const Brevity& brevity);
void tell_small_print(Document& document, const ReportInput& input);

/// The interval of a load's loss in a case; nullptr: no readings tell.
[[nodiscard]] const diagnose::LossInterval* interval_of(const ReportInput& input, const std::string& in_case,
                                                        const std::string& load);
/// The findings without the broken limits that the readings cannot decide.
[[nodiscard]] std::vector<diagnose::Finding> decided_findings(const ReportInput& input);

/// What every report has, in order.
void tell_report(Document& document, const ReportInput& input, const ReportPictures& pictures,
                 const Brevity& brevity);

// Chapters of their own, told where they were asked for
void tell_before_after(Document& document, const ReportInput& input);
void tell_rewire(Document& document, const ReportInput& input);
void tell_bench_sheet(Document& document, const ReportInput& input);
void tell_extras(Document& document, const ReportInput& input);

/// "Report R-12: Name of the system, 2026-05-14"
[[nodiscard]] std::string running_title(const ReportInput& input);

}  // namespace ohmtrail::render
