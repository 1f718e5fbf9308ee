#pragma once
#include "render/document.hpp"
#include "render/report.hpp"

/// The report, chapter by chapter, onto any document.
namespace ohmtrail::render {

void tell_front(Document& document, const ReportInput& input);
void tell_findings(Document& document, const ReportInput& input);
void tell_limits(Document& document, const ReportInput& input);
void tell_not_examined(Document& document, const ReportInput& input);
/// What can hurt whoever works on the system, and how far this advice goes.
void tell_cautions(Document& document);
void tell_pictures(Document& document, const ReportInput& input);
void tell_connections(Document& document, const ReportInput& input);
void tell_batteries(Document& document, const ReportInput& input);
void tell_small_print(Document& document, const ReportInput& input);

/// All of it in order.
void tell_report(Document& document, const ReportInput& input);

/// "Report R-12: Name of the system, 2026-05-14"
[[nodiscard]] std::string running_title(const ReportInput& input);

}  // namespace ohmtrail::render
