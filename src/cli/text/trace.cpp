#include "cli/text/trace.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "cli/text/ink.hpp"
#include "cli/text/wrap.hpp"

namespace ohmtrail::cli {
namespace {

constexpr std::size_t columns = 60;
constexpr std::size_t name_columns = 34;
constexpr std::size_t bar_columns = 14;
constexpr std::size_t suspects_shown = 3;

/// Filled with # up to the share: no colour and no special character is needed to read it.
std::string bar(double share) {
  const auto filled = static_cast<std::size_t>(std::lround(std::clamp(share, 0.0, 1.0) * bar_columns));
  return std::string(filled, '#') + std::string(bar_columns - filled, '.');
}

/// "the cable "M" with its lugs" without what all rows share.
std::string short_name(std::string words) {
  constexpr std::string_view article = "the ", lugs = " with its lugs";
  if (words.starts_with(article)) words.erase(0, article.size());
  if (words.ends_with(lugs)) words.erase(words.size() - lugs.size());
  return words;
}

std::string percent(double share) {
  constexpr double rounding = 1e-12;  // what is certain but for it is certain
  if (share > 0.99 && share < 1 - rounding) return ">99 %";
  if (share < 0.01) return "<1 %";
  return fmt::format("{:.0f} %", 100 * share);
}

}  // namespace

std::string narrow(std::string_view text, std::string_view mark) {
  return wrapped(printable(text), columns, columns_of(mark), mark);
}

std::string standing_in_words(const diagnose::NextResult& standing, bool colour) {
  std::string out;
  for (std::size_t k = 0; k < std::min(suspects_shown, standing.repairs.size()); ++k) {
    const auto& repair = standing.repairs[k];
    const std::string name = fitted(printable(short_name(repair.words)), name_columns);
    const std::string space(name_columns - columns_of(name), ' ');
    const Ink ink = repair.probability >= diagnose::sure_enough ? Ink::bad : Ink::plain;
    out += fmt::format("  {}{} {} {:>5}\n", name, space, inked(bar(repair.probability), ink, colour),
                       percent(repair.probability));
  }
  if (standing.nothing_faulty > 0.05)
    out += fmt::format("  nothing faulty{} {} {:>5}\n", std::string(name_columns - 14, ' '),
                       bar(standing.nothing_faulty), percent(standing.nothing_faulty));
  return out;
}

}  // namespace ohmtrail::cli
