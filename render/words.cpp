#include "render/words.hpp"

#include <algorithm>

#include "render/text.hpp"

namespace ohmtrail::render {
namespace {

std::string in_run(const netlist::System& system, const netlist::Run& run, std::string_view part) {
  const bool back = part.starts_with("return");
  if (part.ends_with("wire")) return filled(back ? text::where_return_wire : text::where_wire, run.id);
  const bool at_from = part.find("from") != std::string_view::npos;
  const std::string& point = back && run.return_conductor
                                 ? (at_from ? run.return_conductor->from : run.return_conductor->to)
                                 : (at_from ? run.from : run.to);
  return filled(back ? text::where_return_end : text::where_end, run.id, point_in_words(system, point));
}

}  // namespace

std::string sentence(std::string words) {
  if (!words.empty() && words[0] >= 'a' && words[0] <= 'z')
    words[0] = static_cast<char>(words[0] - 'a' + 'A');
  return words;
}

std::string_view what_it_is(diagnose::Cause cause) {
  switch (cause) {
    case diagnose::Cause::corroded_conductor:
      return text::cause_corroded_conductor;
    case diagnose::Cause::bad_termination:
      return text::cause_bad_termination;
    case diagnose::Cause::bad_joint:
      return text::cause_bad_joint;
    case diagnose::Cause::worn_contact:
      return text::cause_worn_contact;
    case diagnose::Cause::undersized:
      return text::cause_undersized;
    case diagnose::Cause::weak_battery:
      return text::cause_weak_battery;
    case diagnose::Cause::discharged_battery:
      break;
  }
  return text::cause_discharged_battery;
}

std::string_view rank_in_words(diagnose::Severity severity) {
  switch (severity) {
    case diagnose::Severity::before_further_use:
      return text::rank_urgent;
    case diagnose::Severity::soon:
      return text::rank_soon;
    case diagnose::Severity::improvement:
      break;
  }
  return text::rank_improvement;
}

namespace {

/// A battery whose name does not say that it is one.
bool is_bare_battery(const netlist::System& system, const std::string& id) {
  return id.find(text::battery_word) == std::string::npos &&
         std::any_of(system.batteries.begin(), system.batteries.end(),
                     [&](const netlist::Battery& battery) { return battery.id == id; });
}

}  // namespace

std::string point_in_words(const netlist::System& system, const std::string& point) {
  const auto known = system.points.find(point);
  if (known == system.points.end() || known->second.place.empty()) return point;
  return filled(text::where_place, point, known->second.place);
}

std::string where(const netlist::System& system, const std::string& element_id) {
  const std::size_t slash = element_id.rfind('/');
  if (slash == std::string::npos)
    return is_bare_battery(system, element_id) ? filled(text::where_battery, element_id) : element_id;
  const std::string run_id = element_id.substr(0, slash);
  const auto run = std::find_if(system.runs.begin(), system.runs.end(),
                                [&](const netlist::Run& candidate) { return candidate.id == run_id; });
  return run == system.runs.end() ? element_id
                                  : in_run(system, *run, std::string_view(element_id).substr(slash + 1));
}

}  // namespace ohmtrail::render
