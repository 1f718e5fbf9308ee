#pragma once
#include "netlist/key.hpp"

namespace ohmtrail::netlist {

/// At most this many characters in an id, a point, a case or a meter name.
inline constexpr std::size_t longest_name = 80;

/// Where a name is first given, `/` and `@` are reserved; where it is referred to they make derived names.
enum class NameUse { definition, reference };

/// Checks length and characters; tells the mistake and gives false.
bool tell_bad_name(Reader& reader, Value value, std::string_view name, NameUse use);

[[nodiscard]] std::size_t character_count(std::string_view utf8);
/// C0, delete and C1 controls, and the line and paragraph separators.
[[nodiscard]] bool has_control_character(std::string_view utf8);

}  // namespace ohmtrail::netlist
