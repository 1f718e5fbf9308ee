#include <algorithm>
#include <cmath>
#include <set>

#include "render/number.hpp"
#include "render/report_parts.hpp"
#include "render/text.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

Tone tone_of(diagnose::Severity severity) {
  return severity == diagnose::Severity::before_further_use ? Tone::alarm : Tone::normal;
}

constexpr std::size_t most_places = 5;

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

void tell(Document& document, const ReportInput& input, const Alike& group) {
  const diagnose::Finding& first = *group.front();
  const std::string rank = std::string(rank_in_words(first.severity)) + ": ";
  if (group.size() == 1) {
    document.subheading(rank + place_of(input, first), tone_of(first.severity));
    document.paragraph(sentence(first.text));
  } else {
    document.subheading(rank + filled(text::several_places, group.size()), tone_of(first.severity));
    for (std::size_t k = 0; k < std::min(most_places, group.size()); ++k)
      document.paragraph(sentence(place_of(input, *group[k])) + ": " + group[k]->text);
    if (group.size() > most_places)
      document.paragraph(filled(text::more_places, group.size() - most_places), Tone::quiet);
  }
  document.entry(text::finding_risk, risk_in_words(first.severity));
  if (!first.remedy.empty()) document.entry(text::finding_remedy, sentence(first.remedy));
  if (!first.source.empty()) document.entry(text::finding_rule, sentence(first.source));
}

const LossInterval* interval_of(const ReportInput& input, const std::string& in_case,
                                const std::string& load) {
  const auto found =
      std::find_if(input.loss_intervals.begin(), input.loss_intervals.end(),
                   [&](const LossInterval& i) { return i.in_case == in_case && i.load == load; });
  return found == input.loss_intervals.end() ? nullptr : &*found;
}

std::vector<std::string> limit_row(const ReportInput& input, const solve::CaseSolution& solved,
                                   const solve::LoadResult& load) {
  const network::Element& e = solved.network.elements[static_cast<std::size_t>(load.element)];
  const LossInterval* interval = interval_of(input, solved.network.case_name, e.id);
  return {e.id,
          solved.network.case_name,
          standing_volts(load.volts),
          percent(load.drop_fraction),
          std::isfinite(load.limit_fraction) ? percent(load.limit_fraction) : "–",
          std::string(limit_verdict(load, interval))};
}

struct RunOfLoad {
  const solve::CaseSolution* solved;
  const solve::LoadResult* load;
};

/// The condition in which each load loses most; one in which it stopped is worse than any.
std::vector<RunOfLoad> worst_of_each_load(const ReportInput& input) {
  std::vector<RunOfLoad> worst;
  const auto badness = [](const solve::LoadResult& load) { return load.running ? load.drop_fraction : 10; };
  for (const solve::CaseSolution& solved : input.solved)
    for (const solve::LoadResult& load : solved.loads) {
      const network::Element& e = solved.network.elements[static_cast<std::size_t>(load.element)];
      if (!e.active || load.supply < 0) continue;
      const auto same = std::find_if(worst.begin(), worst.end(), [&](const RunOfLoad& w) {
        return w.solved->network.elements[static_cast<std::size_t>(w.load->element)].id == e.id;
      });
      if (same == worst.end())
        worst.push_back({&solved, &load});
      else if (badness(load) > badness(*same->load))
        *same = {&solved, &load};
    }
  return worst;
}

bool was_not_reached(const netlist::Seen& seen) {
  return std::find(seen.begin(), seen.end(), trade::Observation::not_reached) != seen.end();
}

std::set<std::string> loads_that_ran(const ReportInput& input) {
  std::set<std::string> ran;
  for (const solve::CaseSolution& solved : input.solved)
    for (const network::Element& e : solved.network.elements)
      if (e.role == network::Role::load && e.active) ran.insert(e.id);
  return ran;
}

std::vector<std::string> not_examined(const ReportInput& input) {
  std::vector<std::string> list;
  if (!input.solved.empty())
    for (const network::Element& e : input.solved.front().network.elements)
      if (was_not_reached(e.seen)) list.push_back(filled(text::not_reached, where(input.system, e.id)));
  for (const auto& [point, known] : input.system.points)
    if (known.reach == netlist::Reach::no) list.push_back(filled(text::point_out_of_reach, point));
  const std::set<std::string> ran = loads_that_ran(input);
  for (const netlist::Load& load : input.system.loads)
    if (!ran.contains(load.id)) list.push_back(filled(text::load_never_on, load.id));
  return list;
}

}  // namespace

std::string_view limit_verdict(const solve::LoadResult& load, const LossInterval* interval) {
  if (!load.running) return text::limit_stopped;
  if (!std::isfinite(load.limit_fraction)) return "–";
  if (interval && interval->low <= load.limit_fraction && interval->high > load.limit_fraction)
    return text::limit_undecided;
  if (interval) return interval->low > load.limit_fraction ? text::limit_broken : text::limit_met;
  return load.within ? text::limit_met : text::limit_broken;
}

void tell_findings(Document& document, const ReportInput& input) {
  document.heading(text::heading_findings);
  if (input.findings.empty()) document.paragraph(text::no_findings);
  for (const Alike& group : grouped(input.findings)) tell(document, input, group);
}

void tell_limits(Document& document, const ReportInput& input) {
  Rows rows;
  for (const auto& [solved, load] : worst_of_each_load(input))
    rows.push_back(limit_row(input, *solved, *load));
  if (rows.empty()) return;
  document.heading(text::heading_limits);
  document.table({{std::string(text::column_load), 2.4},
                  {std::string(text::column_case), 2.2},
                  {std::string(text::column_volts), 1, Align::right},
                  {std::string(text::column_loss), 0.9, Align::right},
                  {std::string(text::column_limit), 0.9, Align::right},
                  {std::string(text::column_verdict), 1.8}},
                 rows);
  document.paragraph(text::limits_rule, Tone::small);
}

void tell_not_examined(Document& document, const ReportInput& input) {
  document.heading(text::heading_not_examined);
  const std::vector<std::string> list = not_examined(input);
  if (list.empty()) document.paragraph(text::all_examined);
  for (const std::string& item : list) document.paragraph(item);
}

}  // namespace ohmtrail::render
