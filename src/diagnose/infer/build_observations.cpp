#include "diagnose/infer/build_observations.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "diagnose/infer/given_resistances.hpp"
#include "diagnose/infer/priors.hpp"
#include "diagnose/infer/reading_error.hpp"
#include "diagnose/infer/temperature_sight.hpp"

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
    add_given_resistances(system_, survey_);
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
    out.measured = measured_value(reading) - out.above;
    out.sigma = std::hypot(out.sigma, error.independent);
    if (out.gain < 0) out.gain = shared(gains_, Kind::gain, key, error.gain);
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

  // A wire's temperature tells its current, a connection's the heat that it gives off.
  bool look(const netlist::TemperatureReading& r, Observation& out) {
    const network::Network* network = network_of(out);
    const auto element = network ? network->element(r.at) : std::nullopt;
    if (!element) {
      return false;
    }
    const network::Element& at = network->elements[static_cast<std::size_t>(*element)];
    out.branch = *element;
    return is_contact(at.role) ? look_at_joint(r, *network, out) : look_at_wire(r, at, out);
  }

  // What is read is the rise above the ambient of the file. How it leaves the place is known to a factor, one
  // and the same at every reading of that place.
  void rise_above(double ambient, const std::string& place, double relative_sd, Observation& out) {
    out.above = ambient;
    out.sigma = 3;
    out.gain = shared(gains_, Kind::gain, "rise at " + place, relative_sd);
  }

  // The place may be 3 K off the ambient of the file, and the rise of a wire is good to a quarter (common
  // practice).
  bool look_at_wire(const netlist::TemperatureReading& r, const network::Element& wire, Observation& out) {
    if (!wire.heating || wire.heating->rated.si() <= 0) {
      return false;
    }
    out.sight = Sight::wire_temperature;
    rise_above(wire.heating->ambient.celsius(), r.at, 0.25, out);
    return true;
  }

  // Fins without end in still air: the rise is good to three tenths (common practice); a draught or a conduit
  // does that much.
  bool look_at_joint(const netlist::TemperatureReading& r, const network::Network& network,
                     Observation& out) {
    JointSight joint = joint_sight(system_, network, out.branch);
    if (joint.fins.empty() || joint.contacts.empty()) {
      return false;
    }
    out.sight = Sight::joint_temperature;
    rise_above(joint.ambient, r.at, 0.3, out);
    out.joint = static_cast<int>(model().joints.size());
    model().joints.push_back(std::move(joint));
    return true;
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
