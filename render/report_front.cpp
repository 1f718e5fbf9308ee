#include <algorithm>
#include <cmath>

#include "render/number.hpp"
#include "render/repairs.hpp"
#include "render/report_parts.hpp"
#include "render/split_bar.hpp"
#include "render/text.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

constexpr std::size_t first_repairs = 3;

/// Volts for someone who knows nothing of prefixes; small ones keep theirs.
std::string plain_volts(double value) {
  return std::fabs(value) >= 0.095 ? standing_volts(value) : volts(value);
}

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
  return count == 1 ? std::string(one) : filled(many, count);
}

std::string what_was_examined(const ReportInput& input) {
  const netlist::System& s = input.system;
  const std::pair<std::size_t, std::string> kinds[] = {
      {s.batteries.size(), counted(s.batteries.size(), text::one_battery, text::count_batteries)},
      {s.runs.size(), counted(s.runs.size(), text::one_run, text::count_runs)},
      {s.joints.size(), counted(s.joints.size(), text::one_joint, text::count_joints)},
      {s.switches.size() + s.fuses.size(),
       counted(s.switches.size() + s.fuses.size(), text::one_switch, text::count_switches)},
      {s.loads.size(), counted(s.loads.size(), text::one_load, text::count_loads)}};
  std::string list;
  for (const auto& [count, words] : kinds)
    if (count > 0) list += (list.empty() ? "" : ", ") + words;
  return filled(text::examined, list, fmt::format("{:g}\u202FV", s.info.nominal.si()),
                counted(input.solved.size(), text::case_singular, text::case_plural));
}

struct Fed {
  const solve::LoadResult* load = nullptr;
  Source from = Source::battery;
};

Fed load_result(const ReportInput& input, const diagnose::SagSplit& split) {
  for (const solve::CaseSolution& solved : input.solved) {
    if (solved.network.case_name != split.in_case) continue;
    const auto element = [&](int i) -> const network::Element& {
      return solved.network.elements[static_cast<std::size_t>(i)];
    };
    for (const solve::LoadResult& load : solved.loads)
      if (element(load.element).id == split.load)
        return {&load, load.supply < 0 ? Source::battery : source_of(input.system, element(load.supply).id)};
  }
  return {};
}

std::string outcome(const ReportInput& input, const Repair& repair) {
  const diagnose::HotSpot& spot = repair.first();
  std::string told;
  if (spot.recoverable && spot.recoverable->volts > 0)
    told = filled(repair.in_doubt()  ? text::would_give_back
                  : repair.of_each() ? text::each_gives_back
                                     : text::gives_back,
                  plain_volts(spot.recoverable->volts), where(input.system, spot.recoverable->load));
  if (spot.waste && spot.waste->watt_hours >= 1 && !repair.in_doubt())
    told += (told.empty() ? "" : "; ") +
            filled(text::saves_a_day, fmt::format("{}\u202FWh", plain(spot.waste->watt_hours)));
  return sentence(told);
}

std::string repair_title(const ReportInput& input, const Repair& repair) {
  return sentence(where(input.system, repair) + ": " + std::string(what_it_is(repair))) +
         filled(text::number_in_diagram, ranks(repair));
}

bool gives_back(const Repair& repair) {
  return repair.first().recoverable && repair.first().recoverable->volts > 0;
}

std::string told_cure(const ReportInput& input, const Repair& repair, std::string_view words) {
  const diagnose::Recoverable& back = *repair.first().recoverable;
  return filled(words, where(input.system, repair), plain_volts(back.volts), where(input.system, back.load));
}

