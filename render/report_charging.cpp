#include <algorithm>

#include "render/number.hpp"
#include "render/report_parts.hpp"
#include "render/text.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

using diagnose::ChargeSplit;

/// What loses less than this share of all that is lost is not worth naming.
constexpr double least_share = 0.1;
constexpr std::size_t most_places = 2;

bool is_wrong(const ChargeSplit& split) {
  return !split.within || !split.full;
}

/// What is wrong first, then by what is lost.
std::vector<const ChargeSplit*> worst_first(const std::vector<ChargeSplit>& splits) {
  std::vector<const ChargeSplit*> list;
  for (const ChargeSplit& split : splits) list.push_back(&split);
  std::stable_sort(list.begin(), list.end(), [](const ChargeSplit* a, const ChargeSplit* b) {
    return is_wrong(*a) != is_wrong(*b) ? is_wrong(*a) : a->fraction > b->fraction;
  });
  return list;
}

std::string batteries(const ChargeSplit& split) {
  std::string list;
  for (const std::string& id : split.batteries) list += (list.empty() ? "" : ", ") + id;
  return list;
}

std::string places(const netlist::System& system, const ChargeSplit& split) {
  std::string list;
  std::size_t count = 0;
  for (const diagnose::ChargeLoss& loss : split.elements) {
    if (count == most_places || loss.lost < least_share * split.lost || !(loss.lost > 0)) break;
    list += (list.empty() ? "" : "; ") + where(system, loss.element) + " " + volts(loss.lost);
    ++count;
  }
  return sentence(list);
}

std::string_view verdict(const ChargeSplit& split) {
  if (split.current <= 0) return text::charging_none;
  return split.within ? text::limit_met : text::limit_broken;
}

std::vector<std::string> row_of(const netlist::System& system, const ChargeSplit& split) {
  return {source_in_words(system, split.charger),
          batteries(split),
          split.in_case,
          standing_volts(split.charger_volts),
          standing_volts(split.battery_volts),
          volts(split.lost),
          percent(split.fraction),
          std::string(verdict(split)),
          places(system, split)};
}

void tell_never_full(Document& document, const netlist::System& system, const ChargeSplit& split) {
  if (split.full || !split.reaches) return;
  const std::string charger = source_in_words(system, split.charger);
  document.paragraph(filled(text::charging_never_full, batteries(split), standing_volts(*split.reaches),
                            standing_volts(split.set_point), charger, split.in_case,
                            split.charger_is_spent ? filled(text::charging_spent, amperes(split.limit))
                                                   : std::string(text::charging_way)));
}

}  // namespace

void tell_charging(Document& document, const ReportInput& input, const Brevity& brevity) {
  if (input.charging.empty()) return;
  std::vector<const ChargeSplit*> list = worst_first(input.charging);
  const std::size_t all = list.size();
  list.resize(std::min(all, brevity.charging));
  Rows rows;
  for (const ChargeSplit* split : list) rows.push_back(row_of(input.system, *split));
  document.subheading(text::heading_charging);
  document.table({{std::string(text::column_from), 1.5},
                  {std::string(text::column_to), 1.5},
                  {std::string(text::column_condition), 1.4},
                  {std::string(text::column_at_charger), 1, Align::right},
                  {std::string(text::column_at_posts), 1, Align::right},
                  {std::string(text::column_lost), 0.9, Align::right},
                  {std::string(text::column_share), 0.7, Align::right},
                  {std::string(text::column_verdict), 0.9},
                  {std::string(text::column_most_in), 3}},
                 rows);
  for (const ChargeSplit* split : list) tell_never_full(document, input.system, *split);
  if (all > list.size()) document.paragraph(filled(text::charging_more, all - list.size()), Tone::small);
  document.paragraph(filled(text::charging_rule, percent(diagnose::most_charging_drop)), Tone::small);
}

}  // namespace ohmtrail::render
