#pragma once
#include <rapidcheck.h>

#include <cmath>

#include "netlist/words.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/trade/gauge.hpp"

/// Systems of every shape that the format can hold, valid by construction.
namespace ohmtrail::netlist::test {

class RandomSystem {
 public:
  static System make() { return RandomSystem().whole(); }

 private:
  static bool toss() { return *rc::gen::arbitrary<bool>(); }
  static int upto(int most) { return *rc::gen::inRange(0, most + 1); }
  /// Over many orders of magnitude, with all digits of a double in use.
  static double positive() { return std::exp2(*rc::gen::inRange(-30, 12)) * (1 + upto(1 << 30) / 3e9); }
  /// As a file gives it.
  static Fraction percent(double number) { return Fraction{number / 100}; }
  static double shared() { return upto(1000) / 1000.0; }

  template <class Q>
  static std::optional<Q> perhaps() {
    return toss() ? std::optional<Q>(Q{positive()}) : std::nullopt;
  }
  static std::optional<Temperature> perhaps_temperature() {
    return toss() ? std::optional<Temperature>(Temperature{upto(100) - 40 + shared()}) : std::nullopt;
  }
  template <class E>
  static E any_word() {
    const auto known = words<E>();
    return known[static_cast<std::size_t>(upto(static_cast<int>(known.size()) - 1))].second;
  }
  static std::string free_text() {
    static const std::vector<std::string> texts = {
        "", "bow", "µΩ \"quoted\"", "back\\slash", "line\nbreak", "漢字", "<b>&"};
    return texts[static_cast<std::size_t>(upto(6))];
  }

  static Resistances resistances() {
    Resistances r{perhaps<Resistance>(), perhaps<Resistance>(), {}};
    for (int i = upto(2); i > 0; --i) r.seen.push_back(any_word<trade::Observation>());
    return r;
  }
  static RunEnd run_end() {
    RunEnd end;
    end.kind = any_word<trade::TerminationKind>();
    end.resistances = resistances();
    end.note = free_text();
    if (upto(4) == 0) end.crimp = resistances();
    return end;
  }

  /// A point that is named at least twice: by what asks for it, and by a stub list.
  std::string point() {
    const std::string name = "p" + std::to_string(upto(9)) + (toss() ? "" : " é~");
    system_.stubs.push_back(name);
    return name;
  }
  std::pair<std::string, std::string> points() {
    const std::string a = point();
    std::string b = point();
    while (a == b) b += "'", system_.stubs.push_back(b);
    return {a, b};
  }
  std::string id(const char* stem) { return stem + std::to_string(next_++) + (toss() ? "" : " \"x\""); }

  template <class T>
  void place(T& item, const char* stem) {
    item.id = id(stem);
    std::tie(item.from, item.to) = points();
    item.note = free_text();
  }

  Battery battery() {
    Battery b;
    b.id = id("battery ");
    std::tie(b.plus, b.minus) = points();
    b.nominal = Voltage{positive()};
    b.chemistry = any_word<trade::Chemistry>();
    b.capacity = perhaps<Charge>();
    b.cca = perhaps<Current>();
    if (toss()) b.state_of_charge = percent(upto(1000) / 10.0);
    b.emf = perhaps<Voltage>();
    b.resistance = perhaps<Resistance>();
    b.made = free_text();
    b.checks = checks();
    b.note = free_text();
    return b;
  }

  static BatteryChecks checks() {
    BatteryChecks c;
    if (toss()) c.rest = RestCheck{Voltage{positive()}, perhaps<Time>(), perhaps_temperature(), toss()};
    if (toss()) {
      const Voltage before{positive()};
      c.load_test = LoadTest{before,          Current{positive()},   before * shared(),
                             perhaps<Time>(), perhaps_temperature(), toss()};
    }
    if (toss()) c.tester = TesterCheck{Current{positive()}, perhaps<Resistance>(), perhaps_temperature()};
    for (int i = upto(3); i > 0; --i) {
      CellCheck cell;
      if (toss()) cell.specific_gravity = 1 + 0.4 * shared();
      cell.volts = perhaps<Voltage>();
      cell.temperature = perhaps_temperature();
      if (toss()) cell.level = any_word<ElectrolyteLevel>();
      c.cells.push_back(cell);
    }
    c.top_leak = perhaps<Voltage>();
    return c;
  }

