#include "cli/json/check.hpp"

#include "cli/json/common.hpp"
#include "cli/json/csv.hpp"

namespace ohmtrail::cli {
namespace {

/// "before-further-use": a word for programs.
std::string severity_word(diagnose::Severity severity) {
  std::string word(diagnose::words(severity));
  for (char& c : word)
    if (c == ' ') c = '-';
  return word;
}

Row finding_row(const diagnose::Finding& finding) {
  return {{"rule", finding.rule},    {"severity", severity_word(finding.severity)},
          {"id", finding.subject},   {"case", text_or_null(finding.in_case)},
          {"text", finding.text},    {"remedy", finding.remedy},
          {"source", finding.source}};
}

Row warning_row(const netlist::Problem& problem) {
  return {{"name", problem.name},
          {"pointer", problem.pointer},
          {"line", std::int64_t{problem.line}},
          {"column", std::int64_t{problem.column}},
          {"text", problem.text},
          {"expected", text_or_null(problem.expected)}};
}

}  // namespace

std::vector<Row> finding_rows(const std::vector<diagnose::Finding>& findings) {
  std::vector<Row> rows;
  for (const diagnose::Finding& finding : findings) rows.push_back(finding_row(finding));
  return rows;
}

std::string check_json(const netlist::ReadSystem& read, plan::RuleSet rules,
                       const std::vector<diagnose::Finding>& findings,
                       const std::vector<network::Assumption>& assumptions) {
  JsonWriter json;
  open_result(json, "check", read.system, assumptions);
  std::vector<Row> warnings;
  for (const netlist::Problem& problem : read.warnings) warnings.push_back(warning_row(problem));
  json.field("rules", std::string(plan::word(rules)));
  json.rows("warnings", warnings);
  json.rows("findings", finding_rows(findings));
  json.field("advice", std::string(plan::advice_line));
  json.close();
  return json.finish();
}

std::string check_csv(const std::vector<diagnose::Finding>& findings) {
  std::vector<Row> rows;
  for (const diagnose::Finding& finding : findings) rows.push_back(finding_row(finding));
  return csv(rows, {"rule", "severity", "id", "case", "text", "remedy", "source"});
}

}  // namespace ohmtrail::cli
