#include "render/risk.hpp"

#include <algorithm>
#include <array>

#include "render/text_risks.hpp"

namespace ohmtrail::render {
namespace {

struct Risk {
  std::string_view rule;  ///< or what its name begins with, up to the hyphen at its end
  std::string_view words;
};

/// The first that fits counts.
constexpr std::array risks{Risk{"over-ampacity", text::risk_hot_cable},
                           Risk{"insulation-temperature", text::risk_hot_cable},
                           Risk{"short-duty-heat", text::risk_hot_cable},
                           Risk{"hot-connection", text::risk_hot_connection},
                           Risk{"no-fuse-in-reach", text::risk_unfused},
                           Risk{"fuse-over-ampacity", text::risk_unfused},
                           Risk{"fuse-voltage", text::risk_cannot_break},
                           Risk{"interrupting-", text::risk_cannot_break},
                           Risk{"wing-nut", text::risk_works_loose},
                           Risk{"crowded-stud", text::risk_works_loose},
                           Risk{"unlike-gauge", text::risk_weaker_cable},
                           Risk{"unlike-", text::risk_unlike_batteries},
                           Risk{"drop-limit", text::risk_undervoltage},
                           Risk{"dropped-out", text::risk_stops},
                           Risk{"cut-out-at-half-charge", text::risk_stops},
                           Risk{"hunting", text::risk_stops},
                           Risk{"collapse", text::risk_collapse},
                           Risk{"charging-drop", text::risk_undercharge},
                           Risk{"undercharge", text::risk_undercharge},
                           Risk{"island-without-source", text::risk_no_supply},
                           Risk{"open-end", text::risk_live_end}};

bool fits(const Risk& risk, std::string_view rule) {
  return risk.rule.ends_with('-') ? rule.starts_with(risk.rule) : rule == risk.rule;
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

std::string_view risk_in_words(const diagnose::Finding& finding) {
  const auto known =
      std::find_if(risks.begin(), risks.end(), [&](const Risk& risk) { return fits(risk, finding.rule); });
  return known == risks.end() ? by_severity(finding.severity) : known->words;
}

}  // namespace ohmtrail::render
