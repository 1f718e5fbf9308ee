#include "ohmtrail/diagnose/infer.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <tuple>

#include "diagnose/infer/conductors.hpp"
#include "diagnose/infer/describe.hpp"
#include "diagnose/infer/groups.hpp"
#include "diagnose/infer/priors.hpp"
#include "diagnose/infer/slips.hpp"

namespace ohmtrail::diagnose {
namespace {

struct Suspect {
  double probability, excess;
  std::string id;
};

// Every element and battery by falling fault probability; of equal ones the one with more excess resistance
// first.
std::vector<std::string> suspects_of(const InferResult& result) {
  std::vector<Suspect> order;
  for (const InferredElement& element : result.elements) {
    const double excess = element.resistance - element.sound_resistance;
    order.push_back({element.fault_probability, std::isnan(excess) ? 0 : excess, element.id});
  }
  for (const InferredBattery& battery : result.batteries) {
    order.push_back({battery.fault_probability, 0, battery.id});
  }
  std::stable_sort(order.begin(), order.end(), [](const Suspect& a, const Suspect& b) {
    return std::tie(a.probability, a.excess) > std::tie(b.probability, b.excess);
  });
  std::vector<std::string> out;
  for (Suspect& suspect : order) {
    out.push_back(std::move(suspect.id));
  }
  return out;
}

// What shaped the result without being in the file.
std::vector<network::Assumption> assumptions_of(const netlist::System& system, const InferResult& result) {
  std::vector<network::Assumption> out;
  const bool usual_meter = std::any_of(system.readings.begin(), system.readings.end(),
                                       [](const netlist::Reading& reading) { return reading.meter.empty(); });
  if (usual_meter) {
    out.push_back({"system", "accuracy of the usual hand meter where a reading names no meter", {}});
  }
  if (!result.readings.empty()) {
    out.push_back({"system", "chance that a reading is simply wrong", inference::wrong_reading_chance,
                   network::Assumed::chance});
  }
  for (const InferredReading& reading : result.readings) {
    if (std::isnan(reading.predicted)) {
      out.push_back(
          {"system",
           "reading " + std::to_string(reading.index + 1) +
               " was left out: a temperature tells something of a wire that heats, or of a connection that "
               "cables lead away from",
           {}});
    }
  }
  return out;
}

}  // namespace

tl::expected<InferResult, InferFailure> infer(const netlist::System& system, const InferOptions& options) {
  const auto posterior = inference::find_posterior(inference::build_survey(system), options);
  if (!posterior) {
    return tl::unexpected(
        InferFailure{"no network with loads and resistances near those of the file has a solution",
                     "solve it first; check the sizes of the loads and the readings"});
  }
  posterior->survey.display_factor =
      inference::display_factors(posterior->survey, posterior->components.front().optimum);
  InferResult out;
  out.elements = inference::describe_elements(*posterior);
  out.batteries = inference::describe_batteries(*posterior);
  out.conductors = inference::describe_conductors(*posterior);
  out.loads = inference::describe_loads(*posterior);
  out.readings = inference::describe_readings(system, *posterior);
  inference::find_slips(system, *posterior, out.readings);
  out.unresolved = inference::describe_groups(*posterior);
  out.explanations = inference::describe_explanations(*posterior);
  out.fit = inference::describe_fit(*posterior);
  out.suspects = suspects_of(out);
  out.left_out = posterior->left_out;
  out.assumptions = assumptions_of(system, out);
  out.posterior = posterior;
  return out;
}

}  // namespace ohmtrail::diagnose
