#pragma once
#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "ohmtrail/network/network.hpp"
#include "ohmtrail/solve/case_solution.hpp"
#include "ohmtrail/solve/solver.hpp"
#include "ohmtrail/trade/meter.hpp"
#include "support/simulated_layout.hpp"

/// A survey of an invented system: true values drawn from the priors of the design, faults planted, readings
/// noisy and rounded like those of a hand meter. The priors are stated again here on purpose: the code under
/// test has its own.
namespace ohmtrail::test {

enum class Readings { every_element, elements_and_spans, every_third_point, loads_only };

/// Instead of a number of planted faults: each thing is faulty by its own chance, however little that drops.
/// What is inferred of such systems must be calibrated; of planted ones only nearly, as no prior says
/// "exactly one, of 30 mV".
inline constexpr int by_chance = -1;

struct SurveyOptions {
  LayoutOptions layout;
  int faults = 1;  ///< planted, each with at least 30 mV of extra drop; or `by_chance`
  bool battery_may_fail = true;
  Readings readings = Readings::every_element;
  double blunders = 0;  ///< share of readings that are wrong by at least 8 standard deviations
  double drop = 0.030;  ///< V, least extra drop of a planted fault
};

/// The k-th of a varied lot: trees, rings, two banks in parallel; constant current, constant power, mixed
/// loads; 20–60 elements; one and two faults; `sound` given in three of four.
inline SurveyOptions varied_options(int k) {
  SurveyOptions options;
  options.layout.shape = static_cast<Shape>(k % 3);
  options.layout.loads = static_cast<LoadKind>((k / 3) % 3);
  options.layout.elements = 20 + (k * 7) % 41;
  options.layout.sound_from_tables = k % 4 == 3;
  options.faults = 1 + k % 2;
  return options;
}

struct Truth {
  std::map<std::string, double> resistance;  ///< passive elements and batteries
  std::vector<std::string> planted;
  std::set<std::size_t> blunders;  ///< indices of readings
  /// Per load under load: what it loses between the posts of the battery that gives most and itself, as a
  /// share of nominal.
  std::map<std::string, double> loss;
};

struct SimulatedSurvey {
  netlist::System system;  ///< with readings
  Truth truth;
};

class Simulation {
 public:
  Simulation(std::uint64_t seed, const SurveyOptions& options) : random_(seed), options_(options) {}

  SimulatedSurvey run() {
    for (;;) {
      system_ = LayoutBuilder(random_, options_.layout).build();
      loaded_ = network::build(system_, system_.cases[1]);
      rest_ = network::build(system_, system_.cases[0]);
      if (auto out = attempt()) return std::move(*out);
    }
  }

  /// One more reading of the system that `run` made, as the same meter shows it.
  netlist::Reading take_volts(const std::string& red, const std::string& black, bool under_load) {
    volts(red, black, under_load);
    return system_.readings.back();
  }
  netlist::Reading take_amps(const std::string& run, bool under_load) {
    clamp(run, under_load);
    return system_.readings.back();
  }

 private:
  struct Prior {
    double sd, fault_mean, fault_sd, chance;
  };
  // The two ways in which a battery fails add up to the 15 % by which it is planted.
  static constexpr double weak_battery = 0.11, cell_missing = 0.045;

  static bool passive(const network::Element& e) {
    using network::Role;
    return e.role == Role::wire || e.role == Role::termination || e.role == Role::joint ||
           e.role == Role::switchgear || e.role == Role::fuse;
  }

  static Prior prior_of(const network::Element& e) {
    using network::Role;
    const bool table = e.sound_from_table;
    if (e.role == Role::wire) return {0.08, std::log(2.0), 0.6, 0.01};
    if (e.role == Role::switchgear || e.role == Role::fuse)
      return {table ? 0.5 : 0.35, std::log(6.0), 1.0, 0.02};
    if (e.role == Role::battery) return {0.2, std::log(2.5), 0.6, 0.15};
    return {0.35, std::log(table ? 40.0 : 12.0), table ? 1.5 : 1.2, 0.03};
  }

  static double sound_of(const network::Element& e) {
    return e.role == network::Role::battery ? e.resistance.si() : e.sound->si();
  }

  std::optional<SimulatedSurvey> attempt() {
    draw_sound();
    solve::Solver solver(true_circuit(loaded_));
    const auto sound = solver.solve();
    if (!sound || sound->collapse) return std::nullopt;
    options_.faults == by_chance ? fail_by_chance() : plant(*sound);
    solve::Solver faulty(true_circuit(loaded_)), resting(true_circuit(rest_));
    auto loaded = faulty.solve(), rest = resting.solve();
    if (!loaded || loaded->collapse || !rest) return std::nullopt;
    loaded_solution_ = *loaded;
    rest_solution_ = *rest;
    if (options_.faults != by_chance && !drops_enough()) return std::nullopt;
    take_working_resistances();
    take_losses();
    take_readings();
    make_blunders();
    return SimulatedSurvey{system_, truth_};
  }

