#pragma once
#include <string_view>

#include "ohmtrail/diagnose/finding.hpp"

namespace ohmtrail::render {

/// What a finding is, in a few words: "fuse too large for its cable".
[[nodiscard]] std::string_view kind_in_words(const diagnose::Finding& finding);

/// What can come of a finding, in a sentence for the customer: by the rule that it breaks; by its severity
/// where that rule is not known here.
[[nodiscard]] std::string_view risk_in_words(const diagnose::Finding& finding);

}  // namespace ohmtrail::render
