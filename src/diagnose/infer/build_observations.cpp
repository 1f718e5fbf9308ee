#include "diagnose/infer/build_observations.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "diagnose/infer/priors.hpp"
#include "diagnose/infer/reading_error.hpp"
#include "ohmtrail/trade/meter.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

class ObservationBuilder {
 public:
  ObservationBuilder(const netlist::System& system, Survey& survey) : system_(system), survey_(survey) {}

  void build() {
    add_drifts();
    for (std::size_t k = 0; k < system_.readings.size(); ++k) {
      add_reading(system_.readings[k], static_cast<int>(k));
    }
    add_given_resistances();
    add_tested_batteries();
  }

 private:
  Model& model() { return survey_.model; }

  int add_unknown(Kind kind, const std::string& id, double sd, int of = -1) {
    Parameter out;
    out.kind = kind;
    out.scale = Scale::linear;
    out.centre = 0;
    out.sound = {0, sd};
    out.id = id;
    out.of = of;
    model().parameters.push_back(std::move(out));
    return static_cast<int>(model().parameters.size()) - 1;
  }

  int shared(std::map<std::string, int>& known, Kind kind, const std::string& key, double sd) {
    if (sd <= 0) {
      return -1;
    }
    const auto found = known.find(key);
    return found != known.end() ? found->second : known[key] = add_unknown(kind, key, sd);
  }

  // A random walk of each battery's voltage through the times at which something was read.
  void add_drifts() {
    std::set<double> times;
    for (const netlist::Reading& reading : system_.readings) {
      if (reading.minutes) {
        times.insert(*reading.minutes);
      }
    }
    for (auto time = times.begin(); time != times.end(); ++time) {
      if (time == times.begin()) {
        continue;
      }
      const double root = std::sqrt(*time - *std::prev(time));
      for (const auto& [id, emf] : survey_.emf_parameter) {
        const double volts = model().parameters[static_cast<std::size_t>(emf)].centre;
        drifts_.emplace_back(*time,
                             add_unknown(Kind::drift, id, drift_sd_per_root_minute * root * volts, emf));
      }
    }
  }

  // Readings without a time are taken to be of the first.
  std::vector<int> drifts_until(const netlist::Reading& reading) const {
    std::vector<int> out;
    for (const auto& [time, parameter] : drifts_) {
      if (reading.minutes && *reading.minutes >= time) {
        out.push_back(parameter);
      }
    }
    return out;
  }

  int case_of(const std::string& name) const {
    for (std::size_t k = 0; k < survey_.networks.size(); ++k) {
      if (survey_.networks[k].case_name == name) {
        return static_cast<int>(k);
      }
    }
    return -1;
  }

  void add_reading(const netlist::Reading& reading, int index) {
    Observation out;
    out.reading = index;
    out.in_case = case_of(reading.in_case);
    out.wrong_log_odds = log_odds(wrong_reading_chance);
    if (!std::visit([&](const auto& what) { return look(what, out); }, reading.what)) {
      return;
    }
    const ReadingError error = reading_error(system_, reading);
    const std::string key = reading.meter + '/' + std::to_string(reading.what.index());
    out.measured = measured_value(reading);
    out.sigma = std::hypot(out.sigma, error.independent);
    out.gain = shared(gains_, Kind::gain, key, error.gain);
    out.zero = shared(zeros_, Kind::zero, key, error.zero);
    out.drifts = drifts_until(reading);
    model().observations.push_back(std::move(out));
  }

  const network::Network* network_of(const Observation& out) const {
    return out.in_case < 0 ? nullptr : &survey_.networks[static_cast<std::size_t>(out.in_case)];
  }

  bool look(const netlist::VoltsReading& r, Observation& out) {
    const network::Network* network = network_of(out);
    const auto red = network ? network->point(r.red) : std::nullopt;
    const auto black = network ? network->point(r.black) : std::nullopt;
    out.sight = Sight::voltage;
    out.red = red.value_or(-1);
    out.black = black.value_or(-1);
    out.sigma = 0;
    return red && black;
  }

  bool look(const netlist::AmpsReading& r, Observation& out) {
    const network::Network* network = network_of(out);
    const auto element = network ? network->element(r.in) : std::nullopt;
    out.sight = Sight::current;
    out.branch = element.value_or(-1);
    out.sigma = 0;
    return element.has_value();
  }

  bool look(const netlist::OhmsReading& r, Observation& out) {
    const network::Network& network = survey_.networks.front();
    const auto element = network.element(r.across);
    out.sight = Sight::resistance;
    out.in_case = -1;
    out.sigma = 0;
    if (!element) {
      return false;
    }
    const network::Element& across = network.elements[static_cast<std::size_t>(*element)];
    const auto known = survey_.element_parameter.find(across.id);
    if (known == survey_.element_parameter.end()) {
      return false;
    }
    out.parameter = known->second;
    if (across.heating) {
      out.factor = 1 + across.heating->temperature_coefficient * (across.heating->ambient.celsius() - 20);
    }
    return true;
  }

  // A wire's temperature tells its current; see the model at network::WireHeating.
  bool look(const netlist::TemperatureReading& r, Observation& out) {
    const network::Network* network = network_of(out);
    const auto element = network ? network->element(r.at) : std::nullopt;
    if (!element) {
      return false;
    }
    const network::Element& at = network->elements[static_cast<std::size_t>(*element)];
    if (!at.heating || at.heating->rated.si() <= 0) {
      return false;
    }
    out.sight = Sight::wire_temperature;
    out.branch = *element;
    // The place may be 3 K off the ambient of the file, and the rise is good to a quarter (common practice).
    const double rise = std::abs(measured_value_of(r) - at.heating->ambient.celsius());
    out.sigma = std::hypot(3.0, 0.25 * rise);
    return true;
  }

  static double measured_value_of(const netlist::TemperatureReading& r) { return r.value.celsius(); }

  // `resistance` of an element is one more four-wire reading.
  void add_given_resistances() {
    for (const network::Element& element : survey_.networks.front().elements) {
      const auto known = survey_.element_parameter.find(element.id);
      if (!element.as_found_given || known == survey_.element_parameter.end() ||
          element.role == network::Role::battery) {
        continue;
      }
      Observation out;
      out.sight = Sight::resistance;
      out.wrong_log_odds = log_odds(wrong_resistance_chance);
      out.parameter = known->second;
      out.measured = element.resistance.si();
      out.sigma =
          std::max(trade::usual_accuracy(element.resistance).bound(out.measured) / bound_over_sd, 1e-9);
      model().observations.push_back(std::move(out));
    }
  }

  void add_tested_batteries() {
    for (const network::Element& element : survey_.networks.front().elements) {
      if (element.role != network::Role::battery || !element.sound ||
          !resistance_was_tested(system_.batteries[element.origin.index])) {
        continue;
      }
      Observation out;
      out.sight = Sight::resistance;
      out.parameter = survey_.element_parameter.at(element.id);
      out.measured = element.resistance.si();
      out.sigma = tested_resistance_ln_sd * out.measured;
      model().observations.push_back(std::move(out));
    }
  }

  const netlist::System& system_;
  Survey& survey_;
  std::map<std::string, int> gains_, zeros_;
  std::vector<std::pair<double, int>> drifts_;  // time from which on, parameter
};

}  // namespace

void add_observations(const netlist::System& system, Survey& survey) {
  ObservationBuilder(system, survey).build();
}

}  // namespace ohmtrail::diagnose::inference
