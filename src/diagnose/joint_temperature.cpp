#include "ohmtrail/diagnose/joint_temperature.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "index.hpp"
#include "joint_heat.hpp"
#include "ohmtrail/diagnose/temperature_in_words.hpp"
#include "ohmtrail/trade/fin_turns.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::diagnose {
namespace {

/// The cables as fins, and the temperature that they have by themselves where they meet.
struct Cables {
  std::vector<trade::Fin> fins;
  double own_temperature = 0;  ///< °C, mean weighted by what each can carry off
  double ambient = -std::numeric_limits<double>::infinity();
  double insulation_rating = std::numeric_limits<double>::infinity();
};

Cables cables_of(const netlist::System& system, const solve::CaseSolution& solved,
                 const std::vector<Cooling>& cooling) {
  Cables cables;
  double weights = 0;
  for (const Cooling& one : cooling) {
    const double ambient = at(solved.network.elements, one.wire).heating->ambient.celsius();
    const double temperature = at(solved.solution.temperature, one.wire);
    cables.own_temperature += one.weight * (std::isfinite(temperature) ? temperature : ambient);
    weights += one.weight;
    cables.ambient = std::max(cables.ambient, ambient);
    cables.insulation_rating = std::min(cables.insulation_rating, system.runs[one.run].insulation.celsius());
    cables.fins.push_back(one.fin);
  }
  if (weights > 0) cables.own_temperature /= weights;
  return cables;
}

/// Where all but this share of the heat lasts, turns change nothing that could be told to 5 K.
constexpr double matters = 0.99;

double to_5_kelvin(double celsius) {
  return 5 * std::round(celsius / 5);
}

}  // namespace

/// Its own and that of the terminations through which it is cooled.
JointHeat::Heat JointHeat::heat_of(const Surround& around) const {
  Heat heat;
  for (const int contact : around.contacts) {
    const double watts = at(solved_.solution.heat, contact);
    if (!std::isfinite(watts)) continue;
    heat.all += watts;
    heat.lasting += watts * (solved_.turns ? at(solved_.turns->lasting, contact) : 1);
  }
  return heat;
}

/// The rise at the end of the turn that warms it most, and how long that turn is.
JointHeat::Rise JointHeat::rise_of(const Heat& heat, std::span<const trade::Fin> fins,
                                   units::Temperature ambient) const {
  const units::Power all{heat.all}, lasting{std::min(heat.all, heat.lasting)};
  if (!(lasting.si() < matters * all.si())) return {trade::joint_rise(all, fins, ambient).si(), {}};
  Rise worst;
  for (const auto& duty : solved_.turns->duties) {
    const trade::TurnHeat turns{lasting, all - lasting, duty.on, duty.rest};
    const double rise = trade::joint_rise_in_turns(turns, fins, ambient).si();
    if (!worst.turn || rise > worst.kelvin) worst = {rise, duty.on.si()};
  }
  return worst;
}

std::optional<JointTemperature> JointHeat::of(int index) const {
  const auto& element = at(solved_.network.elements, index);
  const double current = at(solved_.solution.current, index);
  if (!is_contact(element.role) || !element.active || !std::isfinite(current) || current == 0)
    return std::nullopt;
  const Surround around = surroundings_.of(index);
  const auto cables = cables_of(system_, solved_, around.cables);
  if (cables.fins.empty()) return std::nullopt;
  JointTemperature joint;
  const auto rise = rise_of(heat_of(around), cables.fins, units::Temperature{cables.ambient});
  joint.rise = rise.kelvin;
  joint.turn = rise.turn;
  joint.celsius = to_5_kelvin(cables.own_temperature + joint.rise);
  joint.cables = static_cast<int>(cables.fins.size());
  joint.insulation_rating = cables.insulation_rating;
  joint.too_hot_to_touch = joint.celsius >= touch_limit_celsius;
  joint.above_insulation = joint.celsius > joint.insulation_rating;
  return joint;
}

std::optional<JointTemperature> joint_temperature(const netlist::System& system,
                                                  const solve::CaseSolution& solved, int element) {
  return JointHeat(system, solved).of(element);
}

std::optional<std::string> heat_warning(const JointTemperature& joint) {
  if (!joint.above_insulation && !joint.too_hot_to_touch) return std::nullopt;
  const auto when = joint.turn ? fmt::format("after its turn of {}", print(units::Time{*joint.turn}))
                               : std::string("if it stays on");
  // In a turn its own metal takes up heat too, which is left out.
  const auto about = joint.turn ? "up to about" : "about";
  if (joint.celsius > charring_celsius)
    return fmt::format(
        "over {:.0f} °C by the numbers {}: it would char before it got there; the cable's insulation stands "
        "{:.0f} °C",
        charring_celsius, when, joint.insulation_rating);
  if (joint.above_insulation)
    return fmt::format(
        "{} {:.0f} °C {}: above the {:.0f} °C that the cable's insulation is rated for, and too hot to touch",
        about, joint.celsius, when, joint.insulation_rating);
  return fmt::format(
      "{} {:.0f} °C {}: too hot to touch (bare metal burns at {:.0f} °C within a second; from memory: ISO "
      "13732-1)",
      about, joint.celsius, when, touch_limit_celsius);
}

}  // namespace ohmtrail::diagnose
