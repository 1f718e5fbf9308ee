#include "netlist/quantity_hint.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <vector>

#include "ohmtrail/trade/gauge.hpp"

namespace ohmtrail::netlist {

namespace {

std::string replaced(std::string_view text, std::string_view what, std::string_view by) {
  std::string result(text);
  if (const auto at = result.find(what); at != std::string::npos) result.replace(at, what.size(), by);
  return result;
}

std::string lower(std::string_view text) {
  std::string result(text);
  std::transform(result.begin(), result.end(), result.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return result;
}

std::string_view usual_unit(units::Kind kind) {
  switch (kind) {
    case units::Kind::voltage:
      return "V";
    case units::Kind::current:
      return "A";
    case units::Kind::resistance:
      return "ohm";
    case units::Kind::power:
      return "W";
    case units::Kind::charge:
      return "Ah";
    case units::Kind::length:
      return "ft";
    case units::Kind::time:
      return "s";
    case units::Kind::temperature:
      return "C";
    case units::Kind::fraction:
      return "%";
    default:
      return "";
  }
}

/// Spellings that turn up on paper and meters, and what this format reads.
std::vector<std::string> respelled(std::string_view text, units::Kind kind) {
  std::string unquoted = replaced(replaced(text, "\"", " in"), "''", " in");
  return {replaced(text, ",", "."),
          lower(text),
          fmt::format("{} {}", text, usual_unit(kind)),
          fmt::format("{} {}", replaced(text, ",", "."), usual_unit(kind)),
          replaced(replaced(text, "R", "."), "r", ".") + " ohm",
          replaced(lower(text), "milliohm", "mohm"),
          replaced(lower(text), "milliohms", "mohm"),
          replaced(lower(text), "mr", "mohm"),
          replaced(lower(text), "vdc", "V"),
          replaced(lower(text), "v dc", "V"),
          replaced(lower(text), "volts", "V"),
          replaced(lower(text), "millivolts", "mV"),
          replaced(replaced(text, "degrees ", "°"), "degree ", "°"),
          replaced(text, "deg ", "°"),
          replaced(text, "'", " ft"),
          std::move(unquoted),
          replaced(text, "O", "0"),
          replaced(text, "~", ""),
          replaced(text, "about ", ""),
          replaced(text, "AH", "Ah"),
          replaced(text, "ah", "Ah")};
}

}  // namespace

std::string quantity_hint(std::string_view text, units::Kind kind) {
  constexpr std::size_t longest = 40;
  if (text.size() > longest) return "";
  for (const std::string& guess : respelled(text, kind)) {
    if (guess != text && units::parse_si(guess, kind)) return fmt::format("write \"{}\"", guess);
  }
  return "";
}

std::string gauge_hint(std::string_view text) {
  std::string size(text);
  const std::string low = lower(text);
  for (const std::string_view system : {"awg", "sae", "mm2", "mm²"}) {
    const auto at = low.find(system);
    if (at == std::string::npos) continue;
    size.erase(at, system.size());
    const auto first = size.find_first_not_of(" #");
    const auto last = size.find_last_not_of(' ');
    if (first == std::string::npos) return "";
    const std::string guess = fmt::format("{} {}", replaced(size.substr(first, last - first + 1), ",", "."),
                                          system == "awg"   ? "AWG"
                                          : system == "sae" ? "SAE"
                                                            : "mm2");
    if (guess != text && trade::parse_gauge(guess)) return fmt::format("write \"{}\"", guess);
  }
  return "";
}

}  // namespace ohmtrail::netlist
