#include "diagnose/next/outlook.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include "diagnose/next/places.hpp"
#include "diagnose/next/repairs.hpp"

namespace ohmtrail::diagnose::next {
namespace {

using inference::Hypothesis;
using inference::Kind;
using inference::Model;
using inference::Normal;
using inference::Optimum;
using inference::Parameter;

constexpr double worth_a_state = 5e-4;

// A hypothesis that is to be foretold from.
struct Wanted {
  Hypothesis hypothesis;
  double weight = 0;
  std::size_t component = 0;
};

bool is_in(const std::set<int>& set, std::size_t p) {
  return set.contains(static_cast<int>(p));
}

// Faults that explain nothing yet are hypotheses all the same: each joins the likeliest of the others.
void add_bystanders(const Posterior& posterior, std::vector<Wanted>& wanted) {
  std::set<int> listed;
  for (const Wanted& one : wanted) listed.insert(one.hypothesis.faulty.begin(), one.hypothesis.faulty.end());
  const Wanted top = wanted.front();
  // What no reading says anything of is worth a look only while nothing else explains the complaint.
  const bool fault_evident = chance_of_nothing(posterior) < 0.2;
  for (std::size_t p = 0; p < posterior.fault.size(); ++p) {
    const double chance = posterior.fault[p];
    if (!posterior.model().parameters[p].fault || is_in(listed, p) || chance <= 0) continue;
    if (posterior.informed[p] == 0 && fault_evident) continue;
    wanted.push_back({top.hypothesis.with_toggled_parameter(static_cast<int>(p)),
                      top.weight * chance / std::max(1 - chance, 0.05), top.component});
  }
}

// Sets of faults come in crowds of nearly equal chance: cutting through one would favour those first in the
// file. So where there are too many, sets larger than the likeliest must be likely each.
void drop_unlikely_crowds(std::vector<Wanted>& wanted) {
  const Wanted top = wanted.front();
  std::erase_if(wanted, [&](const Wanted& one) {
    return one.hypothesis.faulty.size() > std::max<std::size_t>(1, top.hypothesis.faulty.size()) &&
           one.weight < 0.1 * top.weight;
  });
}

// Single faults come in crowds too where the system is large: of those that are too light to stand alone, one
// in every stretch of the network stands for its neighbours, with their weight.
std::vector<Wanted> sampled(std::vector<Wanted> wanted, std::size_t most) {
  std::stable_sort(wanted.begin(), wanted.end(), [](const Wanted& a, const Wanted& b) {
    return std::tie(a.hypothesis.faulty, a.hypothesis.wrong) <
           std::tie(b.hypothesis.faulty, b.hypothesis.wrong);
  });
  std::vector<double> weights;
  for (const Wanted& one : wanted) weights.push_back(one.weight);
  const EqualSteps steps = at_equal_steps(weights, most);
  std::vector<Wanted> out;
  for (const std::size_t k : steps.at) {
    out.push_back(wanted[k]);
    out.back().weight = std::max(out.back().weight, steps.step);
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const Wanted& a, const Wanted& b) { return a.weight > b.weight; });
  return out;
}

std::vector<Wanted> wanted_states(const Posterior& posterior, std::size_t most) {
  std::vector<Wanted> out;
  for (const Posterior::Alternative& one : posterior.alternatives) {
    out.push_back({one.hypothesis, one.share, one.component});
  }
  add_bystanders(posterior, out);
  std::stable_sort(out.begin(), out.end(),
                   [](const Wanted& a, const Wanted& b) { return a.weight > b.weight; });
  if (out.size() > most) drop_unlikely_crowds(out);
  const double least = worth_a_state * out.front().weight;
  while (out.size() > 1 && out.back().weight < least) out.pop_back();
  return out.size() > most ? sampled(std::move(out), most) : out;
}

// Each hypothesis at its own optimum, in the neighbourhood of the nearest one that was optimised.
Optimum optimum_of(const Posterior& posterior, const Wanted& wanted) {
  const Optimum& near = posterior.components[wanted.component].optimum;
  Eigen::VectorXd start = near.x;
  const Eigen::VectorXd prior = inference::prior_means(posterior.model(), wanted.hypothesis);
  if (near.hypothesis == wanted.hypothesis) {
    // From the prior a hypothesis may reach a better place than along the way that it was found.
    Optimum again = inference::optimise_linear(posterior.model(), near.near, wanted.hypothesis, prior);
    return again.log_density > near.log_density + 0.01 ? again : near;
  }
  for (Eigen::Index p = 0; p < start.size(); ++p) {
    const int index = static_cast<int>(p);
    if (wanted.hypothesis.is_faulty(index) != near.hypothesis.is_faulty(index)) start[p] = prior[p];
  }
  return inference::optimise_linear(posterior.model(), near.near, wanted.hypothesis, start);
}

using Key = std::tuple<int, std::string, std::string>;

// Unknowns are told by kind, id and, for loads, case; drifts of one battery by their order.
std::vector<Key> keys_of(const Model& model) {
  std::map<std::string, int> drifts;
  std::vector<Key> out;
  for (const Parameter& p : model.parameters) {
    std::string place = p.in_case >= 0 ? model.cases[static_cast<std::size_t>(p.in_case)].name : "";
    if (p.kind == Kind::drift) place = std::to_string(drifts[p.id]++);
    out.emplace_back(static_cast<int>(p.kind), p.id, place);
  }
  return out;
}

// For every unknown of the wider model its place in the narrower one, or −1.
std::vector<int> places(const Model& wide, const Model& narrow) {
  std::map<Key, int> known;
  const std::vector<Key> keys = keys_of(narrow);
  for (std::size_t p = 0; p < keys.size(); ++p) known.emplace(keys[p], static_cast<int>(p));
  std::vector<int> out;
  for (const Key& key : keys_of(wide)) {
    const auto found = known.find(key);
    out.push_back(found == known.end() ? -1 : found->second);
  }
  return out;
}

class Maker {
 public:
  Maker(const netlist::System& system, const Posterior& posterior, const NextOptions& options)
      : posterior_(posterior), options_(options) {
    out_.system = system;
    out_.passed_over = options.passed_over;
  }

