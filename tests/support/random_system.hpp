#pragma once
#include <fmt/format.h>

#include <map>
#include <random>
#include <string>
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/trade/gauge.hpp"

namespace ohmtrail::test {

struct DrawnSystem {
  int elements = 30;   ///< about so many sections' entries, runs counted once
  bool rings = false;  ///< cross ties between distribution bars
  bool odd = false;    ///< converters, second supplies, bypassed and dead-end things
  bool long_names = false;
};

class RandomSystemBuilder {
 public:
  RandomSystemBuilder(unsigned seed, const DrawnSystem& wanted) : random_(seed), wanted_(wanted) {}

  netlist::System build() {
    system_.info.name =
        wanted_.long_names ? std::string(70, 'W') : fmt::format("Random {}", wanted_.elements);
    system_.info.nominal = units::Voltage{12};
    add_bank("bank", pick(1, 3));
    if (wanted_.odd) add_bank("second bank", 1);
    feed();
    while (count_ < wanted_.elements) add_branch();
    if (wanted_.rings) add_ties();
    if (wanted_.odd) add_odd_things();
    netlist::Case all;
    all.name = "all on";
    all.all_on = true;
    for (const netlist::Charger& charger : system_.chargers) all.chargers.push_back(charger.id);
    system_.cases.push_back(all);
    system_.reference = "bank 0 0 -";
    list_stubs();
    return std::move(system_);
  }

 private:
  int pick(int low, int high) {
    return low + static_cast<int>(random_() % static_cast<unsigned>(high - low + 1));
  }
  bool chance(int percent) { return pick(1, 100) <= percent; }

  std::string named(const std::string& what) {
    ++count_;
    const std::string tail =
        wanted_.long_names ? " in the aft locker behind the second frame of the port side" : "";
    return fmt::format("{} {}{}", what, count_, tail);
  }

  /// Of IEC 60228, up to 16 mm².
  double thin() {
    constexpr double sizes[] = {1e-6, 1.5e-6, 2.5e-6, 4e-6, 6e-6, 10e-6, 16e-6};
    return sizes[pick(0, 6)];
  }

  void add_run(const std::string& from, const std::string& to, double area = 35e-6) {
    netlist::Run run;
    run.id = named("run");
    run.from = from;
    run.to = to;
    run.gauge.system = trade::GaugeSystem::metric;
    run.gauge.area = units::Area{area};
    run.length = units::Length{0.3 + 0.1 * pick(0, 40)};
    if (chance(15)) run.end_to.resistances.as_found = units::Resistance{1e-3 * pick(1, 20)};
    if (chance(8)) run.wire.as_found = units::Resistance{1e-3 * pick(2, 30)};
    system_.runs.push_back(std::move(run));
  }

  std::string add_switch(const std::string& from) {
    netlist::Switch s;
    s.id = named("switch");
    s.from = from;
    s.to = s.id + " out";
    s.kind = static_cast<trade::SwitchKind>(pick(0, 3));
    s.rating = units::Current{100};
    s.closed = !chance(12);
    system_.switches.push_back(s);
    return s.to;
  }

  std::string add_fuse(const std::string& from) {
    netlist::Fuse f;
    f.id = named("fuse");
    f.from = from;
    f.to = f.id + " out";
    f.rating = units::Current{static_cast<double>(5 * pick(1, 40))};
    system_.fuses.push_back(f);
    return f.to;
  }

  std::string add_joint(const std::string& from) {
    netlist::Joint j;
    j.id = named("joint");
    j.from = from;
    j.to = j.id + " out";
    j.kind = static_cast<trade::JointKind>(pick(0, 7));
    system_.joints.push_back(j);
    return j.to;
  }

  void add_bank(const std::string& name, int strings) {
    const int in_series = chance(50) ? 2 : 1;
    const bool tied = wanted_.odd && chance(70);
    for (int s = 0; s < strings; ++s) {
      for (int k = 0; k < in_series; ++k) add_battery(fmt::format("{} {} {}", name, s, k), 12.0 / in_series);
      for (int k = 1; k < in_series; ++k)
        add_run(fmt::format("{} {} {} +", name, s, k - 1), fmt::format("{} {} {} -", name, s, k));
      if (s == 0) continue;
      add_run(fmt::format("{} {} {} +", name, s, in_series - 1),
              fmt::format("{} {} {} +", name, s - 1, in_series - 1));
      add_run(fmt::format("{} {} 0 -", name, s), fmt::format("{} {} 0 -", name, s - 1));
      for (int k = 1; tied && k < in_series; ++k)
        add_run(fmt::format("{} {} {} -", name, s - 1, k), fmt::format("{} {} {} -", name, s, k));
    }
    tops_.push_back(fmt::format("{} 0 {} +", name, in_series - 1));
    bottoms_.push_back(fmt::format("{} 0 0 -", name));
  }

  void add_battery(const std::string& id, double nominal) {
    ++count_;
    netlist::Battery b;
    b.id = id;
    b.plus = id + " +";
    b.minus = id + " -";
    b.nominal = units::Voltage{nominal};
    b.capacity = units::Charge{100 * 3600.0};
    b.resistance = units::Resistance{0.004};
    b.emf = units::Voltage{nominal * 1.06};
    system_.batteries.push_back(std::move(b));
  }

