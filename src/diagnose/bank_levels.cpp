#include <fmt/format.h>

#include "diagnose/bank_evidence.hpp"

namespace ohmtrail::diagnose::bank {
namespace {

std::vector<int> cells_with(const Evidence& evidence, trade::CellLevel level) {
  std::vector<int> found;
  for (std::size_t i = 0; i < evidence.facts.cells.size(); ++i)
    if (evidence.facts.cells[i].level == level) found.push_back(static_cast<int>(i) + 1);
  return found;
}

std::string numbered(const std::vector<int>& cells) {
  return fmt::format("{} {}", cells.size() == 1 ? "cell" : "cells", fmt::join(cells, ", "));
}

}  // namespace

void judge_levels(Evidence& evidence) {
  const auto dry = cells_with(evidence, trade::CellLevel::dry);
  const auto below = cells_with(evidence, trade::CellLevel::below);
  const auto above = cells_with(evidence, trade::CellLevel::above);
  evidence.signs.plates_dry = !dry.empty();
  evidence.signs.plates_exposed = !below.empty();
  if (!dry.empty())
    evidence.findings.push_back(
        {"dry-plates", Severity::before_further_use, fmt::format("the plates of {} stood dry", numbered(dry)),
         common_practice,
         "Do not load or charge it. Plates that dried out do not come back: replace the "
         "battery, and find out what boiled it dry."});
  if (!below.empty())
    evidence.findings.push_back(
        {"exposed-plates", Severity::before_further_use,
         fmt::format("the acid of {} stands below the top of the plates", numbered(below)), common_practice,
         "Do not load-test it as it is. Pour in distilled water until the plates are just covered, charge "
         "fully, fill to a quarter inch (6 mm) above the plates, test again. Never add acid."});
  if (!above.empty())
    evidence.findings.push_back(
        {"overfilled", std::nullopt, fmt::format("the acid of {} stands high", numbered(above)),
         common_practice,
         "Add no water before it has been charged; acid that bubbles over eats lugs and trays."});
}

}  // namespace ohmtrail::diagnose::bank
