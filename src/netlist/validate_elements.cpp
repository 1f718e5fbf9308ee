#include <fmt/format.h>

#include <algorithm>
#include <unordered_map>
#include <unordered_set>

#include "netlist/nearest.hpp"
#include "netlist/object.hpp"
#include "netlist/terminals.hpp"
#include "netlist/validate.hpp"

namespace ohmtrail::netlist {

namespace {

using FirstUse = std::unordered_map<std::string_view, Value>;

void tell_taken(const Checked& checked, FirstUse& taken, Value at, std::string_view id) {
  if (id.empty() || !at.exists()) return;
  const auto [first, fresh] = taken.try_emplace(id, at);
  if (fresh) return;
  Remark remark{"duplicate-id", "", "", ""};
  if (checked.reader.problems.listing()) {
    remark.text = fmt::format("the id \"{}\" is already taken", shown(id));
    remark.expected = "an id that no other element has";
    remark.hint = "first given at " + first->second.pointer();
  }
  checked.reader.problems.error(at, std::move(remark));
}

void tell_same_point(const Checked& checked, Value holder, const TerminalPair& pair) {
  if (pair.first->empty() || *pair.first != *pair.second) return;
  checked.reader.problems.error(
      holder.member(pair.second_key),
      {"same-point",
       fmt::format("{} and {} are both \"{}\"", pair.first_key, pair.second_key, shown(*pair.first)),
       "two different points", "an element from a point to itself does nothing"});
}

using Stubs = std::unordered_set<std::string_view>;

void tell_dangling(const Checked& checked, const Stubs& stubs, Value at, std::string_view point) {
  if (point.empty() || !at.exists() || checked.names.terminals_at(point) != 1 || stubs.contains(point))
    return;
  Remark remark{"dangling-point", "", "", ""};
  if (checked.reader.problems.listing()) {
    std::vector<std::string_view> others;
    for (const std::string_view other : checked.names.point_names()) {
      if (other != point) others.push_back(other);
    }
    remark.text = fmt::format("only this element names the point \"{}\"", shown(point));
    remark.expected = "a point that another element names too, or one listed in \"stubs\"";
    remark.hint = did_you_mean(point, others);
  }
  checked.reader.problems.error(at, std::move(remark));
}

bool any_dangling(const Checked& checked, const Stubs& stubs) {
  const auto& counts = checked.names.terminal_counts();
  for (std::size_t k = 0; k < counts.size(); ++k) {
    if (counts[k] == 1 && !stubs.contains(checked.names.point_names()[k])) return true;
  }
  return false;
}

}  // namespace

void validate_elements(const Checked& checked) {
  FirstUse taken;
  const Names::Flaws& flaws = checked.names.flaws();
  const Stubs stubs(checked.system.stubs.begin(), checked.system.stubs.end());
  const bool find_dangling = checked.points_complete && any_dangling(checked, stubs);
  if (!flaws.same_id && !flaws.same_point && !find_dangling) return;
  for_each_section(checked.system, [&](Section section, auto& items) {
    for_each_item(checked.root, section_key(section), items, [&](Value value, const auto& item) {
      if (flaws.same_id) tell_taken(checked, taken, value.member("id"), item.id);
      for (const TerminalPair& pair : terminals(item)) {
        const Value holder = pair.inside.empty() ? value : value.member(pair.inside);
        tell_same_point(checked, holder, pair);
        if (!find_dangling) continue;
        tell_dangling(checked, stubs, holder.member(pair.first_key), *pair.first);
        tell_dangling(checked, stubs, holder.member(pair.second_key), *pair.second);
      }
    });
  });
}

void tell_unknown_element(const Checked& checked, Value at, std::string_view name) {
  if (!checked.ids_complete) return;
  const SplitName split = split_element_name(name);
  if (split.part.empty() || !checked.names.element(split.owner)) {
    tell_unknown_name(checked.reader, at, "unknown-element", "element", split.owner,
                      checked.names.element_ids());
    return;
  }
  const auto section = checked.names.element(split.owner)->section;
  const std::string parts = section == Section::runs ? "from, wire or to, with return- before it for a return"
                            : section == Section::converters ? "in or out"
                                                             : "no part: only runs and converters have parts";
  checked.reader.problems.error(
      at, {"unknown-element", fmt::format("\"{}\" has no part \"{}\"", shown(split.owner), shown(split.part)),
           parts, split.part.ends_with("-crimp") ? "only opened ends have a crimp of their own" : ""});
}

void tell_unknown_point(const Checked& checked, Value at, std::string_view name) {
  if (!checked.points_complete || !checked.ids_complete) return;
  const SplitName split = split_point_name(name);
  if (split.part.empty()) {
    tell_unknown_name(checked.reader, at, "unknown-point", "point", name, checked.names.point_names());
    return;
  }
  const auto place = checked.names.element(split.owner);
  if (!place) {
    tell_unknown_name(checked.reader, at, "unknown-point", "run", split.owner, checked.names.element_ids());
    return;
  }
  const bool run = place->section == Section::runs;
  checked.reader.problems.error(
      at, {"unknown-point", fmt::format("\"{}\" has no point \"{}\"", shown(split.owner), shown(split.part)),
           run ? "from, to, from-metal or to-metal, with return- before it for a return"
               : "a run: only runs have points of their own",
           ""});
}

void validate_points(const Checked& checked) {
  const auto check = [&](Value at, std::string_view name) {
    if (!name.empty() && at.exists() && !checked.names.has_point(name)) tell_unknown_point(checked, at, name);
  };
  check(checked.root.member("reference"), checked.system.reference);
  for_each_item(checked.root, "stubs", checked.system.stubs, check);
  for (const Value point : checked.root.member("points").children()) check(point, point.key());
}

}  // namespace ohmtrail::netlist
