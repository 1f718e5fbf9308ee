#pragma once
#include <string>
#include <tl/expected.hpp>

#include "netlist/tree.hpp"

namespace ohmtrail::netlist {

/// Deeper than any netlist: the format itself nests six deep.
inline constexpr std::size_t deepest_nesting = 64;

/// Why a text is no JSON.
struct SyntaxError {
  std::string name;      ///< stable kebab-case name
  std::uint32_t offset;  ///< the byte where it was noticed
  std::string pointer;   ///< the value being read
  std::string text, expected, hint;
};

/// The tree of a JSON text of at most 64 MiB. Never recursive: depth costs no stack.
[[nodiscard]] tl::expected<Tree, SyntaxError> parse(std::string_view text);

/// The same without the short way for texts that are plainly right.
[[nodiscard]] tl::expected<Tree, SyntaxError> parse_in_full(std::string_view text);

}  // namespace ohmtrail::netlist
