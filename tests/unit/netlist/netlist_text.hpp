#pragma once
#include <fmt/format.h>
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "ohmtrail/netlist/read.hpp"

namespace ohmtrail::netlist::test {

using OrderedJson = nlohmann::ordered_json;

/// A small sound system that every test changes in one place: battery, run with return, joint, switch, fuse,
/// shunt, load, one of nearly everything.
inline OrderedJson sound_netlist() {
  return OrderedJson::parse(R"json({
    "ohmtrail": 1,
    "system": {"name": "test bench (invented)", "nominal": 12},
    "batteries": [{"id": "B", "plus": "b+", "minus": "b-", "nominal": 12}],
    "chargers": [{"id": "C", "plus": "b+", "minus": "b-", "setpoint": 14.4, "limit": 40}],
    "runs": [
      {"id": "M", "from": "b+", "to": "sw", "gauge": "2/0 AWG", "length": "6 ft",
       "return": {"from": "l-", "to": "sh"}},
      {"id": "N", "from": "fu", "to": "l+", "gauge": "6 AWG", "length": 2}],
    "joints": [{"id": "J", "from": "b-", "to": "sh2", "kind": "stud"}],
    "switches": [{"id": "S", "from": "sw", "to": "fi", "kind": "battery-switch"}],
    "fuses": [{"id": "F", "from": "fi", "to": "fu", "rating": "100 A"}],
    "shunts": [{"id": "H", "from": "sh", "to": "sh2", "rating": "500 A", "drop": "50 mV"}],
    "loads": [{"id": "L", "plus": "l+", "minus": "l-", "takes": "100 W"}],
    "cases": [{"name": "run", "on": ["L"]}],
    "meters": [{"id": "dmm", "volts": {"percent": 0.5, "counts": 2, "digits_to": 0.001}}],
    "readings": [{"volts": 12.5, "red": "b+", "black": "b-", "case": "run", "meter": "dmm"}]
  })json");
}

/// `sound_netlist` with the value at a JSON pointer set; `-` as the last step appends to a list.
inline std::string with(const std::string& pointer, const std::string& value,
                        OrderedJson base = sound_netlist()) {
  base[OrderedJson::json_pointer(pointer)] = OrderedJson::parse(value);
  return base.dump(1);
}

/// `sound_netlist` without the value at a JSON pointer.
inline std::string without(const std::string& pointer, OrderedJson base = sound_netlist()) {
  const OrderedJson::json_pointer whole(pointer);
  base[whole.parent_pointer()].erase(whole.back());
  return base.dump(1);
}

inline std::vector<Problem> mistakes(const std::string& text) {
  auto result = read(text);
  return result ? std::vector<Problem>{} : result.error();
}

inline std::vector<Problem> doubts(const std::string& text) {
  auto result = read(text);
  EXPECT_TRUE(result) << (result ? "" : format(result.error().front(), "test"));
  return result ? result->warnings : std::vector<Problem>{};
}

/// The system of a text that must be right.
inline System system_of(const std::string& text) {
  auto result = read(text);
  if (result) return result->system;
  for (const Problem& problem : result.error()) ADD_FAILURE() << format(problem, "test");
  return {};
}

/// "name pointer" of each, in order.
inline std::vector<std::string> named(const std::vector<Problem>& problems) {
  std::vector<std::string> names;
  for (const Problem& problem : problems) names.push_back(problem.name + " " + problem.pointer);
  return names;
}

}  // namespace ohmtrail::netlist::test
