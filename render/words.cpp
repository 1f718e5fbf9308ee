#include "render/words.hpp"

#include <algorithm>
#include <array>

#include "render/lettering.hpp"
#include "render/text.hpp"

namespace ohmtrail::render {
namespace {

std::string in_run(const netlist::System& system, const netlist::Run& run, std::string_view part,
                   bool with_place) {
  const bool back = part.starts_with("return");
  if (part.ends_with("wire")) return filled(back ? text::where_return_wire : text::where_wire, run.id);
  const bool at_from = part.find("from") != std::string_view::npos;
  const std::string& point = back && run.return_conductor
                                 ? (at_from ? run.return_conductor->from : run.return_conductor->to)
                                 : (at_from ? run.from : run.to);
  return filled(back ? text::where_return_end : text::where_end, run.id,
                with_place ? point_in_words(system, point) : point);
}

/// The one with this id; nullptr: none.
template <class T>
const T* named(const std::vector<T>& things, std::string_view id) {
  const auto found =
      std::find_if(things.begin(), things.end(), [&](const T& thing) { return thing.id == id; });
  return found == things.end() ? nullptr : &*found;
}

/// A battery whose name does not say that it is one.
bool is_bare_battery(const netlist::System& system, const std::string& id) {
  return id.find(text::battery_word) == std::string::npos && named(system.batteries, id);
}

std::string placed(const netlist::System& system, const std::string& element_id, bool with_place) {
  const std::size_t slash = element_id.rfind('/');
  if (slash == std::string::npos)
    return is_bare_battery(system, element_id) ? filled(text::where_battery, element_id) : element_id;
  const std::string owner = element_id.substr(0, slash);
  const std::string_view part = std::string_view(element_id).substr(slash + 1);
  if (const netlist::Run* run = named(system.runs, owner)) return in_run(system, *run, part, with_place);
  if (named(system.converters, owner))
    return filled(part == "in" ? text::where_input : text::where_output, owner);
  return element_id;
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

std::string point_in_words(const netlist::System& system, const std::string& point) {
  const auto known = system.points.find(point);
  if (known == system.points.end() || known->second.place.empty()) return point;
  return filled(text::where_place, point, known->second.place);
}

std::string ends_in_words(const netlist::System& system, std::string_view text) {
  std::string told;
  while (!text.empty()) {
    const std::size_t begin = text.find('"');
    const std::size_t end = begin == std::string_view::npos ? begin : text.find('"', begin + 1);
    if (end == std::string_view::npos) break;
    const std::string_view name = text.substr(begin + 1, end - begin - 1);
    const std::size_t at = name.rfind('@');
    const netlist::Run* run = at == std::string_view::npos ? nullptr : named(system.runs, name.substr(0, at));
    told += text.substr(0, begin);
    told += run ? in_run(system, *run, name.substr(at + 1), true) : "\"" + std::string(name) + "\"";
    text.remove_prefix(end + 1);
  }
  return told + std::string(text);
}

Source source_of(const netlist::System& system, const std::string& element_id) {
  if (named(system.chargers, element_id)) return Source::charger;
  const std::size_t slash = element_id.rfind('/');
  const bool part = slash != std::string::npos;
  return part && named(system.converters, element_id.substr(0, slash)) ? Source::converter : Source::battery;
}

const SourceWords& words_of(Source source) {
  static constexpr std::array<SourceWords, 3> all{
      {{text::battery, text::in_the_battery, text::part_battery},
       {text::charger, text::in_the_charger, text::part_charger},
       {text::converter, text::in_the_converter, text::part_converter}}};
  return all.at(static_cast<std::size_t>(source));
}

std::string source_in_words(const netlist::System& system, const std::string& element_id) {
  return source_of(system, element_id) == Source::converter ? element_id.substr(0, element_id.rfind('/'))
                                                            : element_id;
}

std::string where(const netlist::System& system, const std::string& element_id) {
  return placed(system, element_id, true);
}

std::string where_conductor(const std::string& conductor_id) {
  const std::size_t slash = conductor_id.rfind('/');
  return slash == std::string::npos ? filled(text::where_cable, conductor_id)
                                    : filled(text::where_return_cable, conductor_id.substr(0, slash));
}

std::string listed(const netlist::System& system, const std::vector<std::string>& element_ids,
                   std::size_t most) {
  std::string list;
  for (std::size_t k = 0; k < std::min(most, element_ids.size()); ++k)
    list += (k ? "; " : "") + where(system, element_ids[k]);
  return element_ids.size() > most ? filled(text::and_more, list, element_ids.size() - most) : list;
}

std::string where_fitting(const netlist::System& system, const std::string& element_id, double size,
                          double width) {
  std::string whole = placed(system, element_id, true);
  if (measure(whole, size).width <= width) return whole;
  return fitted(placed(system, element_id, false), size, false, width);
}

}  // namespace ohmtrail::render
