#include "netlist/battery_checks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "ohmtrail/trade/battery_facts.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::netlist {

namespace {

using units::print;

void doubt(Reader& reader, Value value, std::string_view name, std::string text, std::string hint = {}) {
  if (value.exists()) reader.problems.warning(value, {name, std::move(text), "", std::move(hint)});
}

/// From a flat battery to one on charge (common practice: 10.5 to 14.8 V on 12 V, with room on both sides).
bool fits(Voltage volts, Voltage nominal) {
  const double ratio = units::ratio(volts, nominal);
  return ratio > 0.7 && ratio < 1.35;
}

void doubt_emf(Reader& reader, Value value, const Battery& battery) {
  if (!(battery.nominal.si() > 0)) return;
  if (battery.emf && !fits(*battery.emf, battery.nominal)) {
    doubt(reader, value.member("emf"), "unusual-emf",
          fmt::format("an open-circuit voltage of {} does not fit a battery of {}", print(*battery.emf),
                      print(battery.nominal)));
  }
  const auto& rest = battery.checks.rest;
  if (rest && rest->volts.si() > 0 && !fits(rest->volts, battery.nominal)) {
    doubt(reader, value.member("checks").member("rest").member("volts"), "unusual-rest-voltage",
          fmt::format("a rest voltage of {} does not fit a battery of {}", print(rest->volts),
                      print(battery.nominal)));
  }
}

/// A 12 V battery has about 2 to 20 mΩ; tenths of an ohm are a slip (common practice).
void doubt_resistance(Reader& reader, Value value, const Battery& battery) {
  if (!battery.resistance || !(battery.nominal.si() > 0)) return;
  const double per_12_volts = battery.resistance->si() * 12 / battery.nominal.si();
  constexpr double most = 0.3, least = 1e-4;
  if (per_12_volts >= least && per_12_volts <= most) return;
  const Value met = value.member("resistance");
  const bool bare = met.exists() && met.is(Kind::number) && per_12_volts > most;
  doubt(reader, met, "unusual-resistance",
        fmt::format("a resistance of {} is unusual for a battery of {}", print(*battery.resistance),
                    print(battery.nominal)),
        bare ? fmt::format("if milliohms are meant, write \"{} mohm\"", met.source()) : "");
}

void doubt_cells(Reader& reader, Value value, const Battery& battery) {
  const auto& cells = battery.checks.cells;
  const Value list = value.member("checks").member("cells");
  if (cells.empty() || !(battery.nominal.si() > 0) || !list.exists()) return;
  const auto expected = trade::cells_in(battery.chemistry, battery.nominal);
  if (static_cast<int>(cells.size()) != expected) {
    doubt(reader, list, "cell-count",
          fmt::format("{} cells are listed; a battery of {} has {}", cells.size(), print(battery.nominal),
                      expected),
          "list each cell once, in order; one not measured as {}");
  }
  Voltage sum;
  for (const CellCheck& cell : cells) sum += cell.volts.value_or(Voltage{});
  const bool all =
      std::all_of(cells.begin(), cells.end(), [](const CellCheck& c) { return c.volts.has_value(); });
  const auto& rest = battery.checks.rest;
  constexpr double allowed = 0.05;
  if (all && rest && std::abs(sum.si() - rest->volts.si()) > allowed * rest->volts.si()) {
    doubt(reader, list, "cells-against-rest",
          fmt::format("the cells add up to {}, the rest voltage is {}", print(sum), print(rest->volts)));
  }
}

void doubt_sealed(Reader& reader, Value value, const Battery& battery) {
  if (battery.chemistry == trade::Chemistry::flooded) return;
  for (const Value cell : value.member("checks").member("cells").children()) {
    doubt(reader, cell.member("sg"), "gravity-of-sealed",
          "a sealed battery has no electrolyte that a hydrometer could draw", "is the chemistry flooded?");
  }
}

void doubt_load_test(Reader& reader, Value value, const Battery& battery) {
  const auto& test = battery.checks.load_test;
  const auto& rest = battery.checks.rest;
  if (!test || test->before || !rest || !(test->volts > rest->volts)) return;
  doubt(reader, value.member("checks").member("load_test").member("volts"), "load-test-rises",
        fmt::format("{} under load is above the rest voltage of {}", print(test->volts), print(rest->volts)),
        "one of the two was taken with a charger on, or at another time: give \"before\"");
}

void doubt_leak(Reader& reader, Value value, const Battery& battery) {
  const auto& leak = battery.checks.top_leak;
  if (!leak || !(battery.nominal.si() > 0) || units::ratio(*leak, battery.nominal) < 1.35) return;
  doubt(reader, value.member("checks").member("top_leak"), "unusual-leak",
        fmt::format("{} over the case is more than the battery has", print(*leak)), "is it millivolts?");
}

}  // namespace

void check_battery(Reader& reader, Value value, const Battery& battery) {
  doubt_emf(reader, value, battery);
  doubt_resistance(reader, value, battery);
  doubt_cells(reader, value, battery);
  doubt_sealed(reader, value, battery);
  doubt_load_test(reader, value, battery);
  doubt_leak(reader, value, battery);
}

void Check<TesterCheck>::run(Reader& reader, Value value, TesterCheck&) {
  if (value.member("cca").exists() || value.member("ohms").exists()) return;
  reader.problems.missing(
      value, "cca",
      {"missing-key", "the tester's reading is missing", "cca or ohms, as the tester shows it", ""});
}

void Check<LoadTest>::run(Reader& reader, Value value, LoadTest& test) {
  const Value volts = value.member("volts");
  if (!test.before || !volts.exists() || test.volts < *test.before) return;
  if (test.volts == *test.before) {
    doubt(reader, volts, "load-test-flat", "the voltage did not fall under load",
          "was the load on, and the charger off?");
    return;
  }
  reader.problems.error(
      volts, {"load-test-rises",
              fmt::format("{} under load is above {} before it", print(test.volts), print(*test.before)),
              fmt::format("less than {}", print(*test.before)), "are the two swapped, or was a charger on?"});
}

void Check<CellCheck>::run(Reader& reader, Value value, CellCheck& cell) {
  const Value gravity = value.member("sg");
  if (!gravity.exists() || !cell.specific_gravity) return;
  constexpr double least = 1.0, most = 1.4;
  const double sg = *cell.specific_gravity;
  if (sg >= least && sg <= most) return;
  const bool thousandfold = sg >= 1000 * least && sg <= 1000 * most;
  reader.problems.error(
      gravity, {"impossible-gravity", fmt::format("a specific gravity of {} cannot be", shown(gravity)),
                "1.0 (water) to 1.4", thousandfold ? fmt::format("write {}", sg / 1000) : ""});
}

}  // namespace ohmtrail::netlist
