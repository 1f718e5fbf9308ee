#include "ohmtrail/diagnose/infer.hpp"

#include <algorithm>

#include "diagnose/infer/describe.hpp"

namespace ohmtrail::diagnose {
namespace {

// Every element and battery by falling fault probability; ties keep file order, batteries last.
std::vector<std::string> suspects_of(const InferResult& result) {
  std::vector<std::pair<double, std::string>> order;
  for (const InferredElement& element : result.elements) {
    order.emplace_back(element.fault_probability, element.id);
  }
  for (const InferredBattery& battery : result.batteries) {
    order.emplace_back(battery.fault_probability, battery.id);
  }
  std::stable_sort(order.begin(), order.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
  std::vector<std::string> out;
  for (auto& [probability, id] : order) {
    out.push_back(std::move(id));
  }
  return out;
}

}  // namespace

tl::expected<InferResult, InferFailure> infer(const netlist::System& system, const InferOptions& options) {
  const auto posterior = inference::find_posterior(inference::build_survey(system), options);
  if (!posterior) {
    return tl::unexpected(InferFailure{"no network with loads and resistances near those of the file has a solution",
                                       "solve it first; check the sizes of the loads and the readings"});
  }
  posterior->survey.display_factor = inference::display_factors(posterior->survey, posterior->components.front().optimum);
  InferResult out;
  out.elements = inference::describe_elements(*posterior);
  out.batteries = inference::describe_batteries(*posterior);
  out.loads = inference::describe_loads(*posterior);
  out.readings = inference::describe_readings(system, *posterior);
  out.explanations = inference::describe_explanations(*posterior);
  out.fit = inference::describe_fit(*posterior);
  out.suspects = suspects_of(out);
  out.left_out = posterior->left_out;
  out.posterior = posterior;
  return out;
}

}  // namespace ohmtrail::diagnose
