#pragma once
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>

#include "ohmtrail/netlist/read.hpp"

namespace ohmtrail::test {

/// The names, without ending, of the complete systems in netlists/.
inline constexpr const char* shipped_netlists[] = {"camper-12v", "cart-48v", "launch-24v", "yacht-12v"};

inline netlist::System shipped(const std::string& name) {
  std::ifstream file(std::string(OHMTRAIL_SOURCE_DIR) + "/netlists/" + name + ".json");
  std::stringstream text;
  text << file.rdbuf();
  auto read = netlist::read(text.str());
  if (!read) throw std::runtime_error("netlists/" + name + ".json cannot be read");
  return std::move(read->system);
}

}  // namespace ohmtrail::test
