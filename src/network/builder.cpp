#include "network/builder.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace ohmtrail::network {

Builder::Builder(const netlist::System& system, const netlist::Case& in_case)
    : system_(system),
      case_(in_case),
      around_{system, in_case.ambient.value_or(system.info.ambient)},
      open_(in_case.open.begin(), in_case.open.end()),
      closed_(in_case.closed.begin(), in_case.closed.end()),
      on_(in_case.on.begin(), in_case.on.end()),
      charging_(in_case.chargers.begin(), in_case.chargers.end()),
      named_(names_in_use(system)) {
  network_.case_name = in_case.name;
  network_.assumptions.push_back({"system", fmt::format("ambient temperature in case {}", in_case.name),
                                  around_.ambient.celsius(), Assumed::ambient});
}

Network Builder::build() {
  add_batteries();
  add_chargers();
  add_runs();
  add_joints();
  add_switches();
  add_fuses();
  add_shunts();
  add_isolators();
  add_loads();
  add_converters();
  if (!system_.reference.empty()) {
    network_.reference = network_.point(system_.reference);
  } else if (!system_.batteries.empty()) {
    network_.reference = network_.point(system_.batteries.front().minus);
  }
  return std::move(network_);
}

int Builder::point(const std::string& name) {
  const auto [found, added] = point_index_.try_emplace(name, static_cast<int>(network_.points.size()));
  if (added) network_.points.push_back(name);
  return found->second;
}

Element& Builder::add(std::string id, Role role, const std::string& from, const std::string& to,
                      Origin origin) {
  const int first = point(from);
  const int second = point(to);
  Element element{};
  element.id = std::move(id);
  element.role = role;
  element.from = first;
  element.to = second;
  element.origin = origin;
  element.active = !is_open(element.id);
  return network_.elements.emplace_back(std::move(element));
}

void Builder::add_batteries() {
  for (std::size_t k = 0; k < system_.batteries.size(); ++k) {
    const netlist::Battery& battery = system_.batteries[k];
    Element& element = add(battery.id, Role::battery, battery.plus, battery.minus, {Section::batteries, k});
    fill_battery(element, battery, around_, network_.assumptions);
  }
}

void Builder::add_chargers() {
  for (std::size_t k = 0; k < system_.chargers.size(); ++k) {
    const netlist::Charger& charger = system_.chargers[k];
    Element& element = add(charger.id, Role::charger, charger.plus, charger.minus, {Section::chargers, k});
    element.voltage = charger.setpoint;
    element.limit = charger.limit;
    element.active = element.active && charging_.contains(charger.id);
  }
}

void Builder::add_shunts() {
  for (std::size_t k = 0; k < system_.shunts.size(); ++k) {
    const netlist::Shunt& shunt = system_.shunts[k];
    Element& element = add(shunt.id, Role::shunt, shunt.from, shunt.to, {Section::shunts, k});
    element.resistance = shunt.drop / shunt.rating;
    element.sound = element.resistance;
    element.sound_from_table = false;
  }
}

void Builder::add_isolators() {
  for (std::size_t k = 0; k < system_.isolators.size(); ++k) {
    const netlist::Isolator& isolator = system_.isolators[k];
    Element& element = add(isolator.id, Role::isolator, isolator.from, isolator.to, {Section::isolators, k});
    element.voltage = isolator.drop;
    if (isolator.rating) element.limit = *isolator.rating;
  }
}

namespace {

/// What goes into a load that gives `takes` out: inverters lose by their efficiency and draw with nothing
/// plugged in.
netlist::Takes drawn(const netlist::Load& load, const netlist::Takes& takes) {
  const auto* power = std::get_if<Power>(&takes);
  if (!power) return takes;
  return *power / load.efficiency.of_one() + load.idle;
}

// Common practice: a motor's inrush has passed after half a second.
constexpr Time inrush_lasts{0.5};

std::optional<ShortDuty> duty_of(const netlist::Load& load, const netlist::Case& in_case) {
  const auto& starting = in_case.starting;
  if (std::find(starting.begin(), starting.end(), load.id) != starting.end())
    return ShortDuty{inrush_lasts, load.rest_for};
  if (!load.on_for) return std::nullopt;
  return ShortDuty{*load.on_for, load.rest_for};
}

}  // namespace

void Builder::add_loads() {
  const netlist::Limits& limits = system_.info.limits;
  for (std::size_t k = 0; k < system_.loads.size(); ++k) {
    const netlist::Load& load = system_.loads[k];
    Element& element = add(load.id, Role::load, load.plus, load.minus, {Section::loads, k});
    const auto set = case_.set.find(load.id);
    element.takes = drawn(load, set == case_.set.end() ? load.takes : set->second);
    element.short_duty = duty_of(load, case_);
    element.active = element.active && (case_.all_on || on_.contains(load.id));
    element.nominal = load.nominal.value_or(system_.info.nominal);
    element.stops_below = load.stops_below;
    if (load.load_class == netlist::LoadClass::critical) element.drop_limit = limits.critical_drop;
    if (load.load_class == netlist::LoadClass::other) element.drop_limit = limits.other_drop;
  }
}

void Builder::add_converters() {
  for (std::size_t k = 0; k < system_.converters.size(); ++k) {
    const netlist::Converter& converter = system_.converters[k];
    const int input = static_cast<int>(network_.elements.size());
    Element& in = add(converter.id + "/in", Role::load, converter.plus_in, converter.minus_in,
                      {Section::converters, k, Part::converter_in});
    in.takes = Power{0};
    in.nominal = system_.info.nominal;
    in.stops_below = converter.stops_below;
    in.drop_limit = system_.info.limits.other_drop;
    in.efficiency = converter.efficiency.of_one();
    in.idle = converter.idle;
    in.partner = input + 1;
    Element& out = add(converter.id + "/out", Role::charger, converter.plus_out, converter.minus_out,
                       {Section::converters, k, Part::converter_out});
    out.voltage = converter.setpoint;
    out.limit = converter.limit;
    out.efficiency = converter.efficiency.of_one();
    out.idle = converter.idle;
    out.partner = input;
    // Either half opened, or the whole: nothing goes through.
    const bool on =
        out.active && network_.elements[static_cast<std::size_t>(input)].active && !is_open(converter.id);
    out.active = on;
    network_.elements[static_cast<std::size_t>(input)].active = on;
  }
}

Network build(const netlist::System& system, const netlist::Case& in_case) {
  return Builder(system, in_case).build();
}

}  // namespace ohmtrail::network
