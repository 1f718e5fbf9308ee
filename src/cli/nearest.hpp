#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace ohmtrail::cli {

/// The candidate that differs from `word` by fewest slips (insert, drop, change, swap), or "" when all differ
/// in more than a third of it. Ties go to the first.
[[nodiscard]] std::string nearest(std::string_view word, const std::vector<std::string>& candidates);

}  // namespace ohmtrail::cli
