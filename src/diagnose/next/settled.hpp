#pragma once
#include <string>

#include "ohmtrail/diagnose/next.hpp"

namespace ohmtrail::diagnose::next {

/// Why no further reading is worth taking: what is sure, what stays in doubt and why, which parts were only
/// read as a whole and where a reading would part them. `best_bits` is what the best reading left would tell.
[[nodiscard]] std::string settled_in_words(const NextResult& result, double best_bits);

}  // namespace ohmtrail::diagnose::next
