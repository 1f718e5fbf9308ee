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

Names::Names(const System& system) : system_(&system) {
  std::size_t elements = 0;
  for_each_section(system, [&](Section, const auto& items) { elements += items.size(); });
  element_by_id_.reserve(elements);
  terminals_by_point_.reserve(2 * elements);
  for_each_section(system, [this](Section section, const auto& items) { add_elements(section, items); });
}

template <class Item>
void Names::add_elements(Section section, const std::vector<Item>& items) {
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (!items[i].id.empty() && element_by_id_.try_emplace(items[i].id, ElementPlace{section, i}).second) {
      ids_.push_back(items[i].id);
    }
    for (const TerminalPair& pair : terminals(items[i])) {
      add_point(*pair.first);
      add_point(*pair.second);
    }
  }
}

void Names::add_point(std::string_view name) {
  if (!name.empty() && ++terminals_by_point_[name] == 1) points_.push_back(name);
}

std::optional<ElementPlace> Names::element(std::string_view id) const {
  const auto found = element_by_id_.find(id);
  if (found == element_by_id_.end()) return std::nullopt;
  return found->second;
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
  const auto found = terminals_by_point_.find(point);
  return found == terminals_by_point_.end() ? 0 : found->second;
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
