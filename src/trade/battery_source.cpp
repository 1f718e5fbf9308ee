#include "ohmtrail/trade/battery_source.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "ohmtrail/trade/battery_charge.hpp"
#include "ohmtrail/trade/battery_limits.hpp"
#include "ohmtrail/trade/battery_resistance.hpp"

namespace ohmtrail::trade {
namespace {

using units::Charge;
using units::Fraction;
using units::Resistance;
using units::Temperature;
using units::Time;
using units::Voltage;

constexpr double hour = 3600;
constexpr Charge assumed_capacity{100 * hour};

void note(BatterySource& source, std::string name, std::string text) {
  source.notes.push_back({std::move(name), std::move(text)});
}

Temperature rest_temperature(const BatteryFacts& facts) {
  return facts.rest && facts.rest->temperature ? *facts.rest->temperature : temperature_of(facts);
}

Voltage per_cell(const BatteryFacts& facts, Voltage whole) {
  return whole / cells_in(facts.chemistry, facts.nominal);
}

bool rested_enough(const BatteryFacts& facts) {
  return facts.rest && !facts.rest->charging &&
         (!facts.rest->rested || *facts.rest->rested >= rest_needed(facts.chemistry));
}

bool above_any_rest(const BatteryFacts& facts) {
  return facts.chemistry != Chemistry::lfp && per_cell(facts, facts.rest->volts) > most_at_any_rest;
}

/// Nothing rests so high: a source was on. What a full battery rests at is the most that can stand behind it.
void hold_at_full(BatterySource& source, const BatteryFacts& facts) {
  source.open_circuit = most_at_rest(facts.chemistry) * cells_in(facts.chemistry, facts.nominal);
  source.open_circuit_from = "rest voltage above what any such battery rests at, held at a full one's";
  source.charge_from = source.open_circuit_from;
  note(source, "not-at-rest",
       fmt::format("{:.2f} V is more than a {:.3g} V battery rests at: {:.2f} V is used",
                   facts.rest->volts.si(), facts.nominal.si(), source.open_circuit.si()));
}

void take_rest(BatterySource& source, const BatteryFacts& facts) {
  source.open_circuit = facts.rest->volts;
  source.charge = *charge_from_rest(facts);
  if (facts.rest->rested) {
    source.open_circuit_from = fmt::format("rest voltage after {:.3g} h", facts.rest->rested->si() / hour);
  } else {
    source.open_circuit_from = "rest voltage (hours of rest not given, taken as long enough)";
    note(source, "rest-time-unknown",
         "the hours of rest are not given; the rest voltage is taken as a true one");
  }
  source.charge_from = source.open_circuit_from;
  if (above_any_rest(facts)) hold_at_full(source, facts);
}

/// Surface charge leaves within seconds of a load: no more than a full battery rests at is counted.
void take_early_rest(BatterySource& source, const BatteryFacts& facts) {
  const auto most = most_at_rest(facts.chemistry) * cells_in(facts.chemistry, facts.nominal);
  source.open_circuit = std::min(facts.rest->volts, most);
  source.charge = *charge_from_rest(facts);
  source.open_circuit_from = fmt::format("rest voltage after only {:.3g} h, may hold surface charge",
                                         facts.rest->rested->si() / hour);
  source.charge_from = source.open_circuit_from;
}

void note_early_rest(BatterySource& source, const BatteryFacts& facts) {
  note(source, "surface-charge",
       fmt::format("rested {:.3g} h, needs {:.0f} h: {:.2f} V may be surface charge",
                   facts.rest->rested->si() / hour, rest_needed(facts.chemistry).si() / hour,
                   facts.rest->volts.si()));
}

void take_gravity(BatterySource& source, const BatteryFacts& facts, double gravity) {
  const int cells = cells_in(facts.chemistry, facts.nominal);
  source.open_circuit = (cell_volts_at_gravity(gravity) + rest_voltage_shift(temperature_of(facts))) * cells;
  source.open_circuit_from = fmt::format("mean specific gravity {:.3f} at 26.7 °C", gravity);
  source.charge = charge_at_gravity(gravity);
  source.charge_from = source.open_circuit_from;
}

void take_charge(BatterySource& source, const BatteryFacts& facts) {
  source.charge = facts.state_of_charge.value_or(Fraction{1});
  source.charge_from = facts.state_of_charge ? "given" : "not given, taken as 100 %";
  source.open_circuit = rested_cell(facts.chemistry, source.charge, temperature_of(facts)) *
                        cells_in(facts.chemistry, facts.nominal);
  source.open_circuit_from =
      fmt::format("state of charge {:.0f} % ({}) by chemistry", source.charge.percent(), source.charge_from);
}

/// Charge beside a given emf: what was measured of it, else what the emf itself says.
void charge_beside_emf(BatterySource& source, const BatteryFacts& facts) {
  if (facts.state_of_charge) {
    source.charge = *facts.state_of_charge;
    source.charge_from = "given";
  } else {
    source.charge =
        charge_at_rest(facts.chemistry, per_cell(facts, source.open_circuit), temperature_of(facts));
    source.charge_from = "the given emf, by chemistry";
  }
}

void find_open_circuit(BatterySource& source, const BatteryFacts& facts) {
  const auto gravity = mean_gravity(facts);
  const bool early = facts.rest && !facts.rest->charging && !rested_enough(facts);
  if (rested_enough(facts)) {
    take_rest(source, facts);
  } else if (gravity) {
    take_gravity(source, facts, *gravity);
  } else if (early && !facts.state_of_charge) {
    take_early_rest(source, facts);
  } else {
    take_charge(source, facts);
  }
  if (early) note_early_rest(source, facts);
  if (!facts.emf) return;
  const bool measured = rested_enough(facts) || gravity;
  source.open_circuit = *facts.emf;
  source.open_circuit_from = "given";
  if (!measured) charge_beside_emf(source, facts);
}

bool take_load_test(BatterySource& source, const BatteryFacts& facts) {
  const auto& test = *facts.load_test;
  if (test.charging) {
    note(source, "charger-on", "the load test was taken with a charger on and is not used");
    return false;
  }
  const auto before = test.before.value_or(source.open_circuit);
  if (test.amps.si() <= 0 || test.volts >= before) {
    note(source, "impossible-load-test",
         fmt::format("{:.2f} V under {:.0f} A is not below {:.2f} V before: the load test is not used",
                     test.volts.si(), test.amps.si(), before.si()));
    return false;
  }
  source.resistance = (before - test.volts) / test.amps;
  source.resistance_from = fmt::format("load test at the posts, {:.2f} V to {:.2f} V at {:.0f} A",
                                       before.si(), test.volts.si(), test.amps.si());
  return true;
}

bool take_tester(BatterySource& source, const BatteryFacts& facts) {
  const auto& tester = *facts.tester;
  if (tester.cca && tester.cca->si() > 0) {
    source.resistance = resistance_of_cca(*tester.cca, facts.nominal);
    source.resistance_from =
        fmt::format("conductance tester's {:.0f} CCA (3/CCA Ω for 12 V, common practice)", tester.cca->si());
    return true;
  }
  if (!tester.resistance) return false;
  source.resistance = *tester.resistance * seconds_over_tester;
  source.resistance_from = fmt::format("conductance tester's {:.2f} mΩ times {} for seconds of load",
                                       tester.resistance->si() * 1000, seconds_over_tester);
  return true;
}

void take_label(BatterySource& source, const BatteryFacts& facts) {
  if (source.sound_resistance) {
    source.resistance = *source.sound_resistance;
    source.resistance_from = source.sound_resistance_from;
    return;
  }
  auto assumed = facts;
  assumed.capacity = assumed_capacity;
  source.resistance = sound_resistance(assumed, temperature_of(facts), source.charge)->value;
  source.resistance_from = "neither CCA nor capacity given: as of a typical 100 Ah battery of its chemistry";
  note(source, "size-unknown", source.resistance_from);
}

void find_resistance(BatterySource& source, const BatteryFacts& facts) {
  if (auto sound = sound_resistance(facts, temperature_of(facts), source.charge)) {
    source.sound_resistance = sound->value;
    source.sound_resistance_from = std::move(sound->from);
  }
  source.resistance_measured = true;
  if (facts.resistance) {
    source.resistance = *facts.resistance;
    source.resistance_from = "given";
    return;
  }
  if (facts.load_test && take_load_test(source, facts)) return;
  if (facts.tester && take_tester(source, facts)) return;
  source.resistance_measured = false;
  take_label(source, facts);
}

}  // namespace

Time rest_needed(Chemistry chemistry) {
  return Time{(chemistry == Chemistry::flooded ? 6 : 3) * hour};
}

std::optional<Fraction> charge_from_rest(const BatteryFacts& facts) {
  if (!facts.rest || facts.rest->charging) return std::nullopt;
  return charge_at_rest(facts.chemistry, per_cell(facts, facts.rest->volts), rest_temperature(facts));
}

Temperature cell_temperature(const BatteryFacts& facts, const CellFact& cell) {
  return cell.temperature.value_or(temperature_of(facts));
}

std::optional<double> mean_gravity(const BatteryFacts& facts) {
  double sum = 0;
  int count = 0;
  for (const auto& cell : facts.cells) {
    if (!cell.specific_gravity || *cell.specific_gravity < gravity_least_possible ||
        *cell.specific_gravity > gravity_most_possible)
      continue;
    sum += gravity_at_reference(*cell.specific_gravity, cell_temperature(facts, cell));
    ++count;
  }
  return count > 0 ? std::optional{sum / count} : std::nullopt;
}

BatterySource estimate_source(const BatteryFacts& facts) {
  BatterySource source;
  if (facts.rest && facts.rest->charging)
    note(source, "charger-on", "the rest voltage was taken with a charger on and is not used");
  find_open_circuit(source, facts);
  find_resistance(source, facts);
  return source;
}

}  // namespace ohmtrail::trade
