#include <fmt/format.h>

#include <algorithm>

#include "netlist/load_checks.hpp"
#include "netlist/object.hpp"
#include "netlist/validate.hpp"

namespace ohmtrail::netlist {

namespace {

template <class Items>
std::vector<std::string_view> ids_of(const Items& items) {
  std::vector<std::string_view> ids;
  for (const auto& item : items) ids.push_back(item.id);
  return ids;
}

bool in_section(const Checked& checked, std::string_view id, Section section) {
  const auto place = checked.names.element(id);
  return place && place->section == section;
}

/// Where a namesake of another kind came first, the id itself is the mistake, and is told where it stands.
void tell_unknown_id(const Checked& checked, Value at, std::string_view kind, std::string_view what,
                     std::string_view id, const std::vector<std::string_view>& ids) {
  if (std::find(ids.begin(), ids.end(), id) == ids.end())
    tell_unknown_name(checked.reader, at, kind, what, id, ids);
}

void tell_unless_load(const Checked& checked, Value at, std::string_view id) {
  if (!checked.ids_complete || in_section(checked, id, Section::loads)) return;
  tell_unknown_id(checked, at, "unknown-load", "load", id, ids_of(checked.system.loads));
}

void check_on(const Checked& checked, Value value, Case& one) {
  for_each_item(value, "on", one.on, [&](Value at, const std::string& id) {
    if (!id.empty()) tell_unless_load(checked, at, id);
  });
}

void tell_without(const Checked& checked, Value takes, std::string_view word, const Load& load) {
  checked.reader.problems.error(
      takes, {word == "stall" ? "no-stall" : "no-inrush",
              fmt::format("the load \"{}\" has no {}", shown(load.id), word),
              fmt::format("a load with the key {}", word), "give it in loads, or give the current here"});
}

/// A motor held fast has no back-emf: what its windings take follows the voltage.
Resistance stalled(const Checked& checked, const Load& load) {
  return load.nominal.value_or(checked.system.info.nominal) / *load.stall;
}

/// Puts what the load itself says in the place of the words "inrush" and "stall".
void put_in_place(const Checked& checked, Value takes, const Load& load, Case& one) {
  const std::string_view word = takes.string();
  const auto& asked_for = word == "stall" ? load.stall : load.inrush;
  if (!asked_for) return tell_without(checked, takes, word, load);
  if (word == "stall") {
    one.set[load.id] = stalled(checked, load);
  } else {
    one.set[load.id] = *asked_for;
    one.starting.push_back(load.id);
  }
}

void doubt_efficiency(const Checked& checked, Value takes, const Load& load, const Case& one) {
  const auto found = one.set.find(load.id);
  const bool loses = load.efficiency < Fraction{1} || load.idle > Power{0};
  if (!loses || found == one.set.end() || std::holds_alternative<Power>(found->second)) return;
  checked.reader.problems.warning(takes, efficiency_unused(load.id));
}

void check_set(const Checked& checked, Value value, Case& one) {
  for (const Value takes : value.member("set").children()) {
    const std::string_view id = takes.key();
    tell_unless_load(checked, takes, id);
    if (!in_section(checked, id, Section::loads)) continue;
    const Load& load = checked.system.loads[checked.names.element(id)->index];
    if (takes.string() == "inrush" || takes.string() == "stall")
      put_in_place(checked, takes, load, one);
    else
      doubt_efficiency(checked, takes, load, one);
  }
}

void check_open(const Checked& checked, Value value, Case& one) {
  for_each_item(value, "open", one.open, [&](Value at, const std::string& id) {
    if (!id.empty() && !checked.names.has_element(id)) tell_unknown_element(checked, at, id);
  });
}

void check_closed(const Checked& checked, Value value, Case& one) {
  for_each_item(value, "closed", one.closed, [&](Value at, const std::string& id) {
    if (id.empty()) return;
    if (checked.ids_complete && !in_section(checked, id, Section::switches)) {
      tell_unknown_id(checked, at, "unknown-switch", "switch", id, ids_of(checked.system.switches));
    }
    if (std::find(one.open.begin(), one.open.end(), id) != one.open.end()) {
      checked.reader.problems.error(
          at, {"open-and-closed", fmt::format("\"{}\" is both open and closed", shown(id)), "one of the two",
               ""});
    }
  });
}

void check_chargers(const Checked& checked, Value value, Case& one) {
  for_each_item(value, "chargers", one.chargers, [&](Value at, const std::string& id) {
    const bool known =
        in_section(checked, id, Section::chargers) || in_section(checked, id, Section::converters);
    if (!checked.ids_complete || id.empty() || known) return;
    auto ids = ids_of(checked.system.chargers);
    for (const std::string_view converter : ids_of(checked.system.converters)) ids.push_back(converter);
    tell_unknown_id(checked, at, "unknown-charger", "charger or converter", id, ids);
  });
}

}  // namespace

void validate_cases(const Checked& checked) {
  std::unordered_map<std::string_view, Value> taken;
  for_each_item(checked.root, "cases", checked.system.cases, [&](Value value, Case& one) {
    check_on(checked, value, one);
    check_set(checked, value, one);
    check_open(checked, value, one);
    check_closed(checked, value, one);
    check_chargers(checked, value, one);
    const auto [first, fresh] = taken.try_emplace(one.name, value);
    if (fresh || one.name.empty()) return;
    checked.reader.problems.error(
        value.member("name"), {"duplicate-case", fmt::format("the case \"{}\" stands twice", shown(one.name)),
                               "a name that no other case has", "first given at " + first->second.pointer()});
  });
}

}  // namespace ohmtrail::netlist