  void draw_sound() {
    truth_ = {};
    for (const auto& e : loaded_.elements) {
      if (passive(e) || e.role == network::Role::battery) {
        truth_.resistance[e.id] = sound_of(e) * std::exp(prior_of(e).sd * random_.normal());
      }
      if (e.role == network::Role::battery) emf_[e.id] = e.voltage.si() * (1 + 0.002 * random_.normal());
      if (e.role == network::Role::load) {
        const bool current = e.takes && std::holds_alternative<units::Current>(*e.takes);
        load_[e.id] = std::exp((current ? 0.1 : 0.3) * random_.normal());
      }
    }
  }

  // By the priors' chances among the things that carry current.
  void plant(const solve::Solution& sound) {
    while (static_cast<int>(truth_.planted.size()) < options_.faults) {
      double total = 0;
      for (std::size_t k = 0; k < loaded_.elements.size(); ++k) total += weight(k, sound);
      double at = random_.uniform() * total;
      for (std::size_t k = 0; k < loaded_.elements.size(); ++k) {
        at -= weight(k, sound);
        if (at <= 0) {
          plant_at(loaded_.elements[k]);
          break;
        }
      }
    }
  }

  void fail_by_chance() {
    for (const auto& e : loaded_.elements) {
      const bool battery = e.role == network::Role::battery;
      if (battery && random_.chance(cell_missing)) {
        emf_[e.id] -= e.voltage.si() / 6 + 0.1 * random_.normal();
        truth_.planted.push_back(e.id);
      }
      if ((passive(e) || battery) && random_.chance(battery ? weak_battery : prior_of(e).chance)) plant_at(e);
    }
  }

  double weight(std::size_t k, const solve::Solution& sound) const {
    const auto& e = loaded_.elements[k];
    const bool candidate = passive(e) || (e.role == network::Role::battery && options_.battery_may_fail);
    const bool planted = std::count(truth_.planted.begin(), truth_.planted.end(), e.id) > 0;
    return candidate && !planted && std::abs(sound.current[k]) > 1 ? prior_of(e).chance : 0;
  }

  void plant_at(const network::Element& e) {
    const Prior prior = prior_of(e);
    truth_.resistance[e.id] = sound_of(e) * std::exp(random_.normal(prior.fault_mean, prior.fault_sd));
    truth_.planted.push_back(e.id);
  }

  bool drops_enough() const {
    for (const auto& id : truth_.planted) {
      const auto k = static_cast<std::size_t>(*loaded_.element(id));
      const auto& e = loaded_.elements[k];
      // A battery within the scatter of sound ones is no faulty battery.
      const double usual =
          e.role == network::Role::battery ? sound_of(e) * std::exp(2 * prior_of(e).sd) : sound_of(e);
      const double excess = truth_.resistance.at(id) - usual;
      if (excess * std::abs(loaded_solution_.current[k]) < options_.drop) return false;
    }
    return true;
  }

  // Wires have warmed up: what a reading can tell is their resistance at that temperature.
  void take_working_resistances() {
    for (std::size_t k = 0; k < loaded_.elements.size(); ++k) {
      if (passive(loaded_.elements[k]))
        truth_.resistance[loaded_.elements[k].id] = loaded_solution_.resistance[k];
    }
  }

  void take_losses() {
    const auto drop = [&](std::size_t k) {
      const auto& e = loaded_.elements[k];
      return loaded_solution_.voltage[static_cast<std::size_t>(e.from)] -
             loaded_solution_.voltage[static_cast<std::size_t>(e.to)];
    };
    double most = 0, posts = 0;
    for (std::size_t k = 0; k < loaded_.elements.size(); ++k) {
      const double power = -loaded_solution_.current[k] * drop(k);
      if (loaded_.elements[k].role != network::Role::battery || power <= most) continue;
      most = power;
      posts = drop(k);
    }
    for (std::size_t k = 0; k < loaded_.elements.size(); ++k)
      if (const auto& e = loaded_.elements[k]; e.role == network::Role::load)
        truth_.loss[e.id] = (posts - drop(k)) / e.nominal.value_or(system_.info.nominal).si();
  }

  solve::Circuit true_circuit(const network::Network& network) const {
    solve::Circuit circuit = solve::circuit_of(network);
    for (std::size_t k = 0; k < network.elements.size(); ++k) {
      const auto& e = network.elements[k];
      auto& branch = circuit.branches[k];
      if (const auto r = truth_.resistance.find(e.id); r != truth_.resistance.end())
        branch.resistance = r->second;
      if (const auto v = emf_.find(e.id); v != emf_.end()) branch.size = v->second;
      if (const auto s = load_.find(e.id); s != load_.end()) {
        (branch.law == solve::Law::resistor ? branch.resistance : branch.size) *= s->second;
      }
    }
    return circuit;
  }

