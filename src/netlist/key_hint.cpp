#include "netlist/key_hint.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <string>
#include <utility>

namespace ohmtrail::netlist {

namespace {

// What people write for a key, in small letters; the first that the object knows is offered.
constexpr std::array<std::pair<std::string_view, std::string_view>, 46> synonyms{{
    {"positive", "plus"},    {"pos", "plus"},
    {"+", "plus"},           {"negative", "minus"},
    {"neg", "minus"},        {"-", "minus"},
    {"size", "gauge"},       {"awg", "gauge"},
    {"wire", "gauge"},       {"name", "id"},
    {"id", "name"},          {"label", "id"},
    {"voltage", "nominal"},  {"voltage", "volts"},
    {"voltage", "setpoint"}, {"type", "kind"},
    {"type", "chemistry"},   {"start", "from"},
    {"a", "from"},           {"source", "from"},
    {"end", "to"},           {"b", "to"},
    {"destination", "to"},   {"power", "takes"},
    {"watts", "takes"},      {"current", "takes"},
    {"current", "amps"},     {"amps", "rating"},
    {"amps", "takes"},       {"ah", "capacity"},
    {"r", "resistance"},     {"ohms", "resistance"},
    {"esr", "resistance"},   {"voc", "emf"},
    {"ocv", "emf"},          {"specific_gravity", "sg"},
    {"gravity", "sg"},       {"comment", "note"},
    {"notes", "note"},       {"remark", "note"},
    {"//", "note"},          {"positive_probe", "red"},
    {"element", "in"},       {"observed", "seen"},
    {"reads", "volts"},      {"value", "volts"},
}};

}  // namespace

std::string_view key_synonym(std::string_view met, const std::vector<std::string_view>& known) {
  std::string lower(met);
  std::transform(lower.begin(), lower.end(), lower.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  for (const auto& [other, key] : synonyms) {
    const auto found = std::find(known.begin(), known.end(), key);
    if (other == lower && found != known.end()) return *found;
  }
  return {};
}

}  // namespace ohmtrail::netlist
