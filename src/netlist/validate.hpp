#pragma once
#include "netlist/key.hpp"
#include "ohmtrail/netlist/names.hpp"
#include "ohmtrail/netlist/system.hpp"

/// What the keys of different sections say of each other.
namespace ohmtrail::netlist {

/// Checks every name that is given or referred to, and fills in what depends on it: the case `all-on` where
/// there is none, `inrush` and `stall` in cases, the ends that readings open.
void validate(Reader& reader, Value root, System& system);

/// What the parts of the check share.
struct Checked {
  Reader& reader;
  Value root;
  System& system;
  const Names& names;
  /// Whether all sections, ids or points could be read: if not, an unknown name is no mistake of its own.
  bool sections_complete = true, ids_complete = true, points_complete = true;
};

void validate_elements(const Checked& checked);
void validate_points(const Checked& checked);
void validate_cases(const Checked& checked);
void validate_readings(const Checked& checked);

/// Calls `visit(value, item)` for every item of a section, together with the value it was read from.
template <class Item, class Visit>
void for_each_item(Value root, std::string_view section, std::vector<Item>& items, Visit visit) {
  std::size_t i = 0;
  for (const Value value : root.member(section).children()) {
    if (i < items.size()) visit(value, items[i]);
    ++i;
  }
}

/// Tells that no element has this name.
void tell_unknown_element(const Checked& checked, Value at, std::string_view name);
/// Tells that no point has this name.
void tell_unknown_point(const Checked& checked, Value at, std::string_view name);
/// Tells that `name` is none of `known`, which are called `what`.
void tell_unknown_name(Reader& reader, Value at, std::string_view kind, std::string_view what,
                       std::string_view name, const std::vector<std::string_view>& known);

}  // namespace ohmtrail::netlist
