#pragma once
#include <string>

namespace ohmtrail::cli {

/// The manual page, in the man(7) language, from the same records as the help.
[[nodiscard]] std::string manual();

}  // namespace ohmtrail::cli
