#include "netlist/load_checks.hpp"

#include <fmt/format.h>

#include "netlist/sections.hpp"
#include "ohmtrail/units/print.hpp"

/// What the keys of a load say of each other. What would be left out of the sum without a word is doubted.
namespace ohmtrail::netlist {

namespace {

void doubt(Reader& reader, Value value, Remark remark) {
  if (value.exists()) reader.problems.warning(value, std::move(remark));
}

void doubt_efficiency(Reader& reader, Value value, const Load& load) {
  if (std::holds_alternative<Power>(load.takes)) return;
  const Value efficiency = value.member("efficiency");
  const Value at = efficiency.exists() ? efficiency : value.member("idle");
  if (at.exists() && value.member("takes").exists()) doubt(reader, at, efficiency_unused(load.id));
}

void doubt_rest(Reader& reader, Value value, const Load& load) {
  if (load.on_for || !load.rest_for) return;
  doubt(reader, value.member("rest_for"),
        {"rest-without-turn", "rest_for alone says nothing: how long it runs is missing", "",
         "give on_for too, else it counts as running for ever"});
}

void doubt_restart(Reader& reader, Value value, const Load& load) {
  if (!load.restarts_above) return;
  const Value restart = value.member("restarts_above");
  if (!load.stops_below)
    doubt(reader, restart,
          {"restart-without-stop", "restarts_above without stops_below: it never stops", "",
           "give stops_below too"});
  else if (*load.restarts_above < *load.stops_below)
    doubt(reader, restart,
          {"restart-below-stop",
           fmt::format("it would start again at {}, below the {} at which it stops",
                       units::print(*load.restarts_above), units::print(*load.stops_below)),
           "", "are the two swapped?"});
}

}  // namespace

Remark efficiency_unused(std::string_view load) {
  return {
      "efficiency-unused",
      fmt::format("the efficiency and idle draw of \"{}\" are not used: amperes and ohms are what it draws",
                  shown(load)),
      "", "give what comes out in watts, or leave efficiency and idle out"};
}

void Check<Load>::run(Reader& reader, Value value, Load& load) {
  doubt_efficiency(reader, value, load);
  doubt_rest(reader, value, load);
  doubt_restart(reader, value, load);
}

}  // namespace ohmtrail::netlist
