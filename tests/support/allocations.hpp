#pragma once
#include <cstddef>
#include <cstdlib>
#include <new>

/// Counts what a piece of work asks of the heap. It replaces the operators of the whole program: one file of
/// a program only may include this. (What Eigen asks for by itself is not seen.)
namespace ohmtrail::test {

struct Allocations {
  std::size_t calls = 0, bytes = 0;
};

inline thread_local Allocations allocated;

template <class Work>
Allocations allocations_of(Work&& work) {
  const Allocations before = allocated;
  work();
  return {allocated.calls - before.calls, allocated.bytes - before.bytes};
}

}  // namespace ohmtrail::test

// Not inline: where the compiler sees both ends it takes malloc and delete for a mismatch.
[[gnu::noinline]] void* operator new(std::size_t bytes) {
  ++ohmtrail::test::allocated.calls;
  ohmtrail::test::allocated.bytes += bytes;
  if (void* memory = std::malloc(bytes > 0 ? bytes : 1)) return memory;
  throw std::bad_alloc();
}
// std::stable_sort asks so; the sanitizers' own would not go with the delete below.
[[gnu::noinline]] void* operator new(std::size_t bytes, const std::nothrow_t&) noexcept {
  ++ohmtrail::test::allocated.calls;
  ohmtrail::test::allocated.bytes += bytes;
  return std::malloc(bytes > 0 ? bytes : 1);
}
[[gnu::noinline]] void operator delete(void* memory) noexcept {
  std::free(memory);
}
[[gnu::noinline]] void operator delete(void* memory, std::size_t) noexcept {
  std::free(memory);
}
