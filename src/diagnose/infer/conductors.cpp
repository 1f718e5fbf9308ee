#include "diagnose/infer/conductors.hpp"

#include "diagnose/infer/together.hpp"
#include "ohmtrail/netlist/names.hpp"
#include "units/index.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

/// The unknowns of one conductor, in series from stud to stud.
struct Parts {
  InferredConductor row;
  std::vector<int> members;
};

void add_part(const Posterior& posterior, const network::Element& element, int p, Parts& parts) {
  parts.members.push_back(p);
  parts.row.parts.push_back(element.id);
  parts.row.sound_resistance += element.sound->si() * posterior.survey.display_factor[at(p)];
  parts.row.informed = parts.row.informed || posterior.informed[at(p)] != 0;
}

std::vector<Parts> parts_of_conductors(const Posterior& posterior) {
  std::vector<Parts> out;
  for (const network::Element& element : posterior.survey.networks.front().elements) {
    const auto known = posterior.survey.element_parameter.find(element.id);
    if (element.origin.section != network::Section::runs || !element.sound ||
        known == posterior.survey.element_parameter.end())
      continue;
    const std::string id = repair_of(element.id);
    if (out.empty() || out.back().row.id != id) {
      out.emplace_back();
      out.back().row.id = id;
      out.back().row.informed = false;
    }
    add_part(posterior, element, known->second, out.back());
  }
  return out;
}

}  // namespace

std::string repair_of(const std::string& element) {
  const netlist::SplitName name = netlist::split_element_name(element);
  if (name.part.empty()) return element;
  return name.part.starts_with("return") ? std::string(name.owner) + "/return" : std::string(name.owner);
}

std::vector<InferredConductor> describe_conductors(const Posterior& posterior) {
  const Together together(posterior);
  std::vector<InferredConductor> out;
  for (Parts& parts : parts_of_conductors(posterior)) {
    const Spread ohms = together.sum(parts.members);
    parts.row.resistance = ohms.median;
    parts.row.low = ohms.low;
    parts.row.high = ohms.high;
    parts.row.fault_probability = together.any_faulty(parts.members);
    out.push_back(std::move(parts.row));
  }
  return out;
}

}  // namespace ohmtrail::diagnose::inference

namespace ohmtrail::diagnose {

std::string conductor_in_words(const std::string& id) {
  const netlist::SplitName name = netlist::split_element_name(id);
  const char* cable = name.part.empty() ? "the cable" : "the return cable of";
  return std::string(cable) + " \"" + std::string(name.owner) + "\" with its lugs";
}

}  // namespace ohmtrail::diagnose
