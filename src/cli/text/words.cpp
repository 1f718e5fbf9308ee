#include "cli/text/words.hpp"

#include <fmt/format.h>

namespace ohmtrail::cli {
namespace {

using network::Part;

bool crimp(Part part) {
  return part == Part::from_crimp || part == Part::to_crimp || part == Part::return_from_crimp ||
         part == Part::return_to_crimp;
}

bool of_return(Part part) {
  return part >= Part::return_from && part <= Part::return_to;
}

/// The point that a probe can touch at this end of the run.
std::string end_point(const netlist::Run& run, Part part) {
  switch (part) {
    case Part::from:
    case Part::from_crimp:
      return run.from;
    case Part::to:
    case Part::to_crimp:
      return run.to;
    case Part::return_from:
    case Part::return_from_crimp:
      return run.return_conductor ? run.return_conductor->from : "";
    default:
      return run.return_conductor ? run.return_conductor->to : "";
  }
}

std::string place_of(const netlist::System& system, const std::string& point) {
  const auto found = system.points.find(point);
  if (found == system.points.end() || found->second.place.empty()) return "";
  return fmt::format(" ({})", found->second.place);
}

std::string of_run(const netlist::System& system, const network::Element& element) {
  const netlist::Run& run = system.runs[element.origin.index];
  const Part part = element.origin.part;
  const std::string name = fmt::format("{}\"{}\"", of_return(part) ? "the return of " : "", run.id);
  if (element.role == network::Role::wire)
    return fmt::format("the {}cable \"{}\"", of_return(part) ? "return " : "", run.id);
  const std::string point = end_point(run, part);
  return fmt::format("the {} of {} at \"{}\"{}", crimp(part) ? "crimp" : "lug", name, point,
                     place_of(system, point));
}

}  // namespace

std::string cause_in_words(diagnose::Cause cause) {
  using enum diagnose::Cause;
  switch (cause) {
    case corroded_conductor:
      return "corroded cable";
    case bad_termination:
      return "bad lug";
    case bad_joint:
      return "bad joint";
    case worn_contact:
      return "worn contact";
    case undersized:
      return "cable too thin";
    case weak_battery:
      return "weak battery";
    case discharged_battery:
      return "battery not full";
  }
  return "";
}

std::string capitalised(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string role_in_words(network::Role role) {
  using enum network::Role;
  switch (role) {
    case battery:
      return "battery";
    case charger:
      return "charger";
    case wire:
      return "cable";
    case termination:
      return "lug";
    case joint:
      return "joint";
    case switchgear:
      return "switch";
    case fuse:
      return "fuse";
    case shunt:
      return "shunt";
    case isolator:
      return "isolator";
    case load:
      return "load";
  }
  return "";
}

std::string where_in_words(const netlist::System& system, const network::Network& network,
                           const network::Element& element) {
  if (element.origin.section == network::Section::runs) return of_run(system, element);
  const std::string& from = network.points[static_cast<std::size_t>(element.from)];
  const std::string& to = network.points[static_cast<std::size_t>(element.to)];
  std::string place = place_of(system, from);
  if (place.empty()) place = place_of(system, to);
  return fmt::format("the {} \"{}\"{}", role_in_words(element.role), element.id, place);
}

}  // namespace ohmtrail::cli
