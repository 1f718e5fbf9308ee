#pragma once
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace ohmtrail::test {

inline std::string repeated(const std::string& text, int times) {
  std::string all;
  for (int i = 0; i < times; ++i) all += text;
  return all;
}

/// Names that the reader takes (at most 80 characters, no controls, no `/`, no `@`) and that somebody might
/// take for something else than a name.
inline std::vector<std::string> hostile_names() {
  return {
      // markup
      "<script>alert(1)<\\script>",
      "\"><img src=x onerror=alert(1)>",
      "<b onclick='x'>bold",
      "&amp;&lt;&#0;",
      "<!--",
      "-->",
      "]]>",
      "<![CDATA[",
      "<?xml version=\"1.0\"?>",
      "%PDF-1.7 (x) Tj",
      "' onload='alert(1)",
      // spreadsheets
      "=HYPERLINK(\"http:x\",\"y\")",
      "=1+1",
      "+1+cmd|' C calc'!A0",
      "-2+3",
      " =1+1",
      "\u00A0=1+1",
      "\uFEFF=1+1",
      "\u200B=1+1",
      "＝1+1",
      "＋1＋1",
      "－1",
      "=1,+2,\"-3\"",
      "a;=1+1",
      "'=1",
      "\"",
      // shells, formats, paths
      "$(reboot)",
      "`id`",
      "; rm -rf ~",
      "%s%n%x",
      "..\\..\\etc",
      "..",
      "~",
      "-rf",
      "--help",
      "{}{0}",
      "\\u001b[31m",
      "\\x1b[2J",
      "[31mred[0m",
      // what JSON and programs take for values
      "null",
      "true",
      "NaN",
      "-0",
      "1e999",
      "12 V",
      // direction, width, marks, what cannot be seen
      "\u202Egnp.exe",
      "\u2066a\u2069",
      "שלום",
      "مرحبا",
      "\u200Fx",
      "\u061Cx",
      repeated("船", 80),
      repeated("\U0001F6A4", 80),
      repeated("W", 80),
      repeated("ﷺ", 80),
      "e" + repeated("\u0301", 79),
      "\u200D\u200C",

      "\u00ADsoft",
      "\uE000",
      "\uFFFE",
      "\U000E0001tag",
      " ",
      "\u3000",
      "\u3164",
      "ẞßıİ",
      "\U0010FFFF",
  };
}

enum class HostileAs { load, run, point, part };

/// The hostile names that one sort of thing bears: all of them; where few cases are tried each sort bears
/// every fourth, so that between them all four still bear every name.
inline std::vector<std::string> names_borne_by([[maybe_unused]] HostileAs as) {
#ifdef OHMTRAIL_FEW_CASES
  std::vector<std::string> borne;
  const auto names = hostile_names();
  for (auto i = static_cast<std::size_t>(as); i < names.size(); i += 4) borne.push_back(names[i]);
  return borne;
#else
  return hostile_names();
#endif
}

/// What stands between a run and its load: one of every section that joins two points, and its keys.
inline nlohmann::ordered_json hostile_part(std::size_t i, std::string& section) {
  using Json = nlohmann::ordered_json;
  static const std::vector<std::pair<std::string, Json>> parts{
      {"joints", {{"kind", "stud"}}},
      {"switches", {{"kind", "toggle"}}},
      {"fuses", {{"rating", "20 A"}, {"form", "blade"}}},
      {"shunts", {{"rating", "50 A"}, {"drop", "50 mV"}}},
      {"isolators", {{"rating", "20 A"}}}};
  section = parts[i % parts.size()].first;
  return parts[i % parts.size()].second;
}

/// A run, a part and a load in series from one battery's plus to its minus, each with its name.
inline void add_hostile_feed(nlohmann::ordered_json& netlist, std::size_t i, const std::string& name,
                             HostileAs as) {
  const auto named = [&](HostileAs what, const char* otherwise) {
    return what == as ? name : otherwise + std::to_string(i);
  };
  const std::string point = named(HostileAs::point, "point "), between = "between " + std::to_string(i);
  netlist["runs"].push_back({{"id", named(HostileAs::run, "run ")},
                             {"from", "b+"},
                             {"to", as == HostileAs::part ? between : point},
                             {"gauge", "14 AWG"},
                             {"length", "12 ft"},
                             {"resistance", "0.2 ohm"},
                             {"note", name}});
  netlist["loads"].push_back(
      {{"id", named(HostileAs::load, "load ")}, {"plus", point}, {"minus", "b-"}, {"takes", "1 A"}});
  netlist["points"][point] = {{"place", name}};
  if (as != HostileAs::part) return;
  std::string section;
  nlohmann::ordered_json part = hostile_part(i, section);
  part.update({{"id", name}, {"from", between}, {"to", point}});
  netlist[section].push_back(part);
}

/// A 12 V system in which one sort of thing bears the hostile names, as do its cases, its meters and its
/// job.
inline std::string hostile_netlist(HostileAs as) {
  const auto names = hostile_names();
  nlohmann::ordered_json netlist = {{"ohmtrail", 1}};
  netlist["system"] = {
      {"name", names[1]},
      {"nominal", "12 V"},
      {"job",
       {{"customer", names[0]}, {"technician", names[49]}, {"date", names[2]}, {"reference", names[11]}}}};
  netlist["batteries"] = nlohmann::ordered_json::array(
      {{{"id", "house"}, {"plus", "b+"}, {"minus", "b-"}, {"nominal", "12 V"}, {"capacity", "400 Ah"}}});
  const auto borne = names_borne_by(as);
  for (std::size_t i = 0; i < borne.size(); ++i) add_hostile_feed(netlist, i, borne[i], as);
  for (std::size_t i = 0; i < names.size(); i += 24)
    netlist["cases"].push_back({{"name", names[i]}, {"on", "all"}});
  for (std::size_t i = 0; i < names.size(); i += 8) {
    netlist["meters"].push_back({{"id", names[i]}, {"volts", {{"percent", 1}}}});
    netlist["readings"].push_back({{"volts", 12.0},
                                   {"red", netlist["loads"][i % borne.size()]["plus"]},
                                   {"black", "b-"},
                                   {"case", names[0]},
                                   {"meter", names[i]}});
  }
  return netlist.dump();
}

}  // namespace ohmtrail::test
