#include "netlist/print_json.hpp"

#include "ohmtrail/units/print.hpp"

namespace ohmtrail::netlist {

// The depth is that of the tables of keys, six.
void print_line(const Json& value, std::string& out) {
  if (value.is_number_float()) {
    out += units::exact(value.get<double>());
    return;
  }
  if (!value.is_structured()) {
    out += value.dump();
    return;
  }
  const bool object = value.is_object();
  out += object ? '{' : '[';
  bool first = true;
  for (const auto& item : value.items()) {
    if (!first) out += ", ";
    first = false;
    if (object) out += Json(item.key()).dump() + ": ";
    print_line(item.value(), out);
  }
  out += object ? '}' : ']';
}

void print_section(const Json& value, const std::string& indent, std::string& out) {
  if (!value.is_array() || value.empty() || !value.front().is_object()) {
    print_line(value, out);
    return;
  }
  out += '[';
  bool first = true;
  for (const Json& item : value) {
    out += first ? "\n" : ",\n";
    first = false;
    out += indent + " ";
    print_line(item, out);
  }
  out += "\n" + indent + "]";
}

}  // namespace ohmtrail::netlist
