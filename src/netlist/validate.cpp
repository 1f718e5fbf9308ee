#include "netlist/validate.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "netlist/nearest.hpp"
#include "netlist/object.hpp"
#include "netlist/sections.hpp"

namespace ohmtrail::netlist {

namespace {

/// An unknown key may be a section whose name was mistyped, and a section of the wrong type holds nothing.
bool sections_complete(Value root) {
  const auto known = known_keys<System>();
  const auto children = root.children();
  for (const Value member : children) {
    if (std::find(known.begin(), known.end(), member.key()) == known.end()) return false;
    const bool object = member.key() == "system" || member.key() == "points" || !member.is(Kind::object);
    if (!object) return false;
  }
  return true;
}

void note_incomplete(Checked& checked) {
  const bool complete = checked.sections_complete = sections_complete(checked.root);
  checked.ids_complete = complete && !checked.names.flaws().unnamed_element;
  checked.points_complete = complete && !checked.names.flaws().unnamed_point;
}

/// Every derived name that the file uses, wherever that is.
std::vector<std::string_view> names_in_use(const System& system) {
  std::vector<std::string_view> names(system.stubs.begin(), system.stubs.end());
  names.push_back(system.reference);
  for (const auto& [name, point] : system.points) names.push_back(name);
  for (const Case& one : system.cases) names.insert(names.end(), one.open.begin(), one.open.end());
  for (const Reading& reading : system.readings) {
    if (const auto* volts = std::get_if<VoltsReading>(&reading.what)) {
      names.push_back(volts->red);
      names.push_back(volts->black);
    }
    if (const auto* amps = std::get_if<AmpsReading>(&reading.what)) names.push_back(amps->in);
    if (const auto* ohms = std::get_if<OhmsReading>(&reading.what)) names.push_back(ohms->across);
    if (const auto* heat = std::get_if<TemperatureReading>(&reading.what)) names.push_back(heat->at);
  }
  return names;
}

/// `M@from` for `M/from-crimp`; nothing for other names.
std::string point_of_crimp(std::string_view name) {
  const auto [owner, part] = split_element_name(name);
  constexpr std::string_view suffix = "-crimp";
  if (!part.ends_with(suffix)) return {};
  return fmt::format("{}@{}", owner, part.substr(0, part.size() - suffix.size()));
}

void open_all_ends(System& system) {
  for (Run& run : system.runs) {
    run.end_from.opened = run.end_to.opened = true;
    if (auto& back = run.return_conductor) back->end_from.opened = back->end_to.opened = true;
  }
}

/// Ends with a crimp of their own are open already.
void open_ends(System& system, const Names& names) {
  if (system.info.terminations == Terminations::contact_and_crimp) open_all_ends(system);
  for (const std::string_view name : names_in_use(system)) {
    const std::string point = name.ends_with("-metal") ? std::string(name) : point_of_crimp(name);
    if (RunEnd* end = point.empty() ? nullptr : end_at(system, names, point)) end->opened = true;
  }
}

}  // namespace

void validate(Reader& reader, Value root, System& system) {
  if (!root.member("cases").exists()) {
    Case all;
    all.name = "all-on";
    all.all_on = true;
    system.cases.push_back(std::move(all));
  }
  const Names names(system);
  open_ends(system, names);
  Checked checked{reader, root, system, names};
  note_incomplete(checked);
  validate_elements(checked);
  validate_points(checked);
  validate_cases(checked);
  validate_readings(checked);
}

void tell_unknown_name(Reader& reader, Value at, std::string_view kind, std::string_view what,
                       std::string_view name, const std::vector<std::string_view>& known) {
  Remark remark{kind, "", "", ""};
  if (reader.problems.listing()) {
    constexpr std::size_t few = 12;
    remark.text = fmt::format("there is no {} \"{}\"", what, shown(name));
    remark.hint = did_you_mean(name, known);
    if (known.empty())
      remark.expected = fmt::format("no {}: the file has none", what);
    else if (known.size() <= few)
      remark.expected = one_of(known);
    else
      remark.expected = fmt::format("one of the {} names given", known.size());
  }
  reader.problems.error(at, std::move(remark));
}

}  // namespace ohmtrail::netlist
