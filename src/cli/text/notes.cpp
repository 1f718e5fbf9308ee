#include "cli/text/notes.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cli/json/common.hpp"

namespace ohmtrail::cli {
namespace {

/// Assumptions with the same text and how many share it.
struct Shared {
  const network::Assumption* first;
  std::size_t count = 1;
};

std::vector<Shared> gathered(const std::vector<network::Assumption>& all) {
  std::vector<Shared> groups;
  for (const network::Assumption& assumption : all) {
    const auto found = std::find_if(groups.begin(), groups.end(), [&](const Shared& group) {
      return group.first->text == assumption.text;
    });
    if (found == groups.end())
      groups.push_back({&assumption});
    else
      ++found->count;
  }
  return groups;
}

}  // namespace

void show_assumptions(Sheet& sheet, const std::vector<solve::CaseSolution>& solved) {
  show_assumptions(sheet, assumptions_of(solved));
}

void show_assumptions(Sheet& sheet, const std::vector<network::Assumption>& all) {
  if (all.empty()) return;
  sheet.line();
  sheet.line("Assumed, because the file does not say");
  for (const Shared& group : gathered(all)) {
    const std::string who =
        group.first->id + (group.count == 1 ? "" : fmt::format(" and {} more", group.count - 1));
    sheet.item("  - ", fmt::format("{}: {}", who, group.first->text), Ink::faint);
  }
}

void show_cautions(Sheet& sheet) {
  sheet.line();
  sheet.line("Before you undo anything", Ink::strong);
  sheet.item(
      "  ",
      "Chargers, solar and shore power off, then prove it dead. Batteries give off gas that explodes and "
      "hold acid; a short circuit can pass thousands of amperes: rings and watch straps off, tools "
      "insulated, meter fused. This advises; local codes and a licensed electrician decide.");
}

}  // namespace ohmtrail::cli
