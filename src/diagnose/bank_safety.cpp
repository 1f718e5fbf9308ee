#include <fmt/core.h>

#include <algorithm>

#include "diagnose/bank_evidence.hpp"
#include "ohmtrail/trade/battery_charge.hpp"
#include "ohmtrail/trade/battery_limits.hpp"

namespace ohmtrail::diagnose::bank {
namespace {

bool seen(const Evidence& evidence, trade::Observation what) {
  const auto& list = evidence.battery->seen;
  return std::find(list.begin(), list.end(), what) != list.end();
}

void hands_off(Evidence& evidence, std::string name, std::string text, std::string remedy) {
  evidence.signs.do_not_test = true;
  evidence.findings.push_back(
      {std::move(name), Severity::before_further_use, std::move(text), common_practice, std::move(remedy)});
}

void judge_frozen(Evidence& evidence) {
  if (seen(evidence, trade::Observation::frozen))
    hands_off(
        evidence, "frozen", "the acid is frozen",
        "Do not charge, jump-start or load it: it can burst. Thaw it in a warm room, look for cracks, then "
        "charge slowly or replace it.");
  if (!evidence.flooded() || seen(evidence, trade::Observation::frozen)) return;
  const double gravity =
      evidence.gravities ? evidence.gravities->lowest : trade::gravity_at_charge(evidence.source.charge);
  const auto freezes = trade::freezing_point(gravity);
  if (evidence.temperature >= freezes) return;
  hands_off(evidence, "may-be-frozen",
            fmt::format("at {:.0f} °C acid of {:.3f} freezes (its freezing point is {:.0f} °C)",
                        evidence.temperature.celsius(), gravity, freezes.celsius()),
            "Do not charge or load it until it has thawed in a warm room and the case is seen to be whole.");
}

void judge_heat(Evidence& evidence) {
  if (evidence.temperature > trade::too_hot_to_test)
    hands_off(evidence, "hot",
              fmt::format("at {:.0f} °C it is hotter than {:.0f} °C", evidence.temperature.celsius(),
                          trade::too_hot_to_test.celsius()),
              "Stop charging, open the circuit, keep away until it is cool; then find out why it got hot.");
  else if (seen(evidence, trade::Observation::warm))
    evidence.findings.push_back(
        {"warm", Severity::soon, "it was found warm with nothing to warm it", common_practice,
         "Let it cool before it is tested; a battery that warms itself on charge is failing."});
}

}  // namespace

void judge_safety(Evidence& evidence) {
  judge_frozen(evidence);
  if (seen(evidence, trade::Observation::bulged_case))
    hands_off(evidence, "bulged-case", "its case is bulged",
              "Do not charge or load it: it has been hot, frozen or gassing. Disconnect it and replace it.");
  if (seen(evidence, trade::Observation::melted))
    hands_off(evidence, "melted", "something on it has melted",
              "Do not charge or load it before the melted part is replaced and its cause found.");
  judge_heat(evidence);
}

}  // namespace ohmtrail::diagnose::bank