  /// From every bank's posts to the first bars.
  void feed() {
    plus_bars_ = {"bar +"};
    minus_bars_ = {"bar -"};
    for (std::size_t k = 0; k < tops_.size(); ++k) {
      std::string at = chance(50) ? add_joint(tops_[k]) : tops_[k];
      at = add_fuse(at);
      const std::string in = fmt::format("switch in {}", k);
      add_run(at, in);
      netlist::Switch s;
      s.id = named("master");
      s.from = in;
      s.to = fmt::format("master out {}", k);
      s.kind = trade::SwitchKind::battery_switch;
      system_.switches.push_back(s);
      add_run(s.to, "bar +");
      add_run("bar -", bottoms_[k]);
    }
  }

  void add_branch() {
    const auto from = static_cast<std::size_t>(pick(0, static_cast<int>(plus_bars_.size()) - 1));
    if (chance(18)) return add_bar(from);
    std::string at = plus_bars_[from];
    for (int k = pick(0, 3); k > 0; --k)
      at = chance(50) ? add_fuse(at) : chance(60) ? add_switch(at) : add_joint(at);
    netlist::Load load;
    load.id = named("load");
    load.plus = load.id + " +";
    load.minus = load.id + " -";
    if (chance(33))
      load.takes = units::Power{static_cast<double>(pick(5, 60))};
    else if (chance(50))
      load.takes = units::Current{static_cast<double>(pick(1, 6))};
    else
      load.takes = units::Resistance{static_cast<double>(pick(3, 30))};
    add_run(at, load.plus, thin());
    add_run(load.minus, chance(75) ? minus_bars_[from] : minus_bars_.front(), thin());
    system_.loads.push_back(std::move(load));
  }

  void add_bar(std::size_t from) {
    const std::string plus = fmt::format("bar {} +", plus_bars_.size()),
                      minus = fmt::format("bar {} -", plus_bars_.size());
    add_run(add_fuse(plus_bars_[from]), plus, 16e-6);
    add_run(minus_bars_[from], minus, 16e-6);
    plus_bars_.push_back(plus);
    minus_bars_.push_back(minus);
  }

  void add_ties() {
    for (std::size_t k = 1; k + 1 < plus_bars_.size(); k += 2)
      add_run(plus_bars_[k], plus_bars_[k + 1], 16e-6);
    if (minus_bars_.size() > 2) add_run(minus_bars_[1], minus_bars_.back(), 16e-6);
  }

  void add_odd_things() {
    netlist::Charger charger{named("charger"),     "charger +",        "bar -",
                             units::Voltage{14.2}, units::Current{30}, {}};
    system_.chargers.push_back(charger);
    add_run("charger +", "bar +");
    netlist::Converter converter;
    converter.id = named("converter");
    converter.plus_in = "converter in +";
    converter.minus_in = converter.minus_out = "bar -";
    converter.plus_out = "converter out +";
    converter.setpoint = units::Voltage{5};
    converter.limit = units::Current{10};
    system_.converters.push_back(converter);
    add_run(add_fuse("bar +"), "converter in +", 4e-6);
    netlist::Load small;
    small.id = named("load");
    small.plus = "converter out +";
    small.minus = "bar -";
    small.takes = units::Current{1};
    small.nominal = units::Voltage{5};
    system_.loads.push_back(small);
    // Two switches side by side across one stretch, and a cable that ends nowhere.
    const std::string to = add_switch("bar +");
    netlist::Switch beside = system_.switches.back();
    beside.id = named("switch");
    system_.switches.push_back(beside);
    add_run(to, "dead end");
  }

  /// Bars on which nothing hangs, and the cable that ends nowhere.
  void list_stubs() {
    std::map<std::string, int> named;
    const auto count = [&](const auto& things, auto first, auto second) {
      for (const auto& thing : things) ++named[thing.*first], ++named[thing.*second];
    };
    count(system_.batteries, &netlist::Battery::plus, &netlist::Battery::minus);
    count(system_.chargers, &netlist::Charger::plus, &netlist::Charger::minus);
    count(system_.runs, &netlist::Run::from, &netlist::Run::to);
    count(system_.joints, &netlist::Joint::from, &netlist::Joint::to);
    count(system_.switches, &netlist::Switch::from, &netlist::Switch::to);
    count(system_.fuses, &netlist::Fuse::from, &netlist::Fuse::to);
    count(system_.loads, &netlist::Load::plus, &netlist::Load::minus);
    count(system_.converters, &netlist::Converter::plus_in, &netlist::Converter::minus_in);
    count(system_.converters, &netlist::Converter::plus_out, &netlist::Converter::minus_out);
    for (const auto& [point, times] : named)
      if (times == 1) system_.stubs.push_back(point);
  }

  std::mt19937 random_;
  DrawnSystem wanted_;
  netlist::System system_;
  int count_ = 0;
  std::vector<std::string> tops_, bottoms_, plus_bars_, minus_bars_;
};

/// A system of some kind of vessel: one or two banks in series and parallel, switches, fuses, distribution
/// bars in levels, loads with their returns. The same seed gives the same system.
[[nodiscard]] inline netlist::System random_system(unsigned seed, const DrawnSystem& wanted) {
  return RandomSystemBuilder(seed, wanted).build();
}

}  // namespace ohmtrail::test
