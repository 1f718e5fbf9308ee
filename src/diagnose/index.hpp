#pragma once
#include <cstddef>
#include <vector>

namespace ohmtrail::diagnose {

/// Networks and solutions count with ints, −1 for none; this is the one place where they become positions.
template <class T>
[[nodiscard]] decltype(auto) at(const std::vector<T>& values, int index) {
  return values[static_cast<std::size_t>(index)];
}

template <class T>
[[nodiscard]] decltype(auto) at(std::vector<T>& values, int index) {
  return values[static_cast<std::size_t>(index)];
}

}  // namespace ohmtrail::diagnose
