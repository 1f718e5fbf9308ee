#pragma once
#include <stdexcept>
#include <string>
#include <vector>

#include "ohmtrail/netlist/read.hpp"
#include "ohmtrail/network/network.hpp"

/// Small systems as a file gives them, and the networks they become.
namespace ohmtrail::network {

inline netlist::System system_of(const std::string& json) {
  auto read = netlist::read(json);
  if (!read) throw std::runtime_error(netlist::format(read.error().front(), "test"));
  return read->system;
}

/// A battery, one run out and back with a load, and room for more keys.
inline std::string one_load(const std::string& run_keys = "", const std::string& more = "") {
  return R"({"ohmtrail": 1, "system": {"name": "one load", "nominal": 12},
    "batteries": [{"id": "bat", "plus": "b+", "minus": "b-", "nominal": 12, "emf": 12.6, "resistance": 0.01}],
    "runs": [{"id": "feed", "from": "b+", "to": "l+", "gauge": "6 AWG", "length": 2)" +
         run_keys + R"(, "return": {"from": "l-", "to": "b-"}}],
    "loads": [{"id": "pump", "plus": "l+", "minus": "l-", "takes": "5 A"}])" +
         more + "}";
}

inline std::vector<std::string> ids(const Network& network) {
  std::vector<std::string> found;
  for (const Element& element : network.elements) found.push_back(element.id);
  return found;
}

inline const Element& element(const Network& network, const std::string& id) {
  return network.elements.at(static_cast<std::size_t>(network.element(id).value()));
}

inline Network built(const std::string& json, std::size_t in_case = 0) {
  const netlist::System system = system_of(json);
  return build(system, system.cases.at(in_case));
}

}  // namespace ohmtrail::network
