#pragma once
#include <cassert>
#include <cstddef>

namespace ohmtrail {

/// A place in a vector from the signed number that elements, nodes and branches bear; −1, "none", is no
/// place.
[[nodiscard]] constexpr std::size_t at(int index) {
  assert(index >= 0);
  return static_cast<std::size_t>(index);
}

}  // namespace ohmtrail
