#include <fmt/core.h>

#include "diagnose/bank_evidence.hpp"
#include "ohmtrail/trade/battery_charge.hpp"

namespace ohmtrail::diagnose::bank {
namespace {

// From memory: rested charts differ by 50 to 100 mV a cell in the middle.
constexpr units::Voltage chart_doubt{0.025};
// Below this a management switch has opened or is about to; common practice.
constexpr double protection_cell = 2.6;
constexpr double nearly_empty = 0.3;

void judge_rest_of_lithium(Evidence& evidence) {
  const auto cell = *evidence.rest / evidence.cells;
  const auto range =
      trade::charge_range_at_rest(trade::Chemistry::lfp, cell, evidence.temperature, chart_doubt);
  evidence.findings.push_back(
      {"lithium-rest-voltage", std::nullopt,
       fmt::format("{:.2f} V at rest leaves anything from {:.0f} to {:.0f} % charge open: this chemistry "
                   "keeps nearly one "
                   "voltage from nearly empty to nearly full",
                   evidence.rest->si(), range.least.percent(), range.most.percent()),
       "two public lithium iron phosphate voltage tables",
       "Read the charge off its own monitor, or charge it fully and count what it gives."});
  evidence.signs.charge_known = range.most.of_one() <= nearly_empty;
  evidence.signs.low_charge = evidence.signs.charge_known;
  if (cell.si() < protection_cell)
    evidence.findings.push_back(
        {"protection-open", Severity::soon,
         fmt::format("{:.2f} V is no rest voltage of this battery: its management switch has opened, "
                     "or it is empty",
                     evidence.rest->si()),
         common_practice, "Wake and charge it with a charger made for this chemistry."});
}

}  // namespace

void judge_lithium(Evidence& evidence) {
  if (!evidence.lithium()) return;
  if (evidence.rest) judge_rest_of_lithium(evidence);
  if (!evidence.facts.load_test) return;
  evidence.findings.push_back({"not-a-lithium-test", std::nullopt,
                               "the half-CCA load test is made for lead-acid batteries: its limits say "
                               "nothing of a lithium battery, and its "
                               "management switch may open under it",
                               common_practice,
                               "Judge it by its monitor and by a measured discharge at its usual load."});
}

}  // namespace ohmtrail::diagnose::bank
