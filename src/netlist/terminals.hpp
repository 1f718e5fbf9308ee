#pragma once
#include <string_view>
#include <vector>

#include "ohmtrail/netlist/names.hpp"
#include "ohmtrail/netlist/system.hpp"

/// The points that each kind of element names, with the key of each.
namespace ohmtrail::netlist {

/// Two terminals that one element joins. `inside` is the key of the object that holds them, empty for the
/// element's own.
struct TerminalPair {
  std::string_view first_key, second_key;
  const std::string* first;
  const std::string* second;
  std::string_view inside = {};
};

template <class T>
concept HasPosts = requires(const T& item) {
  item.plus;
  item.minus;
};
template <class T>
concept HasEnds = requires(const T& item) {
  item.from;
  item.to;
};

template <HasPosts T>
std::vector<TerminalPair> terminals(const T& item) {
  return {{"plus", "minus", &item.plus, &item.minus}};
}

template <HasEnds T>
std::vector<TerminalPair> terminals(const T& item) {
  return {{"from", "to", &item.from, &item.to}};
}

inline std::vector<TerminalPair> terminals(const Run& run) {
  std::vector<TerminalPair> pairs{{"from", "to", &run.from, &run.to}};
  if (const auto& back = run.return_conductor)
    pairs.push_back({"from", "to", &back->from, &back->to, "return"});
  return pairs;
}

inline std::vector<TerminalPair> terminals(const Converter& converter) {
  return {{"plus_in", "minus_in", &converter.plus_in, &converter.minus_in},
          {"plus_out", "minus_out", &converter.plus_out, &converter.minus_out}};
}

/// Calls `visit(section, list)` for every section of elements, in the order of the format.
template <class SystemType, class Visit>
void for_each_section(SystemType& system, Visit visit) {
  visit(Section::batteries, system.batteries);
  visit(Section::chargers, system.chargers);
  visit(Section::runs, system.runs);
  visit(Section::joints, system.joints);
  visit(Section::switches, system.switches);
  visit(Section::fuses, system.fuses);
  visit(Section::shunts, system.shunts);
  visit(Section::isolators, system.isolators);
  visit(Section::loads, system.loads);
  visit(Section::converters, system.converters);
}

}  // namespace ohmtrail::netlist
