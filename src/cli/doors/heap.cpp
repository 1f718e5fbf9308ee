#include "cli/doors/heap.hpp"

#include <malloc.h>

namespace ohmtrail::cli {

void keep_freed_memory() {
  constexpr int more_than_any_array = 1 << 30;
  ::mallopt(M_MMAP_THRESHOLD, more_than_any_array);
  ::mallopt(M_TRIM_THRESHOLD, more_than_any_array);
}

}  // namespace ohmtrail::cli
