#include <fmt/core.h>

#include "diagnose/bank_evidence.hpp"

namespace ohmtrail::diagnose::bank {
namespace {

constexpr const char* load_test_source = "US Army TM 5-4210-230-14&P-1, battery Table 5: half CCA for 15 s";

std::string scaling(const Evidence& evidence, const trade::LoadTestResult& result) {
  const auto& test = *evidence.facts.load_test;
  std::string text;
  if (result.load_scaled)
    text += fmt::format("; scaled from {:.0f} A to {:.0f} A ({})", test.amps.si(), result.proper.amps.si(),
                        result.proper.from);
  if (result.hold_scaled)
    text += fmt::format("; held only {:.3g} s, its sag raised by {:.0f} % for 15 s", test.duration->si(),
                        100 * (trade::sag_growth_to_full_hold(*test.duration) - 1));
  if (result.hold_assumed) text += "; seconds not given, taken as 15";
  if (!trade::load_test_table_reaches(result.battery))
    text += "; colder than the manual's table, warm it and repeat";
  return text;
}

std::string numbers(const Evidence& evidence, const trade::LoadTestResult& result) {
  const auto& test = *evidence.facts.load_test;
  return fmt::format(
      "{:.2f} V under {:.0f} A ({:.2f} V before); at {:.0f} A for 15 s that is {:.2f} V, and a good one "
      "keeps {:.2f} V at {:.0f} °C{}",
      test.volts.si(), test.amps.si(), result.before.si(), result.proper.amps.si(), result.projected.si(),
      result.minimum.si(), result.battery.celsius(), scaling(evidence, result));
}

void say_passed(Evidence& evidence, const trade::LoadTestResult& result) {
  evidence.signs.load_passed = true;
  evidence.findings.push_back(
      {"load-test-passed", std::nullopt, numbers(evidence, result), load_test_source, ""});
  evidence.findings.push_back(
      {"starting-only", std::nullopt,
       fmt::format(
           "passing proves that it starts an engine, not that it carries a house through the night; it loses "
           "{:.2f} V for every 100 A",
           evidence.source.resistance.si() * 100),
       common_practice, "For a house bank measure what it gives over hours."});
}

void say_failed(Evidence& evidence, const trade::LoadTestResult& result) {
  evidence.signs.load_failed = true;
  evidence.findings.push_back(
      {"load-test-failed", Severity::soon, numbers(evidence, result), load_test_source,
       "Replace it, unless a cell, the acid level or the tester's clamps turn out to be the cause."});
}

void say_no_verdict(Evidence& evidence, const trade::LoadTestResult& result) {
  evidence.signs.load_doubtful = true;
  evidence.findings.push_back(
      {"load-test-not-judged", std::nullopt,
       fmt::format(
           "{:.2f} V under {:.0f} A gives no verdict: {}", evidence.facts.load_test->volts.si(),
           evidence.facts.load_test->amps.si(),
           evidence.signs.charge_known ? "it was not charged enough" : "what charge it had is not known"),
       load_test_source,
       fmt::format("Charge fully, rest, then {:.0f} A for 15 s.", result.proper.amps.si())});
}

void say_doubtful(Evidence& evidence, const trade::LoadTestResult& result) {
  evidence.signs.load_doubtful = true;
  evidence.findings.push_back(
      {"load-test-too-light", std::nullopt, numbers(evidence, result), load_test_source,
       fmt::format("Too light or too short to condemn it: repeat with {:.0f} A for 15 s.",
                   result.proper.amps.si())});
}

void say_unusable(Evidence& evidence) {
  const auto& test = *evidence.facts.load_test;
  if (test.charging) {
    evidence.findings.push_back({"charger-on", Severity::improvement,
                                 "the load test was made with a charger on, which carried part of the load",
                                 common_practice, "Switch the charger off and repeat."});
  } else if (const auto before = test.before.value_or(evidence.source.open_circuit); test.volts >= before) {
    evidence.signs.contradiction = true;
    evidence.findings.push_back(
        {"impossible-load-test", Severity::improvement,
         fmt::format("{:.2f} V under {:.0f} A is not below the {:.2f} V before", test.volts.si(),
                     test.amps.si(), before.si()),
         "a load lowers a battery's volts",
         "Check that the load was on, the charger off, and the two numbers not swapped."});
  } else {
    evidence.findings.push_back({"no-rating", Severity::improvement,
                                 "neither CCA nor capacity is given, so no load test can be judged",
                                 load_test_source, "Write the CCA from its label."});
  }
}

void judge_before(Evidence& evidence) {
  const auto& test = *evidence.facts.load_test;
  if (!test.before || !evidence.facts.rest || evidence.facts.rest->charging) return;
  const double gap = (*test.before - evidence.facts.rest->volts).si() / evidence.cells;
  if (gap < 0.05) return;
  evidence.findings.push_back(
      {"before-above-rest", Severity::improvement,
       fmt::format("{:.2f} V before the load test is more than the {:.2f} V at rest", test.before->si(),
                   evidence.facts.rest->volts.si()),
       common_practice,
       "It was charged between the two: draw off the surface charge and repeat the load test."});
}

}  // namespace

void judge_load_test(Evidence& evidence) {
  if (!evidence.facts.load_test || evidence.lithium()) return;
  judge_before(evidence);
  const auto result = trade::judge_load_test(evidence.facts, evidence.source.open_circuit);
  if (!result) return say_unusable(evidence);
  const bool charged = evidence.signs.charge_known && !evidence.signs.low_charge;
  if (result->passed && !evidence.signs.low_charge && !result->weak_evidence)
    return say_passed(evidence, *result);
  if (!charged) return say_no_verdict(evidence, *result);
  if (result->weak_evidence) return say_doubtful(evidence, *result);
  say_failed(evidence, *result);
}

}  // namespace ohmtrail::diagnose::bank
