#pragma once
#include <string>
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "support/seeded_random.hpp"

/// Invented systems for the tests of the inference: wiring only, nothing broken yet.
namespace ohmtrail::test {

enum class Shape { tree, ring, two_banks };
enum class LoadKind { current, power, mixed };

struct LayoutOptions {
  Shape shape = Shape::tree;
  LoadKind loads = LoadKind::current;
  int elements = 40;               ///< about so many wires, terminations, joints, switches and fuses
  bool sound_from_tables = false;  ///< otherwise each thing's `sound` is given
  int branches = 0;                ///< loads, each at the end of its own like share; 0: one to three
};

/// Builds a system piece by piece; every thing that carries current is remembered in the order of the path.
class LayoutBuilder {
 public:
  LayoutBuilder(SeededRandom& random, const LayoutOptions& options) : random_(random), options_(options) {}

  netlist::System build() {
    system_.info.name = "simulated (invented)";
    system_.info.nominal = units::Voltage{12};
    const int banks = options_.shape == Shape::two_banks ? 2 : 1;
    for (int k = 0; k < banks; ++k) add_bank(k);
    add_main();
    const int loads = options_.branches > 0           ? options_.branches
                      : options_.shape == Shape::tree ? random_.integer(1, 3)
                                                      : random_.integer(1, 2);
    for (int k = 0; k < loads; ++k) add_branch(k);
    add_cases();
    return system_;
  }

 private:
  static std::string name(const std::string& stem, int k) { return stem + std::to_string(k); }

  netlist::Resistances resistances(double low, double high) {
    netlist::Resistances out;
    const double drawn = std::exp(random_.uniform(std::log(low), std::log(high)));
    if (!options_.sound_from_tables) out.sound = units::Resistance{drawn};
    return out;
  }

  void add_run(const std::string& id, const std::string& from, const std::string& to, bool thick) {
    netlist::Run run;
    run.id = id;
    run.from = from;
    run.to = to;
    run.gauge.number = thick ? -1 : 2;
    run.gauge.area = units::Area{thick ? 67.43e-6 : 33.63e-6};
    run.length = units::Length{random_.uniform(0.4, 4)};
    run.wire = resistances(3e-4, thick ? 3e-3 : 9e-3);
    run.end_from.resistances = resistances(3e-5, 1.2e-4);
    run.end_to.resistances = resistances(3e-5, 1.2e-4);
    system_.runs.push_back(run);
    made_ += 3;
  }

  void add_joint(const std::string& id, const std::string& from, const std::string& to) {
    netlist::Joint joint;
    joint.id = id;
    joint.from = from;
    joint.to = to;
    joint.kind = random_.chance(0.5) ? trade::JointKind::terminal_strip : trade::JointKind::stud;
    joint.resistances = resistances(1e-4, 5e-4);
    system_.joints.push_back(joint);
    ++made_;
  }

  void add_switch(const std::string& id, const std::string& from, const std::string& to) {
    netlist::Switch part;
    part.id = id;
    part.from = from;
    part.to = to;
    part.kind = trade::SwitchKind::battery_switch;
    part.rating = units::Current{300};
    part.resistances = resistances(1e-4, 3e-4);
    system_.switches.push_back(part);
    ++made_;
  }

  void add_fuse(const std::string& id, const std::string& from, const std::string& to) {
    netlist::Fuse fuse;
    fuse.id = id;
    fuse.from = from;
    fuse.to = to;
    fuse.rating = units::Current{300};
    fuse.resistances = resistances(1e-4, 3e-4);
    system_.fuses.push_back(fuse);
    ++made_;
  }

  void add_bank(int k) {
    netlist::Battery battery;
    battery.id = name("bank", k);
    battery.plus = name("bank", k) + "+";
    battery.minus = name("bank", k) + "-";
    battery.nominal = units::Voltage{12};
    battery.emf = units::Voltage{random_.uniform(12.4, 12.8)};
    battery.resistance = units::Resistance{random_.uniform(2e-3, 7e-3)};
    system_.batteries.push_back(battery);
    add_run(name("plus", k), battery.plus, "main+", true);
    add_run(name("minus", k), "main-", battery.minus, true);
  }

  // From the bus at the banks to the panel and back; a ring has two ways to the panel.
  void add_main() {
    add_switch("main-switch", "main+", "switched");
    add_fuse("main-fuse", "switched", "fused");
    add_run("feed", "fused", "panel+", true);
    if (options_.shape == Shape::ring) {
      add_run("ring-out", "fused", "ring", true);
      add_joint("ring-joint", "ring", "ring-far");
      add_run("ring-back", "ring-far", "panel+", true);
    }
    add_run("feed-negative", "panel-", "main-", true);
  }

  // A chain from the panel to a load, its share of the elements that are still wanted, and one run back.
  void add_branch(int k) {
    const std::string stem = name("branch", k);
    std::string at = "panel+";
    const int share = options_.branches > 0 ? options_.branches - k : options_.shape == Shape::tree ? 2 : 1;
    const int goal = made_ + std::max(7, (options_.elements - made_) / share);
    for (int piece = 0; made_ + 6 < goal && made_ + 6 < options_.elements; ++piece) {
      const std::string next = stem + "-" + std::to_string(piece);
      if (piece % 3 == 1) {
        add_joint(name(stem + "-joint", piece), at, next);
      } else {
        add_run(name(stem + "-run", piece), at, next, piece % 2 == 0);
      }
      at = next;
    }
    const std::string id = name("load", k);
    add_run(stem + "-last", at, id + "+", false);
    add_run(stem + "-return", id + "-", "panel-", false);
    add_load(k, id);
  }

  void add_load(int k, const std::string& id) {
    netlist::Load load;
    load.id = id;
    load.plus = id + "+";
    load.minus = id + "-";
    const double amperes =
        options_.branches > 0 ? random_.uniform(8, 16) : random_.uniform(k == 0 ? 60 : 15, k == 0 ? 130 : 50);
    const bool power = options_.loads == LoadKind::power || (options_.loads == LoadKind::mixed && k == 0);
    if (power) {
      load.takes = units::Power{12 * amperes};
    } else if (options_.loads == LoadKind::mixed) {
      load.takes = units::Resistance{12 / amperes};
    } else {
      load.takes = units::Current{amperes};
    }
    system_.loads.push_back(load);
  }

  void add_cases() {
    netlist::Case rest, loaded;
    rest.name = "at rest";
    loaded.name = "under load";
    loaded.all_on = true;
    for (const auto& load : system_.loads) loaded.on.push_back(load.id);
    system_.cases = {rest, loaded};
  }

  SeededRandom& random_;
  LayoutOptions options_;
  netlist::System system_;
  int made_ = 0;
};

}  // namespace ohmtrail::test
