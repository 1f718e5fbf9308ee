#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "ohmtrail/diagnose/staircase.hpp"
#include "plan/size_result.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

/// Volts that the wires of runs in scope lose on the way to a load and back: what a shorter route would save.
double wire_volts(const DesignSpace& space, const solve::CaseSolution& solved, int load) {
  const std::vector<int> place = places_in_scope(space);
  const auto stairs = diagnose::staircase(solved, nullptr, load);
  double volts = 0;
  for (const auto& step : stairs ? stairs->steps : std::vector<diagnose::Step>{}) {
    if (step.role != network::Role::wire) continue;
    const auto element = solved.network.element(step.element);
    if (element && place[solved.network.elements[at(*element)].origin.index] >= 0)
      volts += std::abs(step.lost);
  }
  return volts;
}

Shortfall drop_shortfall(const DesignSpace& space, const solve::CaseSolution& solved, const Broken& broken) {
  const auto& load = solved.network.elements[at(broken.element)];
  const double nominal = load.nominal->si();
  const double over = broken.value - broken.limit;
  const double wires = wire_volts(space, solved, broken.element);
  Shortfall shortfall{load.id, solved.network.case_name, {}, {}};
  shortfall.text = fmt::format(
      "loses {:.3g} V ({:.1f} %) with the thickest cable on the list everywhere; {:.3g} V ({:.1f} %) is "
      "allowed",
      broken.value, 100 * broken.value / nominal, broken.limit, 100 * broken.limit / nominal);
  if (over < wires)
    shortfall.remedy = fmt::format(
        "a route shorter by about {:.0f} %, a thicker cable than listed, or a higher system voltage",
        std::ceil(100 * over / wires));
  else
    shortfall.remedy =
        "cable alone cannot cure it: first the switches, fuses and joints on the way, then a higher system "
        "voltage";
  return shortfall;
}

Shortfall shortfall_of(const DesignSpace& space, const solve::CaseSolution& solved, const Broken& broken) {
  const auto& element = solved.network.elements[at(broken.element)];
  switch (broken.what) {
    case Broken::What::drop:
      return drop_shortfall(space, solved, broken);
    case Broken::What::collapsed:
      return {element.id, solved.network.case_name,
              "its supply cannot deliver what the loads of this case ask for",
              "a larger bank, smaller loads together, or a higher system voltage"};
    case Broken::What::stopped:
      return {element.id, solved.network.case_name,
              fmt::format("stops: its voltage falls below {:.3g} V", broken.limit),
              "a larger or better charged bank, a shorter route, or a higher system voltage"};
    case Broken::What::ampacity:
      return {
          element.id, solved.network.case_name,
          fmt::format("is warmed as by a steady {:.3g} A; the thickest cable on the list may carry {:.3g} A",
                      broken.value, broken.limit),
          "a thicker cable than listed, a higher insulation rating, or a higher system voltage"};
    case Broken::What::fuse:
      return {element.id, solved.network.case_name,
              fmt::format(
                  "carries {:.3g} A, so it must be rated {:.3g} A or more; what it guards may carry {:.3g} A",
                  broken.value, 1.25 * broken.value, broken.limit),
              "a thicker cable than listed, or a fuse of its own for the thinner branch"};
  }
  return {};
}

}  // namespace

std::vector<Shortfall> shortfalls(const DesignSpace& space, const Assessment& widest) {
  std::vector<Shortfall> found;
  const auto left_out = [&](const Broken& broken) {
    return std::any_of(space.out_of_reach.begin(), space.out_of_reach.end(), [&](const OutOfReach& limit) {
      return limit.in_case == broken.in_case && limit.element == broken.element;
    });
  };
  for (const Broken& broken : widest.broken)
    if (!left_out(broken)) found.push_back(shortfall_of(space, widest.cases[broken.in_case], broken));
  return found;
}

}  // namespace ohmtrail::plan
