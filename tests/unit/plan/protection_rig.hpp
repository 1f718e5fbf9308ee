#pragma once
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/plan/protection.hpp"
#include "ohmtrail/trade/gauge.hpp"

/// Small invented systems built by hand for the protection rules.
namespace ohmtrail::test {

inline constexpr double inch = 0.0254;

struct Rig {
  netlist::System system;

  explicit Rig(double nominal = 12) {
    system.info.name = "rig (invented)";
    system.info.nominal = units::Voltage{nominal};
    netlist::Case all;
    all.name = "all-on";
    all.all_on = true;
    system.cases.push_back(all);
  }

  netlist::Battery& battery(const std::string& id, const std::string& plus, const std::string& minus,
                            double cca = 600) {
    netlist::Battery one;
    one.id = id, one.plus = plus, one.minus = minus;
    one.nominal = system.info.nominal;
    one.cca = units::Current{cca};
    system.batteries.push_back(one);
    return system.batteries.back();
  }
  netlist::Run& run(const std::string& id, const std::string& from, const std::string& to, int awg,
                    double metres) {
    netlist::Run one;
    one.id = id, one.from = from, one.to = to;
    one.gauge = trade::awg(awg);
    one.length = units::Length{metres};
    system.runs.push_back(one);
    return system.runs.back();
  }
  netlist::Fuse& fuse(const std::string& id, const std::string& from, const std::string& to, double amperes) {
    netlist::Fuse one;
    one.id = id, one.from = from, one.to = to;
    one.rating = units::Current{amperes};
    one.interrupts = units::Current{20000};
    one.volts = units::Voltage{125};
    system.fuses.push_back(one);
    return system.fuses.back();
  }
  netlist::Switch& breaker(const std::string& id, const std::string& from, const std::string& to,
                           std::optional<double> amperes) {
    netlist::Switch one;
    one.id = id, one.from = from, one.to = to;
    one.kind = trade::SwitchKind::breaker;
    if (amperes) one.rating = units::Current{*amperes};
    one.interrupts = units::Current{20000};
    system.switches.push_back(one);
    return system.switches.back();
  }
  netlist::Load& load(const std::string& id, const std::string& plus, const std::string& minus,
                      double amperes) {
    netlist::Load one;
    one.id = id, one.plus = plus, one.minus = minus;
    one.takes = units::Current{amperes};
    system.loads.push_back(one);
    return system.loads.back();
  }
  void joint(const std::string& id, const std::string& from, const std::string& to, trade::JointKind kind) {
    netlist::Joint one;
    one.id = id, one.from = from, one.to = to, one.kind = kind;
    system.joints.push_back(one);
  }

  [[nodiscard]] std::vector<solve::CaseSolution> solved() const {
    std::vector<solve::CaseSolution> all;
    for (const auto& in_case : system.cases) {
      auto one = solve::solve_case(network::build(system, in_case));
      if (!one) throw std::runtime_error("the rig has no solution");
      all.push_back(std::move(*one));
    }
    return all;
  }
  [[nodiscard]] std::vector<diagnose::Finding> check(
      plan::RuleSet rules = plan::RuleSet::us_small_craft) const {
    return plan::check_protection(system, solved(), rules);
  }
  [[nodiscard]] std::vector<diagnose::Finding> of_rule(
      const std::string& rule, plan::RuleSet rules = plan::RuleSet::us_small_craft) const {
    std::vector<diagnose::Finding> some;
    for (const auto& one : check(rules))
      if (one.rule == rule) some.push_back(one);
    return some;
  }
};

/// Battery, a feed of 10 AWG with a fuse at its end, a load, and the way back: sound by every rule.
inline Rig fused_at(double metres_to_fuse, double rating = 30) {
  Rig rig;
  rig.battery("bank", "b+", "b-");
  rig.run("feed", "b+", "f", 10, metres_to_fuse);
  rig.fuse("fuse", "f", "g", rating);
  rig.run("branch", "g", "l+", 10, 2);
  rig.load("lamp", "l+", "l-", 10);
  rig.run("back", "l-", "b-", 10, 2);
  return rig;
}

/// Every finding is whole: rule, source, subject, text and remedy.
inline void expect_whole(const std::vector<diagnose::Finding>& findings) {
  for (const auto& one : findings) {
    EXPECT_FALSE(one.source.empty()) << one.rule;
    EXPECT_FALSE(one.subject.empty()) << one.rule;
    EXPECT_FALSE(one.text.empty()) << one.rule;
    EXPECT_FALSE(one.remedy.empty()) << one.rule;
  }
}

}  // namespace ohmtrail::test