  Run run() {
    Run r;
    place(r, "run ");
    const auto& gauges = trade::known_gauges(any_gauge_system());
    r.gauge = gauges[static_cast<std::size_t>(upto(static_cast<int>(gauges.size()) - 1))];
    r.length = Length{positive()};
    r.conductor = any_word<trade::ConductorKind>();
    r.length_estimated = toss();
    r.insulation = Temperature{60.0 + upto(90)};
    r.in = toss() ? "engine-space" : "";
    r.bundle = 1 + upto(5);
    r.end_from = run_end();
    r.end_to = toss() ? r.end_from : run_end();
    r.wire = resistances();
    if (toss()) r.return_conductor = return_of(r);
    return r;
  }

  static trade::GaugeSystem any_gauge_system() {
    return upto(2) == 0 ? trade::GaugeSystem::awg
           : toss()     ? trade::GaugeSystem::sae
                        : trade::GaugeSystem::metric;
  }

  ReturnConductor return_of(const Run& run) {
    ReturnConductor back;
    std::tie(back.from, back.to) = points();
    back.end_from = run_end();
    back.end_to = run_end();
    back.wire = resistances();
    if (!back.wire.sound) back.wire.sound = run.wire.sound;  // as it would be inherited
    back.note = free_text();
    return back;
  }

  void add_path() {
    for (int i = upto(2); i > 0; --i) {
      Joint& j = system_.joints.emplace_back();
      place(j, "joint ");
      j.kind = any_word<trade::JointKind>();
      j.rating = perhaps<Current>();
      j.resistances = resistances();
      Switch& s = system_.switches.emplace_back();
      place(s, "switch ");
      s.kind = any_word<trade::SwitchKind>();
      s.interrupts = perhaps<Current>();
      s.closed = toss();
      s.resistances = resistances();
      Fuse& f = system_.fuses.emplace_back();
      place(f, "fuse ");
      f.rating = Current{positive()};
      if (toss()) f.form = any_word<trade::FuseForm>();
      f.volts = perhaps<Voltage>();
      f.resistances = resistances();
      Shunt& h = system_.shunts.emplace_back();
      place(h, "shunt ");
      h.rating = Current{positive()};
      h.drop = Voltage{positive()};
      Isolator& d = system_.isolators.emplace_back();
      place(d, "isolator ");
      d.drop = Voltage{positive()};
      d.rating = perhaps<Current>();
    }
  }

  static Takes takes() {
    const double value = positive();
    const int kind = upto(2);
    return kind == 0 ? Takes(Power{value}) : kind == 1 ? Takes(Current{value}) : Takes(Resistance{value});
  }

  void add_loads() {
    for (int i = upto(3); i > 0; --i) {
      Load& l = system_.loads.emplace_back();
      l.id = id("load ");
      std::tie(l.plus, l.minus) = points();
      l.takes = takes();
      l.load_class = any_word<LoadClass>();
      l.nominal = perhaps<Voltage>();
      l.stops_below = perhaps<Voltage>();
      l.restarts_above = perhaps<Voltage>();
      l.inrush = perhaps<Current>();
      l.stall = perhaps<Current>();
      l.on_for = perhaps<Time>();
      l.rest_for = perhaps<Time>();
      l.efficiency = percent((1 + upto(999)) / 10.0);
      l.idle = Power{shared()};
    }
    for (int i = upto(1); i > 0; --i) {
      Converter& c = system_.converters.emplace_back();
      c.id = id("converter ");
      std::tie(c.plus_in, c.minus_in) = points();
      std::tie(c.plus_out, c.minus_out) = points();
      c.setpoint = Voltage{positive()};
      c.limit = Current{positive()};
      c.efficiency = percent((1 + upto(999)) / 10.0);
      c.stops_below = perhaps<Voltage>();
    }
  }

