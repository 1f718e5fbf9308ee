#pragma once
#include "netlist/tree.hpp"

namespace ohmtrail::netlist {

/// Fills the tree of a text that is plainly right. False, with nothing kept, for all others: mistakes, which
/// the full parser explains, and what is rare in a netlist, which it reads: escapes, exponents, very long
/// numbers.
[[nodiscard]] bool scan(Tree& tree);

}  // namespace ohmtrail::netlist
