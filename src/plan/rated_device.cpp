#include "plan/rated_device.hpp"

#include <algorithm>

#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

std::vector<int> guarded_runs(const Guard& guard, const network::Network& network,
                              const std::vector<int>& place) {
  std::vector<int> runs;
  for (const int e : guard.elements) {
    const auto& origin = network.elements[at(e)].origin;
    if (origin.section != network::Section::runs || place[origin.index] < 0) continue;
    if (runs.empty() || runs.back() != place[origin.index]) runs.push_back(place[origin.index]);
  }
  return runs;
}

}  // namespace

std::vector<Device> devices_of(const DesignSpace& space, const network::Network& network,
                               const Guards& guards) {
  const std::vector<int> place = places_in_scope(space);
  std::vector<Device> devices;
  for (const Guard& guard : guards.devices) {
    Device device;
    device.element = guard.element;
    device.runs = guarded_runs(guard, network, place);
    if (device.runs.empty()) continue;
    for (const DeviceSpace& one : space.devices)
      if (one.element == guard.element)
        device.ladder = one.ladder, device.ohms = one.ohms, device.rated = one.rated;
    device.found_ohms = network.elements[at(guard.element)].resistance.si();
    devices.push_back(std::move(device));
  }
  return devices;
}

Interval Device::resistance(const Interval& ampacity) const {
  // The judge settles ratings at currents that move a little with them.
  constexpr double margin = 0.02;
  Interval found = Interval::none();
  const double least = 1.25 * most.low * (1 - margin), enough = 1.25 * most.high * (1 + margin);
  if (rated >= least && rated <= ampacity.high * (1 + margin)) found.include(found_ohms);
  if (rated < enough || rated > ampacity.low * (1 - 1e-9)) {
    const auto first = std::lower_bound(ladder.begin(), ladder.end(), least) - ladder.begin();
    for (auto r = static_cast<std::size_t>(first); r < ladder.size(); ++r) {
      if (ladder[r] > ampacity.high * (1 + margin)) break;
      found.include(ladder[r] == rated ? found_ohms : ohms[r]);
      if (ladder[r] >= enough) break;
    }
  }
  if (found.low > found.high) found.include(found_ohms);  // no rating serves: it is refused elsewhere
  return found;
}

}  // namespace ohmtrail::plan
