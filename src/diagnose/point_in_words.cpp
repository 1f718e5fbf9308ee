#include "ohmtrail/diagnose/point_in_words.hpp"

#include <algorithm>

#include "ohmtrail/netlist/names.hpp"

namespace ohmtrail::diagnose {

namespace {

/// The end of an element towards which its current counts as plus; of a battery its plus post. Empty: no such
/// element.
std::string plus_end(const netlist::System& system, const std::string& element) {
  const std::string owner = element.substr(0, element.find('/'));
  const bool back = element.find("/return") != std::string::npos;
  std::string out;
  const auto look = [&](const auto& section, const auto end) {
    for (const auto& one : section)
      if (one.id == owner) out = end(one);
  };
  const auto to = [](const auto& one) { return one.to; };
  look(system.runs, [&](const netlist::Run& run) {
    return back && run.return_conductor ? run.return_conductor->to : run.to;
  });
  look(system.joints, to), look(system.switches, to), look(system.fuses, to), look(system.shunts, to);
  look(system.batteries, [](const netlist::Battery& battery) { return battery.plus; });
  return out;
}

}  // namespace

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

std::string clamp_in_words(const netlist::System& system, const std::string& element, double amperes) {
  constexpr double none = 0.05;  // A: less shows no direction
  const std::string words = "clamp round \"" + element + '"';
  const std::string end = amperes < -none ? plus_end(system, element) : "";
  return end.empty() ? words : words + ", arrow towards \"" + end + "\" (it shows a minus)";
}

}  // namespace ohmtrail::diagnose
