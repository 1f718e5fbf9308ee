#include "ohmtrail/network/network.hpp"

#include <algorithm>

namespace ohmtrail::network {

std::optional<int> Network::point(const std::string& name) const {
  const auto found = std::find(points.begin(), points.end(), name);
  if (found == points.end()) return std::nullopt;
  return static_cast<int>(found - points.begin());
}

std::optional<int> Network::element(const std::string& id) const {
  const auto named = [&](const std::string& wanted) {
    return std::find_if(elements.begin(), elements.end(), [&](const Element& e) { return e.id == wanted; });
  };
  auto found = named(id);
  if (found == elements.end()) found = named(id + "/wire");
  if (found == elements.end()) return std::nullopt;
  return static_cast<int>(found - elements.begin());
}

}  // namespace ohmtrail::network
