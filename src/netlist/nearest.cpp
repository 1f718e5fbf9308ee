#include "netlist/nearest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

namespace ohmtrail::netlist {

namespace {

char folded(char c) {
  if (c == '_' || c == ' ') return '-';
  return static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
}

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b, std::size_t limit) {
  const std::size_t difference = a.size() > b.size() ? a.size() - b.size() : b.size() - a.size();
  if (difference > limit) return limit + 1;
  std::vector<std::size_t> before_last(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const bool same = folded(a[i - 1]) == folded(b[j - 1]);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + (same ? 0 : 1)});
      const bool swapped =
          i > 1 && j > 1 && folded(a[i - 1]) == folded(b[j - 2]) && folded(a[i - 2]) == folded(b[j - 1]);
      if (swapped) row[j] = std::min(row[j], before_last[j - 2] + 1);
    }
    if (*std::min_element(row.begin(), row.end()) > limit) return limit + 1;
    std::swap(before_last, last);
    std::swap(last, row);
  }
  return last[b.size()];
}

std::string_view nearest(std::string_view met, const std::vector<std::string_view>& known) {
  constexpr std::size_t longest_considered = 100;
  if (met.size() > longest_considered) return {};
  constexpr std::size_t letters_a_slip = 3, most_slips = 3;
  std::size_t limit = std::clamp<std::size_t>(met.size() / letters_a_slip, 1, most_slips);
  std::string_view best;
  for (const std::string_view name : known) {
    const std::size_t distance = edit_distance(met, name, limit);
    if (distance > limit || distance >= std::max(met.size(), name.size())) continue;
    best = name;
    if (distance == 0) break;
    limit = distance - 1;
  }
  return best;
}

std::string did_you_mean(std::string_view met, const std::vector<std::string_view>& known) {
  const std::string_view name = nearest(met, known);
  return name.empty() ? std::string() : fmt::format("did you mean \"{}\"?", name);
}

std::string one_of(const std::vector<std::string_view>& words) {
  std::string list;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) list += i + 1 == words.size() ? " or " : ", ";
    list += words[i];
  }
  return list;
}

}  // namespace ohmtrail::netlist
