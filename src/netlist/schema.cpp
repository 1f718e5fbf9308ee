#include "ohmtrail/netlist/schema.hpp"

#include <fmt/format.h>

#include <vector>

#include "netlist/sections.hpp"
#include "units/unit_words.hpp"

namespace ohmtrail::netlist {

namespace {

constexpr std::string_view number_pattern = R"(\s*[+-]?([0-9]+\.?[0-9]*|\.[0-9]+)([eE][+-]?[0-9]+)?)";

std::string words_pattern(units::Kind kind) {
  std::string words;
  for (const units::UnitWord& unit : units::words_of(kind).words)
    words += (words.empty() ? "" : "|") + std::string(unit.word);
  return words;
}

/// A bare number, or a string with one of the kind's units.
Json quantity(units::Kind kind, std::string_view bare) {
  const std::string pattern = fmt::format("^{}[\\s\u00a0]*({})\\s*$", number_pattern, words_pattern(kind));
  return {{"description",
           fmt::format("a number in {}, or a string with its unit: {}", bare, units::accepted_units(kind))},
          {"anyOf", Json::array({Json{{"type", "number"}}, Json{{"type", "string"}, {"pattern", pattern}}})}};
}

Json quantities() {
  using units::Kind;
  return {{"voltage", quantity(Kind::voltage, "V")},
          {"current", quantity(Kind::current, "A")},
          {"resistance", quantity(Kind::resistance, "ohm")},
          {"power", quantity(Kind::power, "W")},
          {"charge", quantity(Kind::charge, "Ah")},
          {"length", quantity(Kind::length, "m")},
          {"time", quantity(Kind::time, "s")},
          {"hours", quantity(Kind::time, "hours")},
          {"minutes", quantity(Kind::time, "minutes")},
          {"temperature", quantity(Kind::temperature, "°C")},
          {"temperature_difference", quantity(Kind::temperature_difference, "K")},
          {"percent", quantity(Kind::fraction, "percent")}};
}

Json takes() {
  using units::Kind;
  const std::string words = fmt::format("{}|{}|{}", words_pattern(Kind::power), words_pattern(Kind::current),
                                        words_pattern(Kind::resistance));
  return {{"description", "\"1000 W\" constant power, \"8 A\" constant current, \"1.2 ohm\" resistance"},
          {"type", "string"},
          {"pattern", fmt::format("^{}[\\s\u00a0]*({})\\s*$", number_pattern, words)}};
}

Json definitions() {
  Json all = quantities();
  all["temperature"]["anyOf"][0]["minimum"] = -273.15;
  all["takes"] = takes();
  all["gauge"] = {{"description", "\"2/0 AWG\", \"2 SAE\", \"35 mm2\""},
                  {"type", "string"},
                  {"pattern", R"(^\s*[0-9.]+(/0)?\s*(\S.*)?$)"}};
  all["identifier"] = {{"description", "an id or the name of a point"},
                       {"type", "string"},
                       {"minLength", 1},
                       {"maxLength", 80},
                       {"pattern", R"(^[^/@\u0000-\u001f\u007f-\u009f]+$)"}};
  all["end"] = EndCodec::schema();
  return all;
}

Json source(std::string_view section) {
  return {{"required", Json::array({section})}, {"properties", {{std::string(section), {{"minItems", 1}}}}}};
}

/// What one sort of reading needs, and none of the keys of the others.
Json reading_of(const std::vector<const char*>& keys, const std::vector<const char*>& strangers) {
  Json others = Json::array();
  for (const char* key : strangers) others.push_back(Json{{"required", Json::array({key})}});
  return {{"required", keys}, {"not", {{"anyOf", others}}}};
}

Json any_reading() {
  return Json::array(
      {reading_of({"volts", "red", "black", "case"}, {"amps", "in", "ohms", "across", "temperature", "at"}),
       reading_of({"amps", "in", "case"}, {"volts", "red", "black", "ohms", "across", "temperature", "at"}),
       reading_of({"ohms", "across"}, {"volts", "red", "black", "amps", "in", "temperature", "at"}),
       reading_of({"temperature", "at", "case"}, {"volts", "red", "black", "amps", "in", "ohms", "across"})});
}

}  // namespace

std::string json_schema() {
  Json schema = {
      {"$schema", "https://json-schema.org/draft/2020-12/schema"},
      {"title", "Ohmtrail netlist, format 1"},
      {"description", "A DC system as a graph of resistances, with its cases and the readings taken on it."}};
  schema.update(Object<System>::schema());
  schema["anyOf"] = Json::array({source("batteries"), source("chargers")});
  schema["properties"]["readings"]["items"]["oneOf"] = any_reading();
  schema["$defs"] = definitions();
  return schema.dump(2) + "\n";
}

}  // namespace ohmtrail::netlist
