#include "ohmtrail/netlist/names.hpp"

#include <algorithm>
#include <array>

#include "netlist/terminals.hpp"

namespace ohmtrail::netlist {

namespace {

SplitName split_at(std::string_view name, char divider) {
  const auto at = name.rfind(divider);
  if (at == std::string_view::npos) return {name, {}};
  return {name.substr(0, at), name.substr(at + 1)};
}

/// Takes `return-` off a part; whether it was there.
bool take_return(std::string_view& part) {
  constexpr std::string_view prefix = "return-";
  if (!part.starts_with(prefix)) return false;
  part.remove_prefix(prefix.size());
  return true;
}

}  // namespace

std::string_view section_key(Section section) {
  constexpr std::array<std::string_view, 10> keys = {"batteries", "chargers",  "runs",   "joints",
                                                     "switches",  "fuses",     "shunts", "isolators",
                                                     "loads",     "converters"};
  return keys.at(static_cast<std::size_t>(section));
}

SplitName split_element_name(std::string_view name) {
  return split_at(name, '/');
}
SplitName split_point_name(std::string_view name) {
  return split_at(name, '@');
}

namespace {

std::size_t elements_of(const System& system) {
  std::size_t count = 0;
  for_each_section(system, [&](Section, const auto& items) { count += items.size(); });
  return count;
}

}  // namespace

Names::Names(const System& system)
    : system_(&system), ids_(elements_of(system)), points_(elements_of(system) + 1) {
  for_each_section(system, [this](Section section, const auto& items) { add_elements(section, items); });
}

template <class Item>
void Names::add_elements(Section section, const std::vector<Item>& items) {
  constexpr std::size_t ahead = 8;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i + ahead < items.size()) expect(items[i + ahead]);
    if (items[i].id.empty()) {
      flaws_.unnamed_element = true;
    } else if (ids_.add(items[i].id) == places_.size()) {
      places_.push_back({section, i});
    } else {
      flaws_.same_id = true;
    }
    for (const TerminalPair& pair : terminals(items[i])) add_pair(*pair.first, *pair.second);
  }
}

template <class Item>
void Names::expect(const Item& item) const {
  ids_.expect(item.id);
  for (const TerminalPair& pair : terminals(item)) {
    points_.expect(*pair.first);
    points_.expect(*pair.second);
  }
}

void Names::add_pair(std::string_view first, std::string_view second) {
  const auto a = add_point(first);
  const auto b = add_point(second);
  flaws_.unnamed_point = flaws_.unnamed_point || !a || !b;
  flaws_.same_point = flaws_.same_point || (a && a == b);
}

std::optional<std::size_t> Names::add_point(std::string_view name) {
  if (name.empty()) return std::nullopt;
  const std::size_t number = points_.add(name);
  if (number == terminals_.size()) terminals_.push_back(0);
  ++terminals_[number];
  return number;
}

std::optional<ElementPlace> Names::element(std::string_view id) const {
  const auto found = ids_.find(id);
  if (!found) return std::nullopt;
  return places_[*found];
}

const Run* Names::run(std::string_view id) const {
  const auto place = element(id);
  return place && place->section == Section::runs ? &system_->runs[place->index] : nullptr;
}

bool Names::has_element(std::string_view name) const {
  auto [owner, part] = split_element_name(name);
  const auto place = element(owner);
  if (!place) return false;
  if (part.empty()) return name.size() == owner.size();
  if (place->section == Section::converters) return part == "in" || part == "out";
  const Run* of = run(owner);
  if (of == nullptr) return false;
  const bool back = take_return(part);
  if (back && !of->return_conductor) return false;
  const RunEnd& from = back ? of->return_conductor->end_from : of->end_from;
  const RunEnd& to = back ? of->return_conductor->end_to : of->end_to;
  return part == "from" || part == "wire" || part == "to" || (part == "from-crimp" && from.opened) ||
         (part == "to-crimp" && to.opened);
}

bool Names::has_point(std::string_view name) const {
  auto [owner, part] = split_point_name(name);
  if (part.empty()) return terminals_at(name) > 0;
  const Run* of = run(owner);
  if (of == nullptr) return false;
  if (take_return(part) && !of->return_conductor) return false;
  return part == "from" || part == "to" || part == "from-metal" || part == "to-metal";
}

std::size_t Names::terminals_at(std::string_view point) const {
  const auto found = points_.find(point);
  return found ? terminals_[*found] : 0;
}

RunEnd* end_at(System& system, const Names& names, std::string_view point) {
  if (!names.has_point(point)) return nullptr;
  auto [owner, part] = split_point_name(point);
  if (part.empty()) return nullptr;
  Run& run = system.runs[names.element(owner)->index];
  if (take_return(part)) {
    ReturnConductor& back = *run.return_conductor;
    return part.starts_with("from") ? &back.end_from : &back.end_to;
  }
  return part.starts_with("from") ? &run.end_from : &run.end_to;
}

}  // namespace ohmtrail::netlist
