#include "ohmtrail/diagnose/swing.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "index.hpp"
#include "route.hpp"

namespace ohmtrail::diagnose {
namespace {

/// Lights are seen to pulse above this share of nominal; common practice.
constexpr double common_limit = 0.02;

const solve::LoadResult* running_load(const solve::CaseSolution& solved, int element) {
  const auto found =
      std::find_if(solved.loads.begin(), solved.loads.end(),
                   [&](const solve::LoadResult& one) { return one.element == element && one.running; });
  return found == solved.loads.end() ? nullptr : &*found;
}

bool carries(const solve::CaseSolution& solved, const std::vector<Leg>& legs) {
  return std::all_of(legs.begin(), legs.end(), [&](const Leg& leg) {
    return at(solved.network.elements, leg.element).active &&
           std::isfinite(at(solved.solution.drop, leg.element));
  });
}

/// Losses by element, in the order in which the route passes them.
using Losses = std::vector<std::pair<int, double>>;

void add_to(Losses& losses, int element, double volts) {
  const auto found =
      std::find_if(losses.begin(), losses.end(), [&](const auto& one) { return one.first == element; });
  if (found == losses.end())
    losses.emplace_back(element, volts);
  else
    found->second += volts;
}

/// One way, held against itself, where it conducts in both cases; else each case's own way, whose losses are
/// taken away from each other: in both the changes add up to the load's (Kirchhoff's voltage law).
Losses change_of_losses(const Route& before, const solve::CaseSolution& to, const Route& after) {
  Losses losses;
  const auto legs = before.legs();
  const bool same_supply = before.supply->elements == after.supply->elements;
  if (same_supply && carries(to, legs)) {
    for (const auto& leg : legs) losses.emplace_back(leg.element, lost_in(to, leg) - leg.lost);
    return losses;
  }
  for (const auto& leg : legs) add_to(losses, leg.element, -leg.lost);
  for (const auto& leg : after.legs()) add_to(losses, leg.element, leg.lost);
  return losses;
}

void attribute(Swing& swing, const network::Network& network, const Losses& losses) {
  for (const auto& [index, more_lost] : losses) {
    const auto& element = at(network.elements, index);
    add(swing.parts, element.role, -more_lost);
    swing.elements.push_back({element.id, element.role, -more_lost});
  }
  std::stable_sort(
      swing.elements.begin(), swing.elements.end(),
      [](const ElementSwing& a, const ElementSwing& b) { return std::abs(a.change) > std::abs(b.change); });
}

void judge(Swing& swing, const netlist::System& system, const network::Element& load) {
  const auto& limit = system.info.limits.swing;
  const double nominal = load.nominal.value_or(system.info.nominal).si();
  swing.limit_given = limit.has_value();
  swing.limit_fraction = limit ? limit->of_one() : common_limit;
  swing.fraction = std::abs(swing.change) / nominal;
  swing.within = swing.fraction <= swing.limit_fraction;
}

}  // namespace

std::vector<Swing> swing(const netlist::System& system, const solve::CaseSolution& from,
                         const solve::CaseSolution& to) {
  std::vector<Swing> swings;
  for (const auto& load : from.loads) {
    const auto* other = running_load(to, load.element);
    const auto before = route(from, load);
    const auto after = other ? route(to, *other) : std::nullopt;
    if (!before || !after) continue;
    const auto& element = at(from.network.elements, load.element);
    Swing row;
    row.load = element.id;
    row.from_case = from.network.case_name;
    row.to_case = to.network.case_name;
    row.before = load.volts;
    row.after = other->volts;
    row.change = row.after - row.before;
    row.open_circuit = after->supply->open_circuit - before->supply->open_circuit;
    attribute(row, from.network, change_of_losses(*before, to, *after));
    judge(row, system, element);
    swings.push_back(std::move(row));
  }
  std::stable_sort(swings.begin(), swings.end(),
                   [](const Swing& a, const Swing& b) { return a.fraction > b.fraction; });
  return swings;
}

}  // namespace ohmtrail::diagnose
