#include <algorithm>
#include <cmath>

#include "render/number.hpp"
#include "render/report_parts.hpp"
#include "render/text.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

using plan::RunChoice;
using plan::SizeResult;

constexpr double worth_telling = 0.5;  // a bound below half the cost says nothing

std::string kilograms(double mass) {
  return plain(mass) + "\u202Fkg";
}

std::string cost_in_words(const SizeResult& sized, double cost) {
  return sized.priced ? fmt::format("{:.2f}", cost) : kilograms(cost);
}

std::size_t renewed(const SizeResult& sized) {
  return static_cast<std::size_t>(
      std::count_if(sized.runs.begin(), sized.runs.end(), [](const RunChoice& run) { return run.renewed; }));
}

std::string proof_in_words(const SizeResult& sized) {
  if (sized.proved) return std::string(text::rewire_proved);
  if (sized.bound < worth_telling * sized.cost) return std::string(text::rewire_unproved);
  return filled(text::rewire_open, cost_in_words(sized, sized.cost - sized.bound));
}

void tell_verdict(Document& document, const SizeResult& sized) {
  const std::size_t count = renewed(sized);
  document.paragraph(count == 0 ? std::string(text::rewire_nothing)
                                : filled(text::rewire_some, count, sized.runs.size()));
  document.paragraph(proof_in_words(sized));
  if (sized.priced) document.paragraph(filled(text::rewire_price, cost_in_words(sized, sized.cost)));
  double mass = 0, mass_was = 0;
  for (const RunChoice& run : sized.runs) {
    mass += run.mass;
    mass_was += run.mass_was;
  }
  document.paragraph(filled(text::rewire_mass, kilograms(mass), kilograms(mass_was)));
}

void tell_shortfalls(Document& document, const SizeResult& sized) {
  document.paragraph(sized.shortfalls.empty() ? text::rewire_unknown : text::rewire_none);
  for (const plan::Shortfall& one : sized.shortfalls)
    document.paragraph(
        filled(text::rewire_shortfall,
               one.in_case.empty() ? one.subject : filled(text::where_place, one.subject, one.in_case),
               one.text, one.remedy));
}

std::string_view why(const RunChoice& run) {
  using enum plan::Reason;
  switch (run.chosen ? run.reason : kept) {
    case cheapest:
      return text::why_cheapest;
    case drop:
      return text::why_drop;
    case ampacity:
      return text::why_ampacity;
    case fuse:
      return text::why_fuse;
    case kept:
      break;
  }
  return text::why_kept;
}

const netlist::Run* run_named(const netlist::System& system, const std::string& id) {
  const auto found = std::find_if(system.runs.begin(), system.runs.end(),
                                  [&](const netlist::Run& run) { return run.id == id; });
  return found == system.runs.end() ? nullptr : &*found;
}

std::string length_of(const netlist::Run& run) {
  const std::string one_way = fmt::format("{}\u202Fm", plain(run.length.si()));
  return run.return_conductor ? filled(text::rewire_both, one_way) : one_way;
}

std::vector<std::string> row_of(const netlist::System& system, const SizeResult& sized,
                                const RunChoice& run) {
  const netlist::Run* drawn = run_named(system, run.id);
  std::vector<std::string> row{run.id,
                               run.was,
                               run.gauge == run.was ? filled(text::rewire_same_size, run.gauge) : run.gauge,
                               drawn ? length_of(*drawn) : std::string(),
                               run.fuse ? amperes(*run.fuse) : std::string(text::fuse_none),
                               amperes(run.current),
                               amperes(run.ampacity),
                               std::string(why(run)),
                               filled(text::rewire_was_is, plain(run.mass_was), kilograms(run.mass))};
  if (sized.priced) row.push_back(fmt::format("{:.2f}", run.cost));
  return row;
}

std::vector<Column> run_columns(bool priced) {
  std::vector<Column> columns{{std::string(text::column_run), 2},
                              {std::string(text::column_was), 0.9},
                              {std::string(text::column_take), 1.05},
                              {std::string(text::column_length), 1.2, Align::right},
                              {std::string(text::column_fuse), 0.85, Align::right},
                              {std::string(text::column_carries), 0.85, Align::right},
                              {std::string(text::column_may_carry), 0.95, Align::right},
                              {std::string(text::column_why), 1.7},
                              {std::string(text::column_mass), 1.45, Align::right}};
  if (priced) columns.push_back({std::string(text::column_price), 0.85, Align::right});
  return columns;
}

