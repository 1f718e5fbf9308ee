#include "netlist/print_json.hpp"
#include "netlist/sections.hpp"
#include "ohmtrail/netlist/write.hpp"

namespace ohmtrail::netlist {

std::string to_json(const System& system) {
  const Json whole = Object<System>::write(system);
  std::string out = "{";
  bool first = true;
  for (const auto& member : whole.items()) {
    out += first ? "\n " : ",\n ";
    first = false;
    out += Json(member.key()).dump() + ": ";
    print_section(member.value(), " ", out);
  }
  return out + "\n}\n";
}

}  // namespace ohmtrail::netlist
