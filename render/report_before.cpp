#include <algorithm>
#include <cmath>

#include "render/number.hpp"
#include "render/report_parts.hpp"
#include "render/staircase.hpp"
#include "render/text.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

constexpr std::size_t most_parts = 30, most_named = 8;

bool holds(const std::vector<std::string>& ids, const std::string& id) {
  return std::find(ids.begin(), ids.end(), id) != ids.end();
}

/// Where a part is; a conductor that is compared as a whole is its cable.
std::string name_of(const netlist::System& system, const diagnose::Comparison& c, const std::string& id) {
  const bool whole = std::any_of(c.conductors.begin(), c.conductors.end(),
                                 [&](const diagnose::ElementChange& one) { return one.id == id; });
  return whole ? where_conductor(id) : where(system, id);
}

std::string listed(const netlist::System& system, const diagnose::Comparison& c,
                   const std::vector<std::string>& ids) {
  std::string list;
  for (std::size_t k = 0; k < std::min(most_named, ids.size()); ++k)
    list += (k ? "; " : "") + name_of(system, c, ids[k]);
  return ids.size() > most_named ? filled(text::and_more, list, ids.size() - most_named) : list;
}

std::string named(const netlist::Job& job) {
  if (job.date.empty() && job.reference.empty()) return std::string(text::undated);
  return job.reference + (job.date.empty() || job.reference.empty() ? "" : ", ") + job.date;
}

void tell_outcome(Document& document, const netlist::System& system, const diagnose::Comparison& c) {
  const std::size_t before = c.cured.size() + c.left.size();
  if (before == 0)
    document.paragraph(text::cured_none_before);
  else if (c.left.empty())
    document.paragraph(text::cured_all);
  else
    document.paragraph(filled(text::cured_some, c.cured.size(), before));
  const auto tell = [&](std::string_view pattern, const std::vector<std::string>& ids, Tone tone) {
    if (!ids.empty()) document.paragraph(filled(pattern, listed(system, c, ids)), tone);
  };
  tell(text::left_over, c.left, Tone::alarm);
  tell(text::fresh_faults, c.fresh, Tone::alarm);
  tell(text::parts_gone, c.gone, Tone::normal);
  tell(text::parts_added, c.added, Tone::normal);
}

void tell_loads(Document& document, const netlist::System& system, const diagnose::Comparison& c) {
  Rows rows;
  for (const diagnose::LoadChange& load : c.loads)
    rows.push_back({where(system, load.id), load.in_case, standing_volts(load.volts_before),
                    standing_volts(load.volts_after), volts(load.volts_after - load.volts_before)});
  if (rows.empty()) return;
  document.table({{std::string(text::column_load), 2.4},
                  {std::string(text::column_condition), 2.4},
                  {std::string(text::column_before), 1, Align::right},
                  {std::string(text::column_after), 1, Align::right},
                  {std::string(text::column_gained), 1, Align::right}},
                 rows);
}

std::string_view verdict(const diagnose::Comparison& c, const diagnose::ElementChange& change) {
  if (holds(c.cured, change.id)) return text::verdict_cured;
  if (holds(c.left, change.id)) return text::verdict_left;
  if (holds(c.fresh, change.id)) return text::verdict_fresh;
  if (change.verdict == diagnose::Change::better) return text::verdict_better;
  return change.verdict == diagnose::Change::worse ? text::verdict_worse : std::string_view();
}

/// What changed and what should have, largest change first.
std::vector<diagnose::ElementChange> changes_to_tell(const diagnose::Comparison& c) {
  std::vector<diagnose::ElementChange> list;
  for (const diagnose::ElementChange& change : c.elements)
    if (!verdict(c, change).empty()) list.push_back(change);
  for (const diagnose::ElementChange& change : c.conductors)
    if (holds(c.cured, change.id) || holds(c.left, change.id) || holds(c.fresh, change.id))
      list.push_back(change);
  std::stable_sort(list.begin(), list.end(), [](const auto& a, const auto& b) {
    return std::fabs(a.after - a.before) > std::fabs(b.after - b.before);
  });
  return list;
}

void tell_parts(Document& document, const netlist::System& system, const diagnose::Comparison& c) {
  const auto list = changes_to_tell(c);
  Rows rows;
  for (std::size_t k = 0; k < std::min(most_parts, list.size()); ++k)
    rows.push_back({sentence(name_of(system, c, list[k].id)), ohms(list[k].before), ohms(list[k].after),
                    std::string(verdict(c, list[k]))});
  if (!rows.empty())
    document.table({{std::string(text::column_part), 4},
                    {std::string(text::column_before), 1.1, Align::right},
                    {std::string(text::column_after), 1.1, Align::right},
                    {std::string(text::column_result), 1.4}},
                   rows);
  const auto unchanged = std::count_if(c.elements.begin(), c.elements.end(),
                                       [&](const auto& change) { return verdict(c, change).empty(); });
  if (unchanged > 0) document.paragraph(filled(text::parts_unchanged, unchanged), Tone::small);
}

}  // namespace

void tell_before_after(Document& document, const ReportInput& input) {
  if (!input.before_after) return;
  const BeforeAfter& told = *input.before_after;
  document.begin_sheet();
  document.heading(text::heading_before_after);
  document.paragraph(filled(text::compared_surveys, named(told.earlier), named(input.system.info.job)));
  tell_outcome(document, input.system, told.comparison);
  tell_loads(document, input.system, told.comparison);
  document.paragraph(text::same_day, Tone::small);
  tell_parts(document, input.system, told.comparison);
  if (!told.then || !told.now) return;
  document.together([&] {
    document.picture(filled(text::heading_staircase_before, where(input.system, told.then->load)),
                     staircase_picture(input.system, *told.then, false));
    document.picture(text::heading_staircase_after, staircase_picture(input.system, *told.now, false));
  });
}

}  // namespace ohmtrail::render
