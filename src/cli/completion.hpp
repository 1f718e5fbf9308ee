#pragma once
#include <string>

namespace ohmtrail::cli {

/// A script that teaches bash the commands, their options and the words these take; where a file is wanted
/// it leaves the word to bash.
[[nodiscard]] std::string bash_completion();

}  // namespace ohmtrail::cli
