#include <fmt/core.h>

#include <cmath>

#include "diagnose/bank_evidence.hpp"
#include "ohmtrail/trade/battery_charge.hpp"
#include "ohmtrail/trade/battery_limits.hpp"

namespace ohmtrail::diagnose::bank {
namespace {

constexpr double hour = 3600;
constexpr const char* rest_source =
    "rest: cart owner manual (6 h, flooded), US Army TM 9-6115-730-24 (3 h, AGM); volts: the state-of-charge "
    "tables";
// A cell that has shorted leaves the others their volts: the battery steps down by one cell's.
constexpr double volts_of_a_cell = 2.1;
constexpr double step_tolerance = 0.6;

bool rested_enough(const Evidence& evidence) {
  const auto& rest = *evidence.facts.rest;
  return !rest.rested || *rest.rested >= trade::rest_needed(evidence.facts.chemistry);
}

void refuse_charging(Evidence& evidence) {
  evidence.findings.push_back(
      {"charger-on", Severity::improvement,
       fmt::format("{:.2f} V was read with a charger on: that is the charger's voltage",
                   evidence.facts.rest->volts.si()),
       common_practice,
       fmt::format("Switch chargers and loads off, wait {:.0f} h, read again.",
                   trade::rest_needed(evidence.facts.chemistry).si() / hour)});
}

void note_surface_charge(Evidence& evidence) {
  const auto& rest = *evidence.facts.rest;
  evidence.findings.push_back(
      {"surface-charge", std::nullopt,
       fmt::format(
           "it rested {:.3g} h of the {:.0f} h it needs: {:.2f} V may be more than its charge is worth",
           rest.rested->si() / hour, trade::rest_needed(evidence.facts.chemistry).si() / hour,
           rest.volts.si()),
       rest_source,
       "Let it rest longer, or draw the surface charge off: head lamps on for 15 s, then wait 3 min and read "
       "(US Army TM 5-3805-262-20)."});
}

void note_too_high(Evidence& evidence) {
  evidence.findings.push_back(
      {"not-at-rest", Severity::improvement,
       fmt::format("{:.2f} V is more than any {:.3g} V battery rests at", evidence.facts.rest->volts.si(),
                   evidence.facts.nominal.si()),
       "from memory: lead-acid textbooks, 2.2 V a cell",
       "Look for a charger or solar panel that was still on, and check the nominal voltage."});
}

/// The number of whole cells that are missing from `rest` against `expected`; 0: the gap is not a step of
/// cells.
int cells_missing(double expected, double rest) {
  const double gap = expected - rest;
  const auto missing = static_cast<int>(std::lround(gap / volts_of_a_cell));
  return missing > 0 && std::abs(gap - missing * volts_of_a_cell) < step_tolerance ? missing : 0;
}

/// What the battery should rest at: by its gravities where they say so, else as if full.
double expected_rest(const Evidence& evidence) {
  const auto cell = evidence.gravities ? trade::cell_volts_at_gravity(evidence.gravities->mean_of_others)
                                       : trade::rested_cell(evidence.facts.chemistry, units::Fraction{1},
                                                            trade::reference_electrolyte_temperature);
  return cell.si() * evidence.cells;
}

bool judge_steps(Evidence& evidence) {
  const double expected = expected_rest(evidence);
  const double empty = trade::rested_cell(evidence.facts.chemistry, units::Fraction{0},
                                          trade::reference_electrolyte_temperature)
                           .si() *
                       evidence.cells;
  const int missing = evidence.rest->si() < empty ? cells_missing(expected, evidence.rest->si()) : 0;
  if (missing == 0) return false;
  evidence.signs.dead_cell = true;
  evidence.findings.push_back(
      {"dead-cell", Severity::soon,
       fmt::format(
           "it rests at {:.2f} V where {:.2f} V is expected{}: as much lower as {} of its {} cells make",
           evidence.facts.rest->volts.si(), expected,
           evidence.gravities ? " from its gravity" : " when charged", missing, evidence.cells),
       "2.1 V a cell; common practice",
       evidence.gravities
           ? "Replace it: a shorted cell takes a charge from its neighbours and gives nothing."
           : "Charge it for a night, rest it, read again; if it comes back to the same volts, a cell is "
             "shorted and it must be replaced. Read each cell's gravity."});
  return true;
}

void judge_contradiction(Evidence& evidence) {
  if (!evidence.gravities || !rested_enough(evidence)) return;
  const double by_gravity = trade::cell_volts_at_gravity(evidence.gravities->mean).si() * evidence.cells;
  const double gap = (by_gravity - evidence.rest->si()) / evidence.cells;
  if (std::abs(gap) <= trade::cell_volts_contradiction.si()) return;
  evidence.signs.contradiction = true;
  const auto text = fmt::format("a mean gravity of {:.3f} belongs to {:.2f} V at rest, but {:.2f} V was read",
                                evidence.gravities->mean, by_gravity, evidence.facts.rest->volts.si());
  if (gap > 0)
    evidence.findings.push_back(
        {"gravity-above-volts", Severity::soon, text, common_practice,
         "Look for a load that was left on, a bad contact under the probe, a cell that was not "
         "read, or acid that was added; then read both again."});
  else
    evidence.findings.push_back(
        {"volts-above-gravity", Severity::soon, text, common_practice,
         "Surface charge, or water lying on top of the acid: charge until it gasses so that it "
         "mixes, rest it, read both again."});
}

void note_rest(Evidence& evidence) {
  const auto& rest = *evidence.facts.rest;
  const auto charge = *trade::charge_from_rest(evidence.facts);
  const auto time = rest.rested ? fmt::format("after {:.3g} h", rest.rested->si() / hour)
                                : std::string("(hours of rest not given)");
  evidence.findings.push_back(
      {"rest-voltage", std::nullopt,
       fmt::format("{:.2f} V at rest {}: about {:.0f} % charged", rest.volts.si(), time, charge.percent()),
       rest_source, ""});
}

/// Too little charge for a load test to mean anything.
void judge_gate(Evidence& evidence) {
  auto& signs = evidence.signs;
  const double gate = trade::least_cell_before_load_test.si() * 6;
  if (evidence.rest)
    signs.charge_known = true, signs.low_charge = evidence.as_12_volts(*evidence.rest) < gate - 1e-9;
  if (evidence.gravities) {
    signs.charge_known = true;
    signs.low_charge =
        signs.low_charge || evidence.gravities->mean < trade::least_gravity_before_load_test - 1e-9;
  }
  const auto& test = evidence.facts.load_test;
  if (!signs.charge_known && test && !test->charging && test->before) {
    signs.charge_known = true;
    signs.low_charge = evidence.as_12_volts(*test->before) < gate - 1e-9;
  }
}

void say_discharged(Evidence& evidence) {
  evidence.findings.push_back(
      {"low-charge", Severity::soon,
       fmt::format(
           "it is about {:.0f} % charged, less than a load test needs ({:.2f} V for {:.3g} V, or {:.3f})",
           evidence.source.charge.percent(), trade::least_cell_before_load_test.si() * evidence.cells,
           evidence.facts.nominal.si(), trade::least_gravity_before_load_test),
       "passenger-car service manuals 2003; US Army TM 5-3805-281-24-2",
       "Charge it fully, let it rest, test again. Find out why it was not charged."});
}

}  // namespace

void judge_rest(Evidence& evidence) {
  if (evidence.facts.rest && evidence.facts.rest->charging) refuse_charging(evidence);
  if (evidence.lithium()) return;
  if (evidence.rest) {
    note_rest(evidence);
    if (!rested_enough(evidence)) note_surface_charge(evidence);
    if (*evidence.rest / evidence.cells > trade::most_at_any_rest) note_too_high(evidence);
    if (!judge_steps(evidence)) judge_contradiction(evidence);
  }
  judge_gate(evidence);
  if (evidence.signs.low_charge && !evidence.signs.dead_cell) say_discharged(evidence);
}

}  // namespace ohmtrail::diagnose::bank
