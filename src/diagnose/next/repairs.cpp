#include "diagnose/next/repairs.hpp"

#include <algorithm>
#include <cmath>

#include "diagnose/infer/together.hpp"
#include "ohmtrail/netlist/names.hpp"

namespace ohmtrail::diagnose::next {
namespace {

using inference::Kind;
using inference::Parameter;

void mark_read(const netlist::System& system, const network::Network& network,
               std::vector<RepairChance>& repairs) {
  const auto points = points_of_repairs(network);
  for (const netlist::Reading& reading : system.readings) {
    const auto* volts = std::get_if<netlist::VoltsReading>(&reading.what);
    if (volts == nullptr || volts->red == volts->black) continue;
    for (RepairChance& repair : repairs) {
      const auto found = points.find(repair.id);
      if (found == points.end()) continue;
      const auto has = [&](const std::string& p) {
        return std::find(found->second.begin(), found->second.end(), p) != found->second.end();
      };
      repair.read_across = repair.read_across || (has(volts->red) && has(volts->black));
    }
  }
}

// By four wires, as a reading or as the `resistance` of an element.
void mark_read_by_four_wires(const inference::Model& model, std::vector<RepairChance>& repairs) {
  std::set<std::string> read;
  for (const inference::Observation& one : model.observations) {
    if (one.sight != inference::Sight::resistance) continue;
    const inference::Parameter& unknown = model.parameters[static_cast<std::size_t>(one.parameter)];
    if (unknown.kind == inference::Kind::element || one.reading >= 0) read.insert(repair_of(unknown.id));
  }
  for (RepairChance& repair : repairs) repair.read_across = repair.read_across || read.contains(repair.id);
}

}  // namespace

std::string repair_in_words(const netlist::System& system, const std::string& repair) {
  const std::string quoted = '"' + repair + '"';
  const auto among = [&](const auto& items) {
    return std::any_of(items.begin(), items.end(), [&](const auto& item) { return item.id == repair; });
  };
  const bool part = !netlist::split_element_name(repair).part.empty();
  if (part || among(system.runs)) return conductor_in_words(repair);
  if (among(system.batteries)) return "the battery " + quoted;
  if (among(system.joints)) return "the joint " + quoted;
  if (among(system.switches)) return "the switch " + quoted;
  return (among(system.fuses) ? "the fuse " : "") + quoted;
}

std::map<std::string, std::vector<std::string>> points_of_repairs(const network::Network& network) {
  std::map<std::string, std::vector<std::string>> out;
  for (const network::Element& element : network.elements) {
    if (element.role == network::Role::load || element.role == network::Role::charger) continue;
    auto& points = out[repair_of(element.id)];
    for (const int p : {element.from, element.to}) {
      points.push_back(network.points[static_cast<std::size_t>(p)]);
    }
  }
  return out;
}

std::vector<RepairChance> repair_chances(const netlist::System& system, const Posterior& posterior) {
  struct Members {
    std::vector<int> parameters;
    std::vector<std::string> ids;
  };
  std::map<std::string, Members> members;
  std::vector<std::string> order;
  for (std::size_t p = 0; p < posterior.model().parameters.size(); ++p) {
    const Parameter& parameter = posterior.model().parameters[p];
    if (!parameter.fault) continue;
    const std::string repair = repair_of(parameter.id);
    if (!members.contains(repair)) order.push_back(repair);
    members[repair].parameters.push_back(static_cast<int>(p));
    if (parameter.kind != Kind::emf) members[repair].ids.push_back(parameter.id);
  }
  const inference::Together together(posterior);
  std::vector<RepairChance> out;
  for (const std::string& id : order) {
    out.push_back({id, repair_in_words(system, id), together.any_faulty(members[id].parameters),
                   members[id].ids, false});
  }
  std::stable_sort(out.begin(), out.end(), [](const RepairChance& a, const RepairChance& b) {
    return a.probability > b.probability;
  });
  mark_read(system, posterior.survey.networks.front(), out);
  mark_read_by_four_wires(posterior.model(), out);
  return out;
}

double chance_of_nothing(const Posterior& posterior) {
  const inference::Together together(posterior);
  double none = 0;
  for (const Posterior::Alternative& one : posterior.alternatives) {
    none += one.hypothesis.faulty.empty() ? one.share : 0;
  }
  for (std::size_t p = 0; p < posterior.fault.size(); ++p) {
    // What no reading informs says nothing of the complaint.
    const bool bystander = posterior.informed[p] != 0 && !together.enumerated(static_cast<int>(p));
    if (bystander) none *= 1 - posterior.fault[p];
  }
  return none;
}

}  // namespace ohmtrail::diagnose::next
