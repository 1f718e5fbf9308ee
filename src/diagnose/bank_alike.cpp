#include "diagnose/bank_alike.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <set>

#include "ohmtrail/trade/battery_facts.hpp"

namespace ohmtrail::diagnose::bank {
namespace {

constexpr const char* practice = "common practice";
constexpr double unlike = 1.1;

std::string_view chemistry_word(trade::Chemistry chemistry) {
  switch (chemistry) {
    case trade::Chemistry::agm:
      return "AGM";
    case trade::Chemistry::gel:
      return "gel";
    case trade::Chemistry::lfp:
      return "lithium iron phosphate";
    case trade::Chemistry::flooded:
      break;
  }
  return "flooded";
}

/// 0: not given.
double ampere_hours(const netlist::Battery& battery) {
  return battery.capacity ? battery.capacity->si() / 3600 : 0;
}

}  // namespace

void judge_chemistry(BatteryGroup& group, const Members& members, const Indices& batteries) {
  std::set<trade::Chemistry> kinds;
  std::vector<std::string> words;
  for (const auto i : batteries)
    if (kinds.insert(members.system.batteries[i].chemistry).second)
      words.emplace_back(chemistry_word(members.system.batteries[i].chemistry));
  if (kinds.size() < 2) return;
  const bool lithium = kinds.count(trade::Chemistry::lfp) > 0;
  group.findings.push_back({"unlike-chemistry", lithium ? Severity::before_further_use : Severity::soon,
                            fmt::format("{} batteries work together", fmt::join(words, " and ")), practice,
                            "They need unlike charging voltages: use one kind throughout."});
}

void judge_capacity(BatteryGroup& group, const Members& members, const Indices& batteries, Severity severity,
                    const char* remedy) {
  const netlist::Battery *least = nullptr, *most = nullptr;
  for (const auto i : batteries) {
    const auto& battery = members.system.batteries[i];
    if (ampere_hours(battery) <= 0) continue;
    if (!least || ampere_hours(battery) < ampere_hours(*least)) least = &battery;
    if (!most || ampere_hours(battery) > ampere_hours(*most)) most = &battery;
  }
  if (!least || ampere_hours(*most) < unlike * ampere_hours(*least)) return;
  group.findings.push_back({"unlike-capacity", severity,
                            fmt::format("{} has {:.0f} Ah, {} {:.0f} Ah", least->id, ampere_hours(*least),
                                        most->id, ampere_hours(*most)),
                            practice, remedy});
}

void judge_age(BatteryGroup& group, const Members& members, const Indices& batteries) {
  std::set<std::string> years;
  for (const auto i : batteries)
    if (const auto& made = members.system.batteries[i].made; made.size() >= 4)
      years.insert(made.substr(0, 4));
  if (years.size() < 2) return;
  group.findings.push_back({"unlike-age", Severity::improvement,
                            fmt::format("made in {}", fmt::join(years, ", ")), practice,
                            "The oldest pulls the new ones down to its age: replace a bank as a whole."});
}

}  // namespace ohmtrail::diagnose::bank
