#pragma once
#include <string_view>

namespace ohmtrail::diagnose {

/// What makes an element waste more than a sound one would.
enum class Cause {
  corroded_conductor,
  bad_termination,
  bad_joint,
  worn_contact,
  undersized,
  weak_battery,
  discharged_battery
};

/// The word of the results: "corroded-conductor" …
[[nodiscard]] std::string_view word(Cause cause);

}  // namespace ohmtrail::diagnose