  void add_cases() {
    for (int i = 0; i <= upto(2); ++i) {
      Case& c = system_.cases.emplace_back();
      c.name = "case " + std::to_string(i);
      c.all_on = toss();
      for (const Load& load : system_.loads) {
        if (!c.all_on && toss()) c.on.push_back(load.id);
        if (toss()) c.set.emplace(load.id, takes());
      }
      for (const Switch& one : system_.switches) (toss() ? c.open : c.closed).push_back(one.id);
      for (const Charger& one : system_.chargers) c.chargers.push_back(one.id);
      c.ambient = perhaps_temperature();
      c.per_day = perhaps<Time>();
      c.note = free_text();
    }
  }

  void add_readings() {
    if (toss())
      system_.meters.push_back(
          {"dmm", Accuracy{0.5, 2, 0.001}, Accuracy{2, 5, 0.1}, std::nullopt, std::nullopt, free_text()});
    for (const Run& run : system_.runs) {
      Reading r;
      r.in_case = system_.cases.front().name;
      const int kind = upto(3);
      if (kind == 0)
        r.what = VoltsReading{Voltage{-positive()}, run.id + "@from", toss() ? run.to : run.id + "@to-metal"};
      else if (kind == 1)
        r.what = AmpsReading{Current{positive()}, run.id + "/wire"};
      else if (kind == 2)
        r.what = OhmsReading{Resistance{positive()}, run.id}, r.in_case.clear();
      else
        r.what = TemperatureReading{Temperature{20 + shared()}, run.id + "/to"};
      if (toss()) r.spread = shared();
      if (toss()) r.minutes = shared() * 60;
      if (!system_.meters.empty() && kind < 2) r.meter = "dmm";
      system_.readings.push_back(r);
    }
  }

  void mark_opened() {
    for (Run& run : system_.runs) {
      const bool all = system_.info.terminations == Terminations::contact_and_crimp;
      const auto mark = [all](RunEnd& end) { end.opened = all || end.crimp.has_value(); };
      mark(run.end_from), mark(run.end_to);
      if (run.return_conductor) mark(run.return_conductor->end_from), mark(run.return_conductor->end_to);
      for (const Reading& r : system_.readings) {
        const auto* volts = std::get_if<VoltsReading>(&r.what);
        if (volts != nullptr && volts->black == run.id + "@to-metal") run.end_to.opened = true;
      }
    }
  }

  System whole() {
    system_.info.name = free_text();
    system_.info.nominal = Voltage{positive()};
    system_.info.kind = any_word<SystemKind>();
    system_.info.terminations = any_word<Terminations>();
    system_.info.ambient = Temperature{upto(60) - 20.0};
    if (toss()) system_.info.limits.swing = Fraction{0.02};
    system_.info.job.customer = free_text();
    system_.note = free_text();
    for (int i = 0; i <= upto(2); ++i) system_.batteries.push_back(battery());
    for (int i = upto(1); i > 0; --i) {
      Charger& c = system_.chargers.emplace_back();
      c.id = id("charger ");
      std::tie(c.plus, c.minus) = points();
      c.setpoint = Voltage{positive()};
      c.limit = Current{positive()};
    }
    for (int i = upto(4); i > 0; --i) system_.runs.push_back(run());
    add_path();
    add_loads();
    add_cases();
    add_readings();
    if (toss())
      system_.cable_list.push_back(
          {trade::awg(2), "2 AWG", 3.5, Temperature{90}, trade::ConductorKind::bare_copper, ""});
    if (toss()) system_.reference = system_.stubs.front();
    if (toss()) system_.points[system_.stubs.front()] = {free_text(), any_word<Reach>(), free_text()};
    mark_opened();
    return std::move(system_);
  }

  System system_;
  int next_ = 0;
};

}  // namespace ohmtrail::netlist::test
