#pragma once
#include <string>

#include "netlist/key.hpp"

namespace ohmtrail::netlist {

/// A value on one line: `{"id": "M", "length": 2}`. Numbers are the shortest that read back to the same
/// double.
void print_line(const Json& value, std::string& out);

/// Lists of objects one item a line, `indent` deep; everything else on one line.
void print_section(const Json& value, const std::string& indent, std::string& out);

}  // namespace ohmtrail::netlist
