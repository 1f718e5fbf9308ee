#pragma once
#include <cstdio>
#include <cstdlib>

namespace ohmtrail::fuzz {

/// Ends the run where something promised does not hold, so that the fuzzer keeps the input.
inline void promise(bool holds, const char* what) {
  if (holds) return;
  std::fprintf(stderr, "broken promise: %s\n", what);
  std::abort();
}

}  // namespace ohmtrail::fuzz
