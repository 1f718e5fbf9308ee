#include "cli/nearest.hpp"

#include <algorithm>
#include <cstddef>

namespace ohmtrail::cli {
namespace {

/// Optimal string alignment distance.
std::size_t slips(std::string_view a, std::string_view b) {
  const std::size_t width = b.size() + 1;
  std::vector<std::size_t> d((a.size() + 1) * width);
  for (std::size_t i = 0; i <= a.size(); ++i) {
    for (std::size_t j = 0; j <= b.size(); ++j) {
      std::size_t& here = d[i * width + j];
      if (i == 0 || j == 0) {
        here = i + j;
        continue;
      }
      const std::size_t change = d[(i - 1) * width + j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      here = std::min({d[(i - 1) * width + j] + 1, d[i * width + j - 1] + 1, change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        here = std::min(here, d[(i - 2) * width + j - 2] + 1);
    }
  }
  return d.back();
}

}  // namespace

std::string nearest(std::string_view word, const std::vector<std::string>& candidates) {
  constexpr std::size_t longest_word = 80;  // what a person types; keeps the table small
  if (word.size() > longest_word) return "";
  std::string best;
  std::size_t fewest = std::max<std::size_t>(1, word.size() / 3) + 1;
  for (const std::string& candidate : candidates) {
    if (candidate.size() > longest_word) continue;
    const std::size_t distance = slips(word, candidate);
    if (distance < fewest) {
      fewest = distance;
      best = candidate;
    }
  }
  return best;
}

}  // namespace ohmtrail::cli
