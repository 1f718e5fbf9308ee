#pragma once
#include <string>
#include <string_view>

namespace ohmtrail::diagnose {

/// When something must be done about a finding.
enum class Severity { before_further_use, soon, improvement };

/// "before further use", "soon", "improvement"
[[nodiscard]] std::string_view words(Severity severity);

/// One thing that is wrong with a system, not with its file.
struct Finding {
  std::string rule;    ///< stable kebab-case name
  std::string source;  ///< what the rule rests on: a regulation, a table, or "common practice"
  Severity severity = Severity::soon;
  std::string subject;  ///< id of an element, name of a point, or "system"
  std::string in_case;  ///< empty: in every case
  std::string text;     ///< what is wrong, with its numbers
  std::string remedy;   ///< what to do about it
};

}  // namespace ohmtrail::diagnose
