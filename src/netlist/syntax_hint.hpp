#pragma once
#include "netlist/parse.hpp"

namespace ohmtrail::netlist {

/// What the parser knows when it stops.
struct SyntaxStop {
  std::string_view text;
  std::uint32_t read_to;     ///< bytes consumed
  std::uint32_t done;        ///< end of the last good token
  std::string_view token;    ///< the token as read so far
  std::string_view message;  ///< the parser's own words
  std::string pointer;
  Kind inside;  ///< the innermost open container; null at the top
};

/// The parser's stop in the words of this format, with a hint for the likely slip.
[[nodiscard]] SyntaxError explain_syntax(const SyntaxStop& stop);

}  // namespace ohmtrail::netlist
