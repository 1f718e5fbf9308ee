#pragma once
#include <string_view>

namespace ohmtrail::netlist {

/// The sections of a file that hold elements, in the order in which results list them.
enum class Section {
  batteries,
  chargers,
  runs,
  joints,
  switches,
  fuses,
  shunts,
  isolators,
  loads,
  converters
};

/// The key of the section in a file.
[[nodiscard]] std::string_view section_key(Section section);

}  // namespace ohmtrail::netlist
