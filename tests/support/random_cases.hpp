#pragma once
#include <algorithm>

namespace ohmtrail::test {

/// How many random cases a property runs: the full count, or a twentieth of it where the program is slow:
/// under the sanitizers and where coverage is counted.
inline int random_cases(int full) {
#ifdef OHMTRAIL_FEW_CASES
  return std::max(1, full / 20);
#else
  return full;
#endif
}

}  // namespace ohmtrail::test