  Outlook make() {
    widen();
    place_ = places(out_.survey.model, posterior_.model());
    for (const Wanted& wanted : wanted_states(posterior_, options_.most_states)) add_state(wanted);
    make_sound();
    return std::move(out_);
  }

 private:
  void widen() {
    std::string wire;
    for (const network::Element& element : posterior_.survey.networks.front().elements) {
      if (element.role == network::Role::battery) wire = element.id;
    }
    const auto& batteries = out_.system.batteries;
    const std::string red = batteries.empty() ? out_.system.chargers.front().plus : batteries.front().plus;
    const std::string black =
        batteries.empty() ? out_.system.chargers.front().minus : batteries.front().minus;
    if (wire.empty()) wire = out_.system.chargers.front().id;
    const auto readings = out_.system.readings;
    for (const auto& reading : readings) {
      if (reading.minutes) latest_ = std::max(latest_.value_or(*reading.minutes), *reading.minutes);
      if (std::holds_alternative<netlist::VoltsReading>(reading.what)) out_.meter = reading.meter;
    }
    if (readings.empty() && !out_.system.meters.empty()) out_.meter = out_.system.meters.front().id;
    for (const netlist::Case& one : out_.system.cases) {
      add_reading(netlist::VoltsReading{units::Voltage{out_.system.info.nominal}, red, black}, one.name);
      add_reading(netlist::AmpsReading{units::Current{100}, wire}, one.name);
    }
    out_.survey = inference::build_survey(out_.system);
    out_.taken = static_cast<int>(readings.size());
    find_meter();
  }

  template <class What>
  void add_reading(What what, const std::string& in_case) {
    netlist::Reading reading;
    reading.what = what;
    reading.in_case = in_case;
    reading.meter = out_.meter;
    reading.minutes = latest_;
    out_.system.readings.push_back(reading);
  }

  void find_meter() {
    for (const inference::Observation& one : out_.survey.model.observations) {
      if (one.reading < out_.taken) continue;
      if (one.sight == inference::Sight::voltage) out_.volts_gain = one.gain;
      if (one.sight == inference::Sight::current) {
        out_.amps_gain = one.gain;
        out_.amps_zero = one.zero;
      }
    }
  }

