#pragma once
#include <cmath>
#include <random>
#include <string>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/trade/gauge.hpp"

/// Invented systems for the choice of cable: every wire a run of its own, without a return; four gauges.
namespace ohmtrail::test {

class Systems {
 public:
  explicit Systems(unsigned seed) : engine_(seed) {
    system_.info.name = "small (invented)";
    system_.info.nominal = units::Voltage{12};
    for (const int number : {16, 10, 6, 2}) {
      netlist::CableOffer offer;
      offer.gauge = trade::awg(number);
      offer.gauge_as_written = trade::print(offer.gauge);
      offer.price = (0.5 + share()) * std::pow(1.6, (16 - number) / 4.0);
      system_.cable_list.push_back(offer);
    }
  }

  double share() { return std::uniform_real_distribution<double>(0, 1)(engine_); }

  void battery(const std::string& id, const std::string& plus, const std::string& minus, double volts = 12) {
    netlist::Battery battery;
    battery.id = id, battery.plus = plus, battery.minus = minus;
    battery.nominal = units::Voltage{volts};
    battery.emf = units::Voltage{volts * (1.03 + 0.02 * share())};
    battery.resistance = units::Resistance{0.003 + 0.01 * share()};
    system_.batteries.push_back(battery);
  }

  void run(const std::string& id, const std::string& from, const std::string& to, double metres) {
    netlist::Run run;
    run.id = id, run.from = from, run.to = to;
    run.gauge = trade::awg(6);
    run.length = units::Length{metres * (0.5 + share())};
    system_.runs.push_back(run);
  }

  void fuse(const std::string& id, const std::string& from, const std::string& to, double amperes) {
    netlist::Fuse fuse;
    fuse.id = id, fuse.from = from, fuse.to = to;
    fuse.rating = units::Current{amperes};
    system_.fuses.push_back(fuse);
  }

  netlist::Load& load(const std::string& id, const std::string& plus, const std::string& minus) {
    netlist::Load load;
    load.id = id, load.plus = plus, load.minus = minus;
    const double watts = 40 + 200 * share(), kind = share();
    if (kind < 0.4)
      load.takes = units::Power{watts};
    else if (kind < 0.7)
      load.takes = units::Resistance{144 / watts};
    else
      load.takes = units::Current{watts / 12};
    load.load_class = share() < 0.4 ? netlist::LoadClass::critical : netlist::LoadClass::other;
    system_.loads.push_back(load);
    return system_.loads.back();
  }

  /// All loads on, and each alone.
  netlist::System done() {
    netlist::Case all;
    all.name = "all", all.all_on = true;
    system_.cases.push_back(all);
    for (const auto& load : system_.loads) {
      netlist::Case alone;
      alone.name = "only " + load.id;
      alone.on = {load.id};
      system_.cases.push_back(alone);
    }
    return system_;
  }

 private:
  std::mt19937 engine_;
  netlist::System system_;
};

}  // namespace ohmtrail::test
