#include "cli/doors/heap.hpp"

#include <malloc.h>
#include <sys/mman.h>
#include <unistd.h>

#include <cstdint>
#include <cstdlib>
#include <memory>

namespace ohmtrail::cli {

namespace {

struct Free {
  void operator()(void* memory) const { std::free(memory); }
};

/// Asks for more than the heap has free, so that it grows, and by so many bytes more than it needs.
std::unique_ptr<void, Free> grow_heap_by(int bytes) {
  constexpr int as_it_was = 128 << 10;
  ::mallopt(M_TOP_PAD, bytes);
  std::unique_ptr<void, Free> more_than_is_free(std::malloc(1 << 20));
  ::mallopt(M_TOP_PAD, as_it_was);
  return more_than_is_free;
}

char* page_of(void* address) {
  const auto page = static_cast<std::uintptr_t>(::getpagesize());
  return static_cast<char*>(address) - reinterpret_cast<std::uintptr_t>(address) % page;
}

}  // namespace

void keep_freed_memory() {
  constexpr int more_than_any_array = 1 << 30;
  constexpr int never = -1;
  ::mallopt(M_MMAP_THRESHOLD, more_than_any_array);
  ::mallopt(M_TRIM_THRESHOLD, never);
}

void have_large_pages() {
  constexpr int enough_for_a_million_elements = 1 << 30;
  const auto grown = grow_heap_by(enough_for_a_million_elements);
  if (!grown) return;
  char* const begin = page_of(grown.get());
  char* const end = static_cast<char*>(::sbrk(0));
  if (begin < end) ::madvise(begin, static_cast<std::size_t>(end - begin), MADV_HUGEPAGE);
}

}  // namespace ohmtrail::cli