/// What to put right first, or why nothing is.
void add_first_thing(const ReportInput& input, std::vector<std::string>& sentences) {
  if (input.hot_spots.empty()) {
    sentences.emplace_back(input.inferred ? text::answer_nothing_likely : text::answer_sound);
    return;
  }
  const std::vector<Repair> list = repairs(input.hot_spots);
  const auto sure = std::find_if_not(list.begin(), list.end(), [](const Repair& r) { return r.in_doubt(); });
  if (sure != list.begin()) {
    sentences.push_back(filled(text::answer_in_doubt, where(input.system, list.front())));
    if (sure != list.end() && gives_back(*sure))
      sentences.push_back(told_cure(input, *sure, text::answer_sure));
  } else {
    sentences.push_back(gives_back(*sure) ? told_cure(input, *sure, text::answer_cure)
                                          : filled(text::answer_first, where(input.system, *sure)));
  }
}

/// At most four sentences without a word of the trade.
std::vector<std::string> answer(const ReportInput& input, const diagnose::SagSplit* split) {
  std::vector<std::string> sentences;
  if (!split)
    sentences.emplace_back(text::answer_nothing_ran);
  else if (const Fed fed = load_result(input, *split); fed.load) {
    sentences.push_back(filled(text::answer_lost, where(input.system, split->load), split->in_case,
                               standing_volts(split->sag), standing_volts(fed.load->volts + split->sag),
                               words_of(fed.from).in, standing_volts(fed.load->volts)));
    const NamedPart most = named_parts(split->parts, fed.from).front();
    sentences.push_back(filled(text::answer_part, plain_volts(most.volts), most.name));
  }
  add_first_thing(input, sentences);
  return sentences;
}

void tell_facts(Document& document, const ReportInput& input) {
  const netlist::Job& job = input.system.info.job;
  const auto fact = [&](std::string_view label, const std::string& value) {
    document.entry(label, value.empty() ? std::string(text::not_told) : value);
  };
  fact(text::label_customer, job.customer);
  fact(text::label_technician, job.technician);
  fact(text::label_examined, what_was_examined(input));
  fact(text::label_complaint, job.complaint);
}

std::string nothing_to_do(const ReportInput& input) {
  const std::string words(text::nothing_to_do);
  return decided_findings(input).empty() ? words : words + " " + std::string(text::findings_remain);
}

void tell_urgency(Document& document, const ReportInput& input) {
  const std::vector<diagnose::Finding> findings = decided_findings(input);
  const auto urgent = std::count_if(findings.begin(), findings.end(), [](const diagnose::Finding& f) {
    return f.severity == diagnose::Severity::before_further_use;
  });
  if (urgent == 0) return;
  document.paragraph(urgent == 1 ? std::string(text::urgent_one) : filled(text::urgent, urgent), Tone::alarm);
}

}  // namespace

std::string running_title(const ReportInput& input) {
  const netlist::SystemInfo& info = input.system.info;
  const std::string number = info.job.reference.empty() ? std::string(text::report_without_number)
                                                        : filled(text::report_number, info.job.reference);
  return number + ": " + info.name + (info.job.date.empty() ? "" : ", " + info.job.date);
}

void tell_front(Document& document, const ReportInput& input) {
  const netlist::SystemInfo& info = input.system.info;
  const std::string number =
      info.job.reference.empty() ? "" : " · " + filled(text::report_number, info.job.reference);
  document.masthead(std::string(text::report_title) + number, info.job.date, info.name);
  tell_facts(document, input);
  const auto worst = worst_split(input.system, input.solved, input.splits);
  const diagnose::SagSplit* split = worst ? &input.splits[*worst] : nullptr;
  document.heading(text::heading_answer);
  document.callout(answer(input, split));
  tell_urgency(document, input);
  if (split) {
    document.picture(filled(text::heading_split, where(input.system, split->load)),
                     split_bar(split->parts, document.width(), load_result(input, *split).from));
  }
  document.heading(text::heading_to_do);
  if (input.hot_spots.empty()) document.paragraph(nothing_to_do(input));
  const std::vector<Repair> list = repairs(input.hot_spots);
  for (std::size_t k = 0; k < std::min(first_repairs, list.size()); ++k)
    document.together([&] {
      document.numbered(static_cast<int>(k) + 1, repair_title(input, list[k]),
                        what_to_do(input.system, list[k]), outcome(input, list[k]));
    });
}

}  // namespace ohmtrail::render
