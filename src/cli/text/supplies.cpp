#include "cli/text/supplies.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <vector>

namespace ohmtrail::cli {
namespace {

constexpr std::size_t all_named = 3;

std::string in_words(const std::vector<std::string>& ids) {
  if (ids.size() > all_named) return fmt::format("{}+{} more in series", ids.front(), ids.size() - 1);
  return fmt::format("{}", fmt::join(ids, "+"));
}

}  // namespace

std::string supply_in_words(const solve::CaseSolution& solved, const std::string& first) {
  for (const solve::Supply& supply : solved.supplies) {
    std::vector<std::string> ids;
    for (const int k : supply.elements)
      ids.push_back(solved.network.elements[static_cast<std::size_t>(k)].id);
    if (!ids.empty() && ids.front() == first) return in_words(ids);
  }
  return first;
}

}  // namespace ohmtrail::cli
