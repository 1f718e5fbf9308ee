#include "ohmtrail/diagnose/point_in_words.hpp"

#include <algorithm>

#include "ohmtrail/netlist/names.hpp"

namespace ohmtrail::diagnose {

std::string stud_of(const netlist::System& system, const std::string& point) {
  const netlist::SplitName name = netlist::split_point_name(point);
  if (name.part.empty()) return "";
  const auto run = std::find_if(system.runs.begin(), system.runs.end(),
                                [&](const netlist::Run& r) { return r.id == name.owner; });
  if (run == system.runs.end()) return "";
  if (name.part.starts_with("return")) {
    if (!run->return_conductor) return "";
    return name.part.starts_with("return-from") ? run->return_conductor->from : run->return_conductor->to;
  }
  return name.part.starts_with("from") ? run->from : run->to;
}

std::string point_in_words(const netlist::System& system, const std::string& point) {
  const auto quoted = [&](const std::string& name) {
    const auto found = system.points.find(name);
    const bool placed = found != system.points.end() && !found->second.place.empty();
    return '"' + name + '"' + (placed ? " (" + found->second.place + ')' : "");
  };
  const std::string stud = stud_of(system, point);
  if (stud.empty()) return quoted(point);
  const netlist::SplitName name = netlist::split_point_name(point);
  const bool metal = name.part.ends_with("-metal");
  const std::string whose =
      (name.part.starts_with("return") ? "the return of \"" : "\"") + std::string(name.owner) + '"';
  return (metal ? "the lug's metal of " : "the barrel of ") + whose + " at " + quoted(stud);
}

}  // namespace ohmtrail::diagnose
