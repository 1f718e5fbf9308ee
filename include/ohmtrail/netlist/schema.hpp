#pragma once
#include <string>

namespace ohmtrail::netlist {

/// The JSON Schema (2020-12) of the netlist file, for editors. It says what each key may hold; what keys say
/// of each other (ids, points, cases) only `read` checks.
[[nodiscard]] std::string json_schema();

}  // namespace ohmtrail::netlist
