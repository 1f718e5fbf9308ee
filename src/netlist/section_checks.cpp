#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "netlist/battery_checks.hpp"
#include "netlist/sections.hpp"
#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/units/print.hpp"

/// What a section checks by itself: unusual values, and what keys say of each other.
namespace ohmtrail::netlist {

namespace {

constexpr std::array usual_nominals = {2.0,  3.2,  4.0,  6.0,  6.4,  8.0,  10.0, 12.0,
                                       12.8, 24.0, 25.6, 32.0, 36.0, 38.4, 48.0, 51.2};

/// A good contact has micro-ohms to a milliohm, so a tenth of an ohm is a slip of a factor of a thousand more
/// often than the truth; a burnt one can reach it, so what was found is doubted only from one ohm (common
/// practice).
constexpr double unusual_sound_contact = 0.1;
constexpr double unusual_found = 1;
constexpr double unusual_sound_wire = 5;
/// A wire that is worse than its table by more is broken, or its milliohms were written as ohms; below the
/// floor no slip of a thousand is told from a thin wire.
constexpr double unusual_over_table = 300, unusual_wire_floor = 0.3;

void doubt_resistance(Reader& reader, Value owner, std::string_view key, const std::optional<Resistance>& r,
                      double limit) {
  if (!r || r->si() < limit) return;
  const Value value = owner.member(key);
  if (!value.exists()) return;
  reader.problems.warning(
      value,
      {"unusual-resistance", fmt::format("{} is {}, a great deal here", key, units::print(*r)), "",
       value.is(Kind::number) ? fmt::format("if milliohms are meant, write \"{} mohm\"", value.source())
                              : "if milliohms are meant, write mohm"});
}

void doubt_contact(Reader& reader, Value value, const Resistances& r) {
  doubt_resistance(reader, value, "sound", r.sound, unusual_sound_contact);
  doubt_resistance(reader, value, "resistance", r.as_found, unusual_found);
}

void doubt_wire(Reader& reader, Value value, const Run& run, const Resistances& r) {
  if ((!r.sound && !r.as_found) || !(run.gauge.area.si() > 0)) return;
  const double table = trade::wire_resistance_at_20C(run.gauge, run.length, run.conductor).si();
  const double limit = std::clamp(unusual_over_table * table, unusual_wire_floor, unusual_sound_wire);
  doubt_resistance(reader, value, "sound", r.sound, limit);
  doubt_resistance(reader, value, "resistance", r.as_found, limit);
}

void doubt_nominal(Reader& reader, Value owner, Voltage nominal) {
  const Value value = owner.member("nominal");
  const bool usual = std::any_of(usual_nominals.begin(), usual_nominals.end(),
                                 [&](double v) { return std::abs(v - nominal.si()) < 1e-6; });
  if (usual || !value.exists() || !(nominal.si() > 0)) return;
  reader.problems.warning(
      value, {"unusual-nominal", fmt::format("a nominal voltage of {} is unusual", units::print(nominal)), "",
              "usual are 6, 12, 24, 36 and 48 V"});
}

/// What a return leaves out it takes over from its run: kind and sound value of the ends, sound value of the
/// wire.
void inherit(Value ends, const Run& run, ReturnConductor& back) {
  const auto as_new = [](const RunEnd& end) {
    RunEnd inherited;
    inherited.kind = end.kind;
    inherited.resistances.sound = end.resistances.sound;
    return inherited;
  };
  const bool both = ends.exists() && ends.is(Kind::string);
  if (!both && !ends.member("from").exists()) back.end_from = as_new(run.end_from);
  if (!both && !ends.member("to").exists()) back.end_to = as_new(run.end_to);
  if (!back.wire.sound) back.wire.sound = run.wire.sound;
}

}  // namespace

void Check<System>::run(Reader& reader, Value value, System&) {
  const auto empty = [&](std::string_view section) {
    const Value list = value.member(section);
    return !list.exists() || (list.is(Kind::array) && list.count() == 0);
  };
  if (!empty("batteries") || !empty("chargers")) return;
  reader.problems.missing(
      value, "batteries",
      {"no-source", "there is neither a battery nor a charger", "at least one of them", ""});
}

void Check<SystemInfo>::run(Reader& reader, Value value, SystemInfo& info) {
  doubt_nominal(reader, value, info.nominal);
}

void Check<Battery>::run(Reader& reader, Value value, Battery& battery) {
  doubt_nominal(reader, value, battery.nominal);
  check_battery(reader, value, battery);
}

void Check<Run>::run(Reader& reader, Value value, Run& run) {
  doubt_wire(reader, value, run, run.wire);
  if (run.return_conductor) doubt_wire(reader, value.member("return"), run, run.return_conductor->wire);
  constexpr double unusual_length = 100;
  if (run.length.si() > unusual_length) {
    reader.problems.warning(
        value.member("length"),
        {"unusual-length", fmt::format("a run of {} is unusual", units::print(run.length)), "",
         "a bare number is metres; with a unit: \"6 ft\", \"4 in\""});
  }
  if (run.return_conductor) inherit(value.member("return").member("ends"), run, *run.return_conductor);
}

void Check<RunEnd>::run(Reader& reader, Value value, RunEnd& end) {
  doubt_contact(reader, value, end.resistances);
  end.opened = end.crimp.has_value();
}
void Check<Joint>::run(Reader& reader, Value value, Joint& joint) {
  doubt_contact(reader, value, joint.resistances);
}
void Check<Switch>::run(Reader& reader, Value value, Switch& s) {
  doubt_contact(reader, value, s.resistances);
}
void Check<Fuse>::run(Reader& reader, Value value, Fuse& fuse) {
  doubt_contact(reader, value, fuse.resistances);
}

}  // namespace ohmtrail::netlist