void tell_runs(Document& document, const netlist::System& system, const SizeResult& sized) {
  Rows rows;
  for (const RunChoice& run : sized.runs)
    if (run.renewed) rows.push_back(row_of(system, sized, run));
  if (rows.empty()) return;
  document.table(run_columns(sized.priced), rows);
  if (const std::size_t rest = sized.runs.size() - rows.size(); rest > 0)
    document.paragraph(rest == 1 ? std::string(text::rewire_stays_one) : filled(text::rewire_stays, rest),
                       Tone::small);
}

void tell_fuses(Document& document, const SizeResult& sized) {
  for (const plan::FuseChoice& fuse : sized.fuses) {
    if (fuse.rating != fuse.was)
      document.paragraph(
          sentence(filled(text::fuse_changes, fuse.id, amperes(fuse.rating), amperes(fuse.was))));
    if (fuse.inrush && fuse.opens_after)
      document.paragraph(sentence(filled(text::fuse_opens, fuse.id, amperes(*fuse.inrush))), Tone::alarm);
  }
}

/// What the rules say of cable that is cheapest: a person decides. The same is said once, of all it is said
/// of.
void tell_raised(Document& document, const ReportInput& input) {
  const auto& raised = input.raised_by_rewire;
  if (raised.empty()) return;
  document.subheading(text::rewire_raised);
  for (auto first = raised.begin(); first != raised.end(); ++first) {
    const auto same = [&](const diagnose::Finding& one) {
      return one.text == first->text && one.remedy == first->remedy;
    };
    if (std::any_of(raised.begin(), first, same)) continue;
    std::string subjects;
    for (const diagnose::Finding& one : raised)
      if (same(one)) subjects += (subjects.empty() ? "" : ", ") + where(input.system, one.subject);
    document.paragraph(filled(text::rewire_raised_one, sentence(subjects),
                              ends_in_words(input.system, first->text), first->remedy));
  }
}

std::string or_dash(std::optional<double> volts_) {
  return volts_ ? standing_volts(*volts_) : "–";
}

/// The condition in which each load keeps least.
std::vector<const plan::LoadChange*> worst_of_each(const SizeResult& sized) {
  std::vector<const plan::LoadChange*> worst;
  for (const plan::LoadChange& load : sized.loads) {
    const auto same =
        std::find_if(worst.begin(), worst.end(), [&](const plan::LoadChange* w) { return w->id == load.id; });
    if (same == worst.end())
      worst.push_back(&load);
    else if (load.drop_fraction > (*same)->drop_fraction)
      *same = &load;
  }
  return worst;
}

void tell_loads(Document& document, const netlist::System& system, const SizeResult& sized) {
  Rows rows;
  for (const plan::LoadChange* load : worst_of_each(sized))
    rows.push_back({where(system, load->id), load->in_case, or_dash(load->volts_before),
                    or_dash(load->volts_after), load->running ? percent(load->drop_fraction) : "–",
                    load->limit_fraction ? percent(*load->limit_fraction) : "–",
                    std::string(!load->running ? text::limit_stopped
                                : load->within ? text::limit_met
                                               : text::limit_broken)});
  if (rows.empty()) return;
  document.subheading(text::rewire_loads);
  document.table({{std::string(text::column_load), 2.2},
                  {std::string(text::column_case), 2},
                  {std::string(text::column_before), 1, Align::right},
                  {std::string(text::column_after), 1, Align::right},
                  {std::string(text::column_loss), 0.9, Align::right},
                  {std::string(text::column_limit), 0.9, Align::right},
                  {std::string(text::column_verdict), 1.4}},
                 rows);
}

}  // namespace

void tell_rewire(Document& document, const ReportInput& input) {
  if (!input.rewire) return;
  const SizeResult& sized = *input.rewire;
  if (sized.found) document.begin_sheet();
  document.heading(text::heading_rewire);
  if (!sized.found) return tell_shortfalls(document, sized);
  tell_verdict(document, sized);
  tell_runs(document, input.system, sized);
  tell_fuses(document, sized);
  tell_raised(document, input);
  tell_loads(document, input.system, sized);
}

}  // namespace ohmtrail::render
