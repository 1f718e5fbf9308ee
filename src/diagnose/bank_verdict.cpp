#include "ohmtrail/diagnose/bank_verdict.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "diagnose/bank_evidence.hpp"

namespace ohmtrail::diagnose {

std::string_view word(BatteryState state) {
  switch (state) {
    case BatteryState::healthy:
      return "healthy";
    case BatteryState::discharged:
      return "discharged";
    case BatteryState::charge_first:
      return "charge-first";
    case BatteryState::sulphated_or_worn:
      return "sulphated-or-worn";
    case BatteryState::suspect:
      return "suspect";
    case BatteryState::weak_cell:
      return "weak-cell";
    case BatteryState::uneven_cells:
      return "uneven-cells";
    case BatteryState::exposed_plates:
      return "exposed-plates";
    case BatteryState::dry_plates:
      return "dry-plates";
    case BatteryState::do_not_test:
      return "do-not-test";
    case BatteryState::contradictory:
      return "contradictory";
    case BatteryState::not_enough_checks:
      break;
  }
  return "not-enough-checks";
}

bool has_finding(const BatteryVerdict& verdict, std::string_view name) {
  return std::any_of(verdict.findings.begin(), verdict.findings.end(),
                     [&](const BankFinding& finding) { return finding.name == name; });
}

namespace bank {
namespace {

bool failed(const Signs& signs) {
  return signs.load_failed || signs.tester_failed;
}

/// What stands against the battery itself, worst first; empty: nothing.
std::optional<BatteryState> fault_of(const Signs& signs) {
  if (signs.dead_cell || (signs.uneven_cells && signs.load_failed)) return BatteryState::weak_cell;
  if (signs.contradiction) return BatteryState::contradictory;
  if (signs.low_charge) return std::nullopt;
  if (failed(signs)) return BatteryState::sulphated_or_worn;
  // A passed load test outweighs the rule of thumb of its resistance.
  if (signs.resistance_failed && !signs.load_passed) return BatteryState::sulphated_or_worn;
  return std::nullopt;
}

std::string charged(const Evidence& evidence) {
  return fmt::format("{:.2f} V open-circuit, about {:.0f} % charged", evidence.source.open_circuit.si(),
                     evidence.source.charge.percent());
}

std::string inside(const Evidence& evidence) {
  return fmt::format("{:.2f} V lost for every 100 A{}", evidence.source.resistance.si() * 100,
                     evidence.source.resistance_measured ? "" : " by its label");
}

std::string before_replacing(const Evidence& evidence) {
  return evidence.signs.plates_exposed
             ? " Cover its plates, charge it and test once more before it is replaced."
             : "";
}

}  // namespace

BatteryState state_of(const Evidence& evidence) {
  const auto& signs = evidence.signs;
  if (signs.do_not_test) return BatteryState::do_not_test;
  if (signs.plates_dry) return BatteryState::dry_plates;
  if (const auto fault = fault_of(signs)) return *fault;
  if (signs.plates_exposed) return BatteryState::exposed_plates;
  if (signs.low_charge)
    return evidence.facts.load_test || evidence.facts.tester ? BatteryState::charge_first
                                                             : BatteryState::discharged;
  if (signs.load_doubtful && !signs.charge_known) return BatteryState::charge_first;
  if (signs.resistance_raised || signs.tester_suspect) return BatteryState::suspect;
  if (signs.uneven_cells) return BatteryState::uneven_cells;
  if (signs.load_passed || signs.tester_passed || signs.cells_good) return BatteryState::healthy;
  return BatteryState::not_enough_checks;
}

std::string in_words(const Evidence& evidence, BatteryState state) {
  switch (state) {
    case BatteryState::healthy:
      return fmt::format(
          "Healthy: {}; {}.{}", charged(evidence), inside(evidence),
          evidence.signs.tested_under_load() ? "" : " Its cells say so; it was not tested under load.");
    case BatteryState::discharged:
      return fmt::format("Discharged, nothing else is known against it: {}. Charge it and test again.",
                         charged(evidence));
    case BatteryState::charge_first:
      return fmt::format(
          "No verdict yet: {}. A load test tells nothing before it is charged. Charge it and test again.",
          charged(evidence));
    case BatteryState::sulphated_or_worn:
      return fmt::format(
          "Sulphated or worn out: charged enough at rest ({}), but it gives way under load: {}.{}",
          charged(evidence), inside(evidence), before_replacing(evidence));
    case BatteryState::suspect:
      return fmt::format("Suspect: {}, more than a sound one loses. Watch it, test it again at the posts.",
                         inside(evidence));
    case BatteryState::weak_cell:
      return fmt::format(
          "One cell is dead or weak: {}. Charge it once and read the cells again; then replace it.",
          charged(evidence));
    case BatteryState::uneven_cells:
      return "Its cells differ: charge fully, equalise if the maker allows it, and read them again.";
    case BatteryState::exposed_plates:
      return "Its plates stand out of the acid: cover them with distilled water, charge, test again.";
    case BatteryState::dry_plates:
      return "Its plates stood dry: replace it.";
    case BatteryState::do_not_test:
      return "Hands off: it must be neither charged nor loaded as it is.";
    case BatteryState::contradictory:
      return "Its checks contradict each other: repeat them before it is judged.";
    case BatteryState::not_enough_checks:
      break;
  }
  return fmt::format("Not enough checks for a verdict: {}, which alone does not prove it.",
                     evidence.source.charge_from.starts_with("not given")
                         ? std::string("its charge was not measured")
                         : charged(evidence));
}

}  // namespace bank
}  // namespace ohmtrail::diagnose
