#pragma once
#include "netlist/patch.hpp"

namespace ohmtrail::netlist {

/// One value of a file as it stands after the edits made so far: either one of the tree with edits laid over
/// it, or part of a value that an edit has put there.
struct Target {
  Value value;   ///< may not exist
  Patch* patch;  ///< null within a new value
  Json* json;    ///< the new value; null where there is none

  [[nodiscard]] bool is_object() const;
  /// The member of an object; missing ones can be given a value by `replace`.
  [[nodiscard]] Target member(std::string_view key) const;
  /// The same, made an empty object where there is none.
  [[nodiscard]] Target member_object(std::string_view key) const;

  void replace(Json by) const;
  void set(std::string_view key, Json by) const { member(key).replace(std::move(by)); }
  void remove(std::string_view key) const;
  /// Puts an item behind the list `key`, which is made where there is none.
  void append(std::string_view key, Json item) const;
};

}  // namespace ohmtrail::netlist
