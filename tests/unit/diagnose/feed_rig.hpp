#pragma once
#include <string>

#include "ohmtrail/netlist/read.hpp"
#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::test {

/// One more reading between two points of `feed_survey`, as the netlist writes it.
inline std::string read_between(const std::string& red, const std::string& black, double volts) {
  return R"(, {"case": "all-on", "red": ")" + red + R"(", "black": ")" + black + R"(", "volts": )" +
         std::to_string(volts) + "}";
}

/// 100 A from a known battery through two cables, "feed" and "back", which is sound; current, battery and
/// "back" are read.
inline netlist::System feed_survey(const std::string& more_readings) {
  return netlist::read(R"({
    "ohmtrail": 1, "system": {"name": "invented", "nominal": 12},
    "batteries": [{"id": "B", "plus": "b+", "minus": "b-", "nominal": 12, "emf": 12.7, "resistance": "5 mohm"}],
    "runs": [{"id": "feed", "from": "b+", "to": "l+", "gauge": "35 mm2", "length": "2 m"},
             {"id": "back", "from": "l-", "to": "b-", "gauge": "35 mm2", "length": "2 m"}],
    "loads": [{"id": "L", "plus": "l+", "minus": "l-", "takes": "100 A"}],
    "readings": [{"case": "all-on", "amps": 100, "in": "back"},
                 {"case": "all-on", "volts": 12.2, "red": "b+", "black": "b-"},
                 {"case": "all-on", "volts": 0.105, "red": "l-", "black": "b-"})" +
                       more_readings + "]}")
      .value()
      .system;
}

}  // namespace ohmtrail::test
