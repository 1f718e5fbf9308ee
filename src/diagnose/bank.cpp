#include "ohmtrail/diagnose/bank.hpp"

#include <utility>

#include "diagnose/bank_evidence.hpp"
#include "diagnose/bank_groups.hpp"

namespace ohmtrail::diagnose {
namespace {

void judge(bank::Evidence& evidence) {
  bank::judge_safety(evidence);
  bank::judge_levels(evidence);
  bank::judge_cells(evidence);
  bank::judge_rest(evidence);
  bank::judge_lithium(evidence);
  bank::judge_load_test(evidence);
  bank::judge_tester(evidence);
  bank::judge_resistance(evidence);
  bank::judge_case(evidence);
  bank::advise_next_test(evidence);
}

BatteryVerdict verdict_of(bank::Evidence& evidence) {
  const auto& source = evidence.source;
  BatteryVerdict verdict;
  verdict.id = evidence.battery->id;
  verdict.charge = source.charge;
  verdict.charge_from = source.charge_from;
  verdict.emf = source.open_circuit;
  verdict.emf_from = source.open_circuit_from;
  verdict.resistance = source.resistance;
  verdict.resistance_from = source.resistance_from;
  verdict.sound_resistance = source.sound_resistance;
  verdict.lost_per_100_amperes = source.resistance * units::Current{100};
  verdict.verdict = bank::state_of(evidence);
  verdict.in_words = bank::in_words(evidence, verdict.verdict);
  verdict.findings = std::move(evidence.findings);
  return verdict;
}

void list_assumptions(Bank& result, const bank::Evidence& evidence) {
  const auto& id = evidence.battery->id;
  const auto& source = evidence.source;
  if (source.charge_from.starts_with("not given"))
    result.assumptions.push_back({id, "state of charge " + source.charge_from, source.charge.of_one()});
  if (!source.resistance_measured)
    result.assumptions.push_back(
        {id, "resistance: " + source.resistance_from, source.resistance.si(), network::Assumed::resistance});
  for (const auto& note : source.notes)
    if (note.name != "size-unknown") result.assumptions.push_back({id, note.text, std::nullopt});
}

}  // namespace

Bank judge_bank(const netlist::System& system) {
  Bank result;
  for (const auto& battery : system.batteries) {
    auto evidence = bank::gather(battery, system.info);
    judge(evidence);
    list_assumptions(result, evidence);
    result.batteries.push_back(verdict_of(evidence));
  }
  result.groups = bank::judge_groups(system, result.batteries);
  return result;
}

const std::vector<std::string_view>& battery_cautions() {
  static const std::vector<std::string_view> cautions{
      "Battery acid burns: goggles and gloves on, water at hand; acid in an eye is rinsed for 15 min, then a "
      "doctor.",
      "Charging makes explosive gas: air the space, no flame or spark, connect and disconnect with "
      "everything off.",
      "A spanner across the posts welds itself fast: no rings, insulated tools, negative off first and on "
      "last.",
      "This advises; it does not replace the maker's instructions, the local code or a licensed "
      "electrician."};
  return cautions;
}

}  // namespace ohmtrail::diagnose
