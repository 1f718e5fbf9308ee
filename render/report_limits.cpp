#include <algorithm>
#include <cmath>
#include <set>

#include "render/number.hpp"
#include "render/report_parts.hpp"
#include "render/text.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

constexpr std::size_t short_table = 8;  // rows that are not parted
constexpr std::size_t most_lines = 4;   // a longer list runs in

/// With the interval that the readings leave, where they leave more than a hair.
std::string loss_in_words(const solve::LoadResult& load, const diagnose::LossInterval* interval) {
  if (!interval || !load.running) return percent(load.drop_fraction);
  const std::string low = percent(std::max(0.0, interval->low)), high = percent(interval->high);
  return low == high ? low : filled(text::between, low, high);
}

std::vector<std::string> limit_row(const ReportInput& input, const solve::CaseSolution& solved,
                                   const solve::LoadResult& load) {
  const network::Element& e = solved.network.elements[static_cast<std::size_t>(load.element)];
  const diagnose::LossInterval* interval = interval_of(input, solved.network.case_name, e.id);
  return {where(input.system, e.id),
          solved.network.case_name,
          standing_volts(load.volts),
          loss_in_words(load, interval),
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

/// Beyond 1 the limit is broken; a load that stopped is worse than any.
double share_of_limit(const solve::LoadResult& load) {
  if (!load.running) return 1e9;
  return std::isfinite(load.limit_fraction) && load.limit_fraction > 0
             ? load.drop_fraction / load.limit_fraction
             : load.drop_fraction;
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

const diagnose::LossInterval* interval_of(const ReportInput& input, const std::string& in_case,
                                          const std::string& load) {
  const auto found =
      std::find_if(input.loss_intervals.begin(), input.loss_intervals.end(),
                   [&](const diagnose::LossInterval& i) { return i.in_case == in_case && i.load == load; });
  return found == input.loss_intervals.end() ? nullptr : &*found;
}

std::string_view limit_verdict(const solve::LoadResult& load, const diagnose::LossInterval* interval) {
  if (!load.running) return text::limit_stopped;
  if (!std::isfinite(load.limit_fraction)) return "–";
  if (interval && interval->low <= load.limit_fraction && interval->high > load.limit_fraction)
    return text::limit_undecided;
  if (interval) return interval->low > load.limit_fraction ? text::limit_broken : text::limit_met;
  return load.within ? text::limit_met : text::limit_broken;
}

void tell_limits(Document& document, const ReportInput& input, const Brevity& brevity) {
  std::vector<RunOfLoad> worst = worst_of_each_load(input);
  if (worst.empty()) return;
  const std::size_t all = worst.size();
  if (all > brevity.limits) {
    std::stable_sort(worst.begin(), worst.end(), [](const RunOfLoad& a, const RunOfLoad& b) {
      return share_of_limit(*a.load) > share_of_limit(*b.load);
    });
    worst.resize(brevity.limits);
  }
  Rows rows;
  for (const auto& [solved, load] : worst) rows.push_back(limit_row(input, *solved, *load));
  const auto tell_table = [&] {
    document.heading(text::heading_limits);
    document.table({{std::string(text::column_load), 2.4},
                    {std::string(text::column_case), 2.2},
                    {std::string(text::column_volts), 1, Align::right},
                    {std::string(text::column_loss), 1.5, Align::right},
                    {std::string(text::column_limit), 0.9, Align::right},
                    {std::string(text::column_verdict), 1.8}},
                   rows);
  };
  if (rows.size() <= short_table)
    document.together(tell_table);
  else
    tell_table();
  if (all > rows.size()) document.paragraph(filled(text::limits_more, all - rows.size()), Tone::small);
  document.paragraph(input.loss_intervals.empty() ? text::limits_rule_computed : text::limits_rule,
                     Tone::small);
}

void tell_not_examined(Document& document, const ReportInput& input) {
  document.heading(text::heading_not_examined);
  const std::vector<std::string> list = not_examined(input);
  if (list.empty()) document.paragraph(text::all_examined);
  if (list.size() > most_lines) {
    std::string all = list.front();
    for (std::size_t k = 1; k < list.size(); ++k) all += "; " + list[k];
    document.paragraph(all);
    return;
  }
  for (const std::string& item : list) document.paragraph(item);
}

}  // namespace ohmtrail::render
