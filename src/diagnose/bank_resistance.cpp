#include <fmt/core.h>

#include "diagnose/bank_evidence.hpp"
#include "ohmtrail/trade/battery_limits.hpp"
#include "ohmtrail/trade/battery_resistance.hpp"

namespace ohmtrail::diagnose::bank {
namespace {

constexpr const char* ratio_source =
    "sound about 3/CCA Ω for 12 V, suspect above 1.5 times, failed above 2; common practice";

/// Lead-acid must be known to be charged before it is blamed; charge hardly changes a lithium battery's
/// resistance.
bool charged(const Evidence& evidence) {
  return evidence.lithium() || (evidence.signs.charge_known && !evidence.signs.low_charge);
}

void say_tester_failed(Evidence& evidence, const std::string& text) {
  evidence.signs.tester_failed = true;
  evidence.findings.push_back({"tester-failed", Severity::soon, text + ", less than half", ratio_source,
                               "Charge fully and repeat at the posts; if it stays, replace it."});
}

}  // namespace

void judge_tester(Evidence& evidence) {
  const auto& tester = evidence.facts.tester;
  if (!tester || !tester->cca || !evidence.facts.cca || evidence.lithium()) return;
  const double share = ratio(*tester->cca, *evidence.facts.cca);
  const auto text =
      fmt::format("a conductance tester shows {:.0f} CCA, {:.0f} % of the {:.0f} it is rated for",
                  tester->cca->si(), 100 * share, evidence.facts.cca->si());
  if (!charged(evidence) && (evidence.signs.low_charge || share < 1 / trade::resistance_suspect)) {
    evidence.findings.push_back({"tester-not-judged", std::nullopt,
                                 text + "; no verdict before it is known to be charged", ratio_source,
                                 "Charge fully, rest, repeat."});
  } else if (share < 1 / trade::resistance_failed) {
    say_tester_failed(evidence, text);
  } else if (share < 1 / trade::resistance_suspect) {
    evidence.signs.tester_suspect = true;
    evidence.findings.push_back({"tester-suspect", Severity::improvement, text, ratio_source,
                                 "Repeat at the posts, with a load test beside it."});
  } else {
    evidence.signs.tester_passed = true;
    evidence.findings.push_back({"tester-passed", std::nullopt, text, ratio_source, ""});
  }
}

void judge_resistance(Evidence& evidence) {
  const auto& source = evidence.source;
  if (!source.resistance_measured || !source.sound_resistance) return;
  const double times = ratio(source.resistance, *source.sound_resistance);
  const auto text = fmt::format(
      "inside it has {:.2f} mΩ over seconds where {:.2f} mΩ is sound ({:.1f} times): {:.2f} V lost "
      "for every 100 A",
      source.resistance.si() * 1000, source.sound_resistance->si() * 1000, times,
      source.resistance.si() * 100);
  if (times <= trade::resistance_suspect) {
    evidence.findings.push_back({"resistance", std::nullopt, text, ratio_source, ""});
    return;
  }
  if (!charged(evidence)) {
    evidence.findings.push_back(
        {"resistance", std::nullopt, text + "; low charge alone raises it", ratio_source, ""});
    return;
  }
  evidence.signs.resistance_raised = true;
  evidence.signs.resistance_failed = times > trade::resistance_failed;
  evidence.findings.push_back(
      {"resistance-raised", evidence.signs.resistance_failed ? Severity::soon : Severity::improvement, text,
       ratio_source, "Measure at the posts, not at the lugs; if it stays, plan its replacement."});
}

}  // namespace ohmtrail::diagnose::bank
