#pragma once
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cstdint>
#include <sstream>

#include "support/random_cases.hpp"

namespace ohmtrail::test {

/// Runs a rapidcheck property with a fixed seed, so that the same run meets the same cases, `full` times
/// (fewer under the sanitizers); fails the running test with rapidcheck's smallest counterexample.
template <class Property>
void holds(Property&& property, int full = 1000, std::uint64_t seed = 20250101) {
  rc::detail::TestParams params;
  params.seed = seed;
  params.maxSuccess = random_cases(full);
  const auto result = rc::detail::checkTestable(property, rc::detail::TestMetadata{}, params);
  std::ostringstream said;
  rc::detail::printResultMessage(result, said);
  EXPECT_TRUE(result.template is<rc::detail::SuccessResult>()) << said.str();
}

}  // namespace ohmtrail::test
