#pragma once
#include <string>

namespace ohmtrail::bench {

/// A tree of cables with returns as a person would write it down, about ten elements a cable. Invented.
inline std::string large_netlist(int cables) {
  std::string text =
      "{\n  \"ohmtrail\": 1,\n  \"system\": {\"name\": \"tree (invented)\", \"nominal\": \"12 V\"},\n"
      "  \"batteries\": [{\"id\": \"bank\", \"plus\": \"p0\", \"minus\": \"m0\", \"nominal\": \"12 V\", "
      "\"capacity\": \"400 Ah\"}],\n  \"runs\": [\n";
  std::string fuses, loads;
  for (int k = 1; k <= cables; ++k) {
    const std::string me = std::to_string(k), from = std::to_string(k / 3);
    const std::string comma = k == cables ? "" : ",";
    text += "    {\"id\": \"cable " + me + "\", \"from\": \"f" + me + "\", \"to\": \"p" + me +
            "\", \"gauge\": \"4/0 AWG\", \"length\": \"0.6 m\", \"return\": {\"from\": \"m" + me +
            "\", \"to\": \"m" + from + "\"}}" + comma + "\n";
    fuses += "    {\"id\": \"fuse " + me + "\", \"from\": \"p" + from + "\", \"to\": \"f" + me +
             "\", \"rating\": \"40 A\", \"form\": \"blade\"}" + comma + "\n";
    loads += "    {\"id\": \"load " + me + "\", \"plus\": \"p" + me + "\", \"minus\": \"m" + me +
             "\", \"takes\": \"" + std::to_string(300.0 / cables) + " A\"}" + comma + "\n";
  }
  return text + "  ],\n  \"fuses\": [\n" + fuses + "  ],\n  \"loads\": [\n" + loads +
         "  ],\n  \"cases\": [{\"name\": \"all on\", \"on\": \"all\"}]\n}\n";
}

}  // namespace ohmtrail::bench
