#pragma once
#include <list>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "netlist/key.hpp"
#include "netlist/tree.hpp"

namespace ohmtrail::netlist {

/// Edits to one value of a tree, laid over it. Default: none.
struct Patch {
  bool removed = false;
  std::optional<Json> value;  ///< stands in the place of the whole value
  std::list<std::pair<std::string, Patch>>
      members;                         ///< of an object, as first edited; a list: others point into it
  std::map<std::size_t, Patch> items;  ///< of an array
  std::vector<Json> appended;          ///< to an array

  Patch& member(std::string_view key);
  [[nodiscard]] const Patch* find(std::string_view key) const;
};

/// The text of a value with its edits. Unedited parts keep their bytes.
void print_patched(Value value, const Patch& patch, std::string& out);

}  // namespace ohmtrail::netlist
