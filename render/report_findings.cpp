#include <algorithm>

#include "ohmtrail/diagnose/doubt.hpp"
#include "render/report_parts.hpp"
#include "render/risk.hpp"
#include "render/text.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

Tone tone_of(diagnose::Severity severity) {
  return severity == diagnose::Severity::before_further_use ? Tone::alarm : Tone::normal;
}

/// One rule broken at several places is one finding with several places.
using Alike = std::vector<const diagnose::Finding*>;

std::vector<Alike> grouped(const std::vector<diagnose::Finding>& findings) {
  std::vector<Alike> groups;
  for (const diagnose::Finding& finding : findings) {
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const Alike& group) {
      return group.front()->rule == finding.rule && group.front()->severity == finding.severity &&
             group.front()->remedy == finding.remedy && group.front()->source == finding.source;
    });
    if (same == groups.end())
      groups.push_back({&finding});
    else
      same->push_back(&finding);
  }
  return groups;
}

std::string place_of(const ReportInput& input, const diagnose::Finding& finding) {
  std::string place = where(input.system, finding.subject);
  if (!finding.in_case.empty()) place += " (“" + finding.in_case + "”)";
  return place;
}

std::string title_of(const ReportInput& input, const Alike& group) {
  const diagnose::Finding& first = *group.front();
  const std::string what =
      std::string(rank_in_words(first.severity)) + ": " + std::string(kind_in_words(first)) + ", ";
  return what + (group.size() == 1 ? place_of(input, first) : filled(text::several_places, group.size()));
}

/// What is found of a part that the readings only suspect holds only if it is that one.
std::string told(const ReportInput& input, const diagnose::Finding& finding) {
  const std::string words = ends_in_words(input.system, finding.text);
  const bool suspected = std::any_of(
      input.hot_spots.begin(), input.hot_spots.end(),
      [&](const diagnose::HotSpot& spot) { return spot.id == finding.subject && diagnose::in_doubt(spot); });
  return suspected ? filled(text::if_it_is_this, words) : words;
}

/// What is wrong at each place, as many as there is room for.
std::vector<std::string> places_of(const ReportInput& input, const Alike& group, std::size_t most) {
  if (group.size() == 1) return {sentence(told(input, *group.front()))};
  std::vector<std::string> places;
  for (std::size_t k = 0; k < std::min(most, group.size()); ++k)
    places.push_back(sentence(place_of(input, *group[k])) + ": " + told(input, *group[k]));
  if (group.size() > most) places.push_back(filled(text::more_places, group.size() - most));
  return places;
}

void tell_in_full(Document& document, const ReportInput& input, const Alike& group, std::size_t most) {
  const diagnose::Finding& first = *group.front();
  document.together([&] {
    document.subheading(title_of(input, group), tone_of(first.severity));
    for (const std::string& place : places_of(input, group, most)) document.paragraph(place);
    document.entry(text::finding_risk, risk_in_words(first));
    if (!first.remedy.empty())
      document.entry(text::finding_remedy, sentence(ends_in_words(input.system, first.remedy)));
    if (!first.source.empty()) document.entry(text::finding_rule, sentence(first.source));
  });
}

std::string ended(std::string words) {
  if (!words.empty() && words.back() != '.') words += '.';
  return words;
}

/// The same in one paragraph.
void tell_run_in(Document& document, const ReportInput& input, const Alike& group, std::size_t most) {
  const diagnose::Finding& first = *group.front();
  std::string all = ended(title_of(input, group));
  for (const std::string& place : places_of(input, group, most)) all += " " + ended(place);
  all += " " + std::string(risk_in_words(first));
  if (!first.remedy.empty()) all += " " + ended(sentence(ends_in_words(input.system, first.remedy)));
  if (!first.source.empty()) all += " " + ended(filled(text::rests_on, first.source));
  document.paragraph(all, Tone::small);
}

/// A limit that the readings cannot decide is no finding; the table of limits says so.
bool is_decided(const ReportInput& input, const diagnose::Finding& finding) {
  if (finding.rule != "drop-limit") return true;
  for (const solve::CaseSolution& solved : input.solved)
    for (const solve::LoadResult& load : solved.loads)
      if (solved.network.case_name == finding.in_case &&
          solved.network.elements[static_cast<std::size_t>(load.element)].id == finding.subject)
        return limit_verdict(load, interval_of(input, finding.in_case, finding.subject)) !=
               text::limit_undecided;
  return true;
}

}  // namespace

std::vector<diagnose::Finding> decided_findings(const ReportInput& input) {
  std::vector<diagnose::Finding> list;
  for (const diagnose::Finding& finding : input.findings)
    if (is_decided(input, finding)) list.push_back(finding);
  return list;
}

void tell_findings(Document& document, const ReportInput& input, const Brevity& brevity) {
  document.heading(text::heading_findings);
  const std::vector<diagnose::Finding> findings = decided_findings(input);
  if (findings.empty()) document.paragraph(text::no_findings);
  std::size_t told = 0;
  bool brief = false;
  for (const Alike& group : grouped(findings)) {
    const bool urgent = group.front()->severity == diagnose::Severity::before_further_use;
    if (urgent || told < brevity.full_findings) {
      tell_in_full(document, input, group, brevity.places);
    } else {
      if (!brief) document.subheading(text::further_findings);
      brief = true;
      tell_run_in(document, input, group, brevity.places);
    }
    ++told;
  }
}

}  // namespace ohmtrail::render
