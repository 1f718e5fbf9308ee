#include "render/risk.hpp"

#include <algorithm>
#include <array>

#include "render/text_risks.hpp"

namespace ohmtrail::render {
namespace {

struct Risk {
  std::string_view rule;  ///< or what its name begins with, up to the hyphen at its end
  std::string_view kind, words;
};

/// The first that fits counts.
constexpr std::array risks{
    Risk{"over-ampacity", text::kind_overloaded, text::risk_hot_cable},
    Risk{"insulation-temperature", text::kind_hot_cable, text::risk_hot_cable},
    Risk{"short-duty-heat", text::kind_hot_cable, text::risk_hot_cable},
    Risk{"hot-connection", text::kind_hot_connection, text::risk_hot_connection},
    Risk{"no-fuse-in-reach", text::kind_unfused, text::risk_unfused},
    Risk{"fuse-over-ampacity", text::kind_large_fuse, text::risk_unfused},
    Risk{"fuse-voltage", text::kind_fuse_voltage, text::risk_cannot_break},
    Risk{"interrupting-capacity-unknown", text::kind_break_unknown, text::risk_cannot_break},
    Risk{"interrupting-", text::kind_cannot_break, text::risk_cannot_break},
    Risk{"wing-nut", text::kind_wing_nut, text::risk_works_loose},
    Risk{"crowded-stud", text::kind_crowded, text::risk_works_loose},
    Risk{"unlike-gauge", text::kind_unlike_gauge, text::risk_weaker_cable},
    Risk{"unlike-links", text::kind_unlike_links, text::risk_unlike_links},
    Risk{"unlike-", text::kind_unlike_batteries, text::risk_unlike_batteries},
    Risk{"load-reversed", text::kind_reversed, text::risk_reversed},
    Risk{"drop-limit", text::kind_undervoltage, text::risk_undervoltage},
    Risk{"dropped-out", text::kind_stopped, text::risk_stops},
    Risk{"cut-out-at-half-charge", text::kind_stops_early, text::risk_stops},
    Risk{"hunting", text::kind_hunting, text::risk_stops},
    Risk{"collapse", text::kind_collapse, text::risk_collapse},
    Risk{"charging-drop", text::kind_charging_drop, text::risk_undercharge},
    Risk{"undercharge", text::kind_undercharge, text::risk_undercharge},
    Risk{"island-without-source", text::kind_no_supply, text::risk_no_supply},
    Risk{"open-end", text::kind_live_end, text::risk_live_end}};

bool fits(const Risk& risk, std::string_view rule) {
  return risk.rule.ends_with('-') ? rule.starts_with(risk.rule) : rule == risk.rule;
}

const Risk* risk_of(const diagnose::Finding& finding) {
  const auto* known =
      std::find_if(risks.begin(), risks.end(), [&](const Risk& risk) { return fits(risk, finding.rule); });
  return known == risks.end() ? nullptr : known;
}

std::string_view by_severity(diagnose::Severity severity) {
  switch (severity) {
    case diagnose::Severity::before_further_use:
      return text::risk_urgent;
    case diagnose::Severity::soon:
      return text::risk_soon;
    case diagnose::Severity::improvement:
      break;
  }
  return text::risk_improvement;
}

}  // namespace

std::string_view kind_in_words(const diagnose::Finding& finding) {
  const Risk* known = risk_of(finding);
  return known ? known->kind : text::kind_other;
}

std::string_view risk_in_words(const diagnose::Finding& finding) {
  const Risk* known = risk_of(finding);
  return known ? known->words : by_severity(finding.severity);
}

}  // namespace ohmtrail::render