  void add_state(const Wanted& wanted) {
    const Optimum optimum = optimum_of(posterior_, wanted);
    const Model& model = out_.survey.model;
    const auto n = static_cast<Eigen::Index>(model.parameters.size());
    const Eigen::Index m = optimum.residual.size();
    State state;
    state.weight = wanted.weight;
    state.x.resize(n);
    state.scale.resize(n);
    state.explained = Eigen::MatrixXd::Zero(n, optimum.fit.basis.cols());
    std::map<int, Eigen::Index> row;
    for (std::size_t k = 0; k < optimum.columns.size(); ++k) {
      row[optimum.columns[k]] = m + static_cast<Eigen::Index>(k);
    }
    for (Eigen::Index p = 0; p < n; ++p) {
      const Parameter& parameter = model.parameters[static_cast<std::size_t>(p)];
      const int old = place_[static_cast<std::size_t>(p)];
      const Normal& prior =
          old < 0 ? parameter.sound : inference::prior_of(posterior_.model(), optimum.hypothesis, old);
      state.x[p] = old < 0 ? prior.mean : optimum.x[old];
      state.scale[p] = parameter.slope(state.x[p]) * prior.sd;
      if (const auto found = row.find(old); old >= 0 && found != row.end()) {
        state.explained.row(p) = optimum.fit.basis.row(found->second);
      }
    }
    label(optimum.hypothesis, state);
    out_.states.push_back(std::move(state));
  }

  void label(const Hypothesis& hypothesis, State& state) {
    std::set<std::string> repairs;
    for (const int p : hypothesis.faulty) {
      repairs.insert(repair_of(posterior_.model().parameters[static_cast<std::size_t>(p)].id));
    }
    state.repairs.assign(repairs.begin(), repairs.end());
    state.label = labels_.emplace(state.repairs, static_cast<int>(labels_.size())).first->second;
  }

  // Loads and batteries as they are, every element as a good one.
  void make_sound() {
    out_.sound = out_.states.front().x;
    for (Eigen::Index p = 0; p < out_.sound.size(); ++p) {
      const Parameter& parameter = out_.survey.model.parameters[static_cast<std::size_t>(p)];
      if (parameter.kind == Kind::element) out_.sound[p] = parameter.sound.mean;
      if (parameter.kind != Kind::battery_resistance && parameter.kind != Kind::emf) continue;
      const auto& faulty = out_.states.front().repairs;
      if (std::find(faulty.begin(), faulty.end(), parameter.id) != faulty.end()) {
        out_.sound[p] = parameter.sound.mean;
      }
    }
  }

  const Posterior& posterior_;
  const NextOptions& options_;
  Outlook out_;
  std::optional<double> latest_;  // minutes at which the last reading was taken
  std::vector<int> place_;
  std::map<std::vector<std::string>, int> labels_;
};

}  // namespace

namespace {

bool is_resistive(const Outlook& outlook, int parameter, int in_case) {
  const auto& placements = outlook.survey.model.cases[static_cast<std::size_t>(in_case)].placements;
  return std::any_of(placements.begin(), placements.end(), [&](const inference::Placement& one) {
    return one.parameter == parameter && !one.on_size;
  });
}

}  // namespace

void lower_loads(Outlook& outlook, int in_case) {
  constexpr double step = -0.2231435513142097;  // ln 0.8
  const auto& parameters = outlook.survey.model.parameters;
  for (std::size_t p = 0; p < parameters.size(); ++p) {
    if (parameters[p].kind != Kind::load || parameters[p].in_case != in_case) continue;
    // A load that is a resistance takes less when it is larger.
    const double by = is_resistive(outlook, static_cast<int>(p), in_case) ? -step : step;
    const auto at = static_cast<Eigen::Index>(p);
    outlook.sound[at] += by;
    for (State& state : outlook.states) {
      state.x[at] += by;
      state.scale[at] *= std::exp(by);
    }
  }
}

Outlook make_outlook(const netlist::System& system, const Posterior& posterior, const NextOptions& options) {
  return Maker(system, posterior, options).make();
}

}  // namespace ohmtrail::diagnose::next
