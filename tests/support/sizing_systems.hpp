#pragma once
#include <algorithm>
#include <cmath>
#include <random>
#include <string>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/trade/gauge.hpp"

/// Invented systems for the choice of cable: a tree of runs from one battery, loads at its leaves.
namespace ohmtrail::test {

struct SizingPlan {
  int runs = 5;
  int gauges = 6;
  int cases = 2;
  bool resistive = true;  ///< resistive loads among the constant-power and constant-current ones
  bool by_mass = false;   ///< no prices: cost is conductor mass
};

class SizingSystems {
 public:
  explicit SizingSystems(unsigned seed) : engine_(seed) {}

  netlist::System make(const SizingPlan& plan) {
    netlist::System system;
    system.info.name = "sizing case (invented)";
    system.info.nominal = units::Voltage{12};
    add_cables(system, plan);
    netlist::Battery battery;
    battery.id = "bank", battery.plus = "p0", battery.minus = "n0";
    battery.nominal = units::Voltage{12};
    battery.emf = units::Voltage{12.4 + 0.4 * share()};
    battery.resistance = units::Resistance{0.002 + 0.008 * share()};
    system.batteries.push_back(battery);
    std::vector<int> children(static_cast<std::size_t>(plan.runs) + 1, 0);
    for (int r = 1; r <= plan.runs; ++r) add_run(system, r, children);
    for (int r = 1; r <= plan.runs; ++r)
      if (children[static_cast<std::size_t>(r)] == 0 || share() < 0.3) add_load(system, r, plan);
    add_cases(system, plan);
    return system;
  }

 private:
  double share() { return std::uniform_real_distribution<double>(0, 1)(engine_); }

  /// Prices that jump: a thicker cable may well be cheaper than a thinner one.
  void add_cables(netlist::System& system, const SizingPlan& plan) {
    const int numbers[] = {18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3};
    const int count = std::min(plan.gauges, 15);
    const int first = plan.gauges < 12 ? static_cast<int>(4 * share()) + 1 : 0;
    for (int k = 0; k < count; ++k) {
      netlist::CableOffer offer;
      offer.gauge = trade::awg(numbers[first + k]);
      offer.gauge_as_written = trade::print(offer.gauge);
      if (!plan.by_mass) offer.price = 0.6 * std::pow(1.35, k) * (0.7 + 0.6 * share());
      system.cable_list.push_back(offer);
    }
    for (int k = 15; k < plan.gauges; ++k) {
      netlist::CableOffer offer = system.cable_list[static_cast<std::size_t>(2 + 4 * (k - 15))];
      offer.insulation = units::Temperature{75};
      if (offer.price) *offer.price *= 0.8;
      system.cable_list.push_back(offer);
    }
  }

  static std::string plus(int node) { return "p" + std::to_string(node); }
  static std::string minus(int node) { return "n" + std::to_string(node); }

  void add_run(netlist::System& system, int r, std::vector<int>& children) {
    const int parent = r == 1 ? 0 : static_cast<int>(share() * r * 0.999);
    if (r > 1 && parent == 0 && share() < 0.7) return add_run(system, r, children);
    ++children[static_cast<std::size_t>(parent)];
    netlist::Run run;
    run.id = "run " + std::to_string(r);
    run.from = plus(parent), run.to = plus(r);
    run.gauge = trade::awg(10);
    run.length = units::Length{1 + 5 * share()};
    netlist::ReturnConductor back;
    back.from = minus(r), back.to = minus(parent);
    run.return_conductor = back;
    system.runs.push_back(run);
  }

  void add_load(netlist::System& system, int node, const SizingPlan& plan) {
    netlist::Load load;
    load.id = "load " + std::to_string(node);
    load.plus = plus(node), load.minus = minus(node);
    const double watts = 15 + 120 * share() * share();
    const double kind = share();
    if (kind < 0.4)
      load.takes = units::Power{watts};
    else if (kind < 0.8 && plan.resistive)
      load.takes = units::Resistance{144 / watts};
    else
      load.takes = units::Current{watts / 12};
    load.load_class = share() < 0.3 ? netlist::LoadClass::critical : netlist::LoadClass::other;
    system.loads.push_back(load);
  }

  void add_cases(netlist::System& system, const SizingPlan& plan) {
    netlist::Case all;
    all.name = "all", all.all_on = true;
    system.cases.push_back(all);
    for (int c = 1; c < plan.cases; ++c) {
      netlist::Case some;
      some.name = "case " + std::to_string(c);
      for (const auto& load : system.loads)
        if (share() < 0.6) some.on.push_back(load.id);
      system.cases.push_back(some);
    }
  }

  std::mt19937 engine_;
};

}  // namespace ohmtrail::test