  void take_readings() {
    system_.readings.clear();
    gain_volts_ = gain_volts_large_ = random_.normal() * 0.005 / 1.96;
    gain_amps_ = random_.normal() * 0.02 / 1.96;
    zero_amps_ = random_.normal() * 0.5 / 1.96 * std::sqrt(0.5);
    system_.meters = {meter()};
    for (const auto& battery : system_.batteries) {
      volts(battery.plus, battery.minus, false);
      volts(battery.plus, battery.minus, true);
    }
    clamp("feed");
    if (options_.layout.shape == Shape::two_banks) clamp("plus0");
    if (options_.layout.shape == Shape::ring && options_.readings == Readings::every_element)
      clamp("ring-out");
    for (std::size_t k = 1; k < system_.loads.size(); ++k) clamp("branch" + std::to_string(k) + "-last");
    for (const auto& load : system_.loads) volts(load.plus, load.minus, true);
    if (reads_elements()) read_elements();
    if (options_.readings == Readings::elements_and_spans) read_spans();
    if (options_.readings == Readings::every_third_point) read_third_points();
  }

  static netlist::Meter meter() {
    netlist::Meter meter;
    meter.id = "hand";
    meter.volts = netlist::Accuracy{0.5, 2, 1e-4};
    meter.amps = netlist::Accuracy{2, 5, 0.1};
    return meter;
  }

  static double rounded(double value, double digit) { return std::round(value / digit) * digit; }

  void volts(const std::string& red, const std::string& black, bool under_load) {
    const auto& network = under_load ? loaded_ : rest_;
    const auto& solution = under_load ? loaded_solution_ : rest_solution_;
    const auto at = [&](const std::string& p) {
      return solution.voltage[static_cast<std::size_t>(*network.point(p))];
    };
    const double truth = at(red) - at(black);
    const double noisy = truth * (1 + gain_volts_) + 2e-4 / 1.96 * random_.normal();
    add({netlist::VoltsReading{units::Voltage{rounded(noisy, 1e-4)}, red, black},
         under_load ? "under load" : "at rest",
         "hand",
         {},
         {},
         {}},
        std::hypot(2e-4 / 1.96, 0.005 / 1.96 * truth));
  }

  void clamp(const std::string& run, bool under_load = true) {
    const auto k = static_cast<std::size_t>(*loaded_.element(run));
    const double truth = under_load ? loaded_solution_.current[k] : rest_solution_.current[k];
    const double noisy =
        truth * (1 + gain_amps_) + zero_amps_ + 0.5 / 1.96 * std::sqrt(0.5) * random_.normal();
    add({netlist::AmpsReading{units::Current{rounded(noisy, 0.1)}, run},
         under_load ? "under load" : "at rest",
         "hand",
         {},
         {},
         {}},
        std::hypot(0.5 / 1.96, 0.02 / 1.96 * truth));
  }

  void add(netlist::Reading reading, double sigma) {
    system_.readings.push_back(std::move(reading));
    sigmas_.resize(system_.readings.size());
    sigmas_.back() = sigma;
  }

  void read_elements() {
    for (std::size_t k = 0; k < loaded_.elements.size(); ++k) {
      const auto& e = loaded_.elements[k];
      if (passive(e))
        volts(loaded_.points[static_cast<std::size_t>(e.from)],
              loaded_.points[static_cast<std::size_t>(e.to)], true);
    }
  }

  [[nodiscard]] bool reads_elements() const {
    return options_.readings == Readings::every_element || options_.readings == Readings::elements_and_spans;
  }

  // Each run again from stud to stud: what its wire and both its lugs lose together.
  void read_spans() {
    for (const auto& run : system_.runs) volts(run.from, run.to, true);
  }

  // Probe to probe along the path, every third point of it.
  void read_third_points() {
    std::string last;
    int since = 0;
    int previous_to = -1;
    for (const auto& e : loaded_.elements) {
      if (!passive(e)) continue;
      const std::string& from = loaded_.points[static_cast<std::size_t>(e.from)];
      const std::string& to = loaded_.points[static_cast<std::size_t>(e.to)];
      if (e.from != previous_to) {
        last = from;
        since = 0;
      }
      previous_to = e.to;
      if (++since == 3) {
        volts(last, to, true);
        last = to;
        since = 0;
      }
    }
  }

  void make_blunders() {
    for (std::size_t k = 0; k < system_.readings.size(); ++k) {
      if (!random_.chance(options_.blunders)) continue;
      const double size = sigmas_[k] * random_.uniform(8, 40) * (random_.chance(0.5) ? 1 : -1);
      if (auto* v = std::get_if<netlist::VoltsReading>(&system_.readings[k].what)) {
        v->value = units::Voltage{rounded(v->value.si() + size, 1e-4)};
      } else if (auto* a = std::get_if<netlist::AmpsReading>(&system_.readings[k].what)) {
        a->value = units::Current{rounded(a->value.si() + size, 0.1)};
      }
      truth_.blunders.insert(k);
    }
  }

  SeededRandom random_;
  SurveyOptions options_;
  netlist::System system_;
  network::Network loaded_, rest_;
  solve::Solution loaded_solution_, rest_solution_;
  Truth truth_;
  std::map<std::string, double> emf_, load_;
  std::vector<double> sigmas_;
  double gain_volts_ = 0, gain_volts_large_ = 0, gain_amps_ = 0, zero_amps_ = 0;
};

inline SimulatedSurvey simulate(std::uint64_t seed, const SurveyOptions& options) {
  return Simulation(seed, options).run();
}

}  // namespace ohmtrail::test
