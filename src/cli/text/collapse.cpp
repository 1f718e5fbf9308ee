#include "cli/text/collapse.hpp"

#include <fmt/format.h>

#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {

void show_collapse(Sheet& sheet, const solve::CaseSolution& solved) {
  const auto& collapse = solved.solution.collapse;
  if (!collapse) return;
  const std::string load =
      collapse->branch < 0 ? "" : solved.network.elements[static_cast<std::size_t>(collapse->branch)].id;
  sheet.paragraph(
      fmt::format(
          "NO SOLUTION in case \"{}\": the loads ask for more than this system can carry. At most {} of "
          "it can be carried; there \"{}\" takes {} at {}. What is shown of the case is that state, not "
          "the one asked for.",
          solved.network.case_name, units::print(units::Fraction{collapse->share}), load,
          units::print(units::Power{collapse->most_power}), units::print(units::Voltage{collapse->at_volts})),
      Ink::bad);
}

}  // namespace ohmtrail::cli
