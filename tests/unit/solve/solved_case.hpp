#pragma once
#include <gtest/gtest.h>

#include <stdexcept>

#include "ohmtrail/netlist/read.hpp"
#include "ohmtrail/solve/case_solution.hpp"

/// A netlist written down in a test, and one of its cases solved.
namespace ohmtrail::solve {

inline tl::expected<CaseSolution, Failure> solve_text(const std::string& json, std::size_t in_case = 0) {
  auto read = netlist::read(json);
  if (!read) throw std::runtime_error(netlist::format(read.error().front(), "test"));
  return solve_case(network::build(read->system, read->system.cases.at(in_case)));
}

inline CaseSolution solved(const std::string& json, std::size_t in_case = 0) {
  auto result = solve_text(json, in_case);
  if (!result)
    throw std::runtime_error("failure of kind " + std::to_string(static_cast<int>(result.error().kind)));
  return std::move(*result);
}

/// The result of one load, by its id.
inline const LoadResult& load_of(const CaseSolution& solved, const std::string& id) {
  for (const LoadResult& one : solved.loads)
    if (solved.network.elements[static_cast<std::size_t>(one.element)].id == id) return one;
  throw std::runtime_error("no load " + id);
}

inline std::size_t element_of(const CaseSolution& solved, const std::string& id) {
  return static_cast<std::size_t>(solved.network.element(id).value());
}

}  // namespace ohmtrail::solve
