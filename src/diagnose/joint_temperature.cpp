#include "ohmtrail/diagnose/joint_temperature.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "index.hpp"
#include "joint_heat.hpp"
#include "ohmtrail/trade/fin.hpp"

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

double to_5_kelvin(double celsius) {
  return 5 * std::round(celsius / 5);
}

}  // namespace

std::optional<JointTemperature> JointHeat::of(int index) const {
  const auto& element = at(solved_.network.elements, index);
  const double current = at(solved_.solution.current, index);
  if (!is_contact(element.role) || !element.active || !std::isfinite(current) || current == 0)
    return std::nullopt;
  const Surround around = surroundings_.of(index);
  const auto cables = cables_of(system_, solved_, around.cables);
  if (cables.fins.empty()) return std::nullopt;
  double heat = 0;
  for (const int contact : around.contacts) {
    const double one = at(solved_.solution.heat, contact);
    heat += std::isfinite(one) ? one : 0;
  }
  JointTemperature joint;
  joint.rise = trade::joint_rise(units::Power{heat}, cables.fins, units::Temperature{cables.ambient}).si();
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
  if (joint.above_insulation)
    return fmt::format(
        "about {:.0f} °C if it stays on: above the {:.0f} °C that the cable's insulation is rated for, and "
        "too hot to touch",
        joint.celsius, joint.insulation_rating);
  if (joint.too_hot_to_touch)
    return fmt::format(
        "about {:.0f} °C if it stays on: too hot to touch (bare metal burns at {:.0f} °C within a second; "
        "from memory: ISO "
        "13732-1)",
        joint.celsius, touch_limit_celsius);
  return std::nullopt;
}

}  // namespace ohmtrail::diagnose
