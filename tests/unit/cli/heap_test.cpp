#include "cli/doors/heap.hpp"

#include <gtest/gtest.h>
#include <sys/resource.h>

#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

namespace ohmtrail::cli {
namespace {

/// How often the kernel had to find a page for an array that was made, filled and freed.
long page_faults_of_an_array() {
  constexpr std::size_t bytes = std::size_t{48} << 20U;
  rusage before{}, after{};
  getrusage(RUSAGE_SELF, &before);
  const std::vector<char> array(bytes, 'x');
  getrusage(RUSAGE_SELF, &after);
  EXPECT_EQ(array.back(), 'x');
  return after.ru_minflt - before.ru_minflt;
}

TEST(Heap, WhatWasFreedIsNotAskedOfTheKernelAgain) {
#ifdef __SANITIZE_ADDRESS__
  GTEST_SKIP() << "the sanitizer has a heap of its own";
#endif
  keep_freed_memory();
  const long first = page_faults_of_an_array();
  EXPECT_LE(page_faults_of_an_array(), first / 20);
}

/// Mebibytes of heap that the kernel was asked to make of large pages (`hg`, see proc(5)).
long heap_over_large_pages() {
  std::ifstream maps("/proc/self/smaps");
  long wanted = 0, kibibytes = 0;
  bool heap = false;
  for (std::string line; std::getline(maps, line);) {
    if (line.find("-") < line.find(" ")) heap = line.ends_with("[heap]");
    if (line.starts_with("Size:")) kibibytes = std::stol(line.substr(5));
    if (heap && line.starts_with("VmFlags:") && line.find(" hg") != std::string::npos)
      wanted += kibibytes / 1024;
  }
  return wanted;
}

TEST(Heap, GrowsOverLargePages) {
#ifdef __SANITIZE_ADDRESS__
  GTEST_SKIP() << "the sanitizer has a heap of its own";
#endif
  if (!std::filesystem::exists("/sys/kernel/mm/transparent_hugepage")) GTEST_SKIP() << "there are none";
  keep_freed_memory();
  EXPECT_EQ(heap_over_large_pages(), 0);
  have_large_pages();
  EXPECT_GE(heap_over_large_pages(), 1000);
}

TEST(Heap, WithoutRoomForLargePagesAllStaysAsItWas) {
#ifdef __SANITIZE_ADDRESS__
  GTEST_SKIP() << "the sanitizer has a heap of its own";
#endif
  keep_freed_memory();
  rlimit room{};
  getrlimit(RLIMIT_AS, &room);
  const rlimit little{std::size_t{700} << 20U, room.rlim_max};
  ASSERT_EQ(setrlimit(RLIMIT_AS, &little), 0);
  have_large_pages();
  EXPECT_EQ(heap_over_large_pages(), 0);
  EXPECT_EQ(std::vector<char>(std::size_t{48} << 20U, 'x').back(), 'x');
  setrlimit(RLIMIT_AS, &room);
}

}  // namespace
}  // namespace ohmtrail::cli
