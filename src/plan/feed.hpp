#pragma once
#include <optional>
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"
#include "plan/guards.hpp"

/// How far along the ungrounded conductor each point is from a battery's post, and what lies beyond a wire
/// before the next fuse or breaker.
namespace ohmtrail::plan {

/// What a wire feeds on its far side up to the next devices.
struct Beyond {
  double longest = 0;                    ///< m, of conductor beyond the wire
  std::optional<double> nearest_device;  ///< m beyond the wire
  std::vector<int> devices;
  bool reaches_load = false;  ///< a load, a converter or a charger without a device before it
  bool dead_end = false;      ///< an end on which nothing stands
};

/// Where a wire takes its current from.
struct Source {
  bool battery = true;  ///< the post of a battery; false: a point where a thicker conductor branches
  double distance = 0;  ///< m along the conductor from there to the wire's far end
  int point = -1;
};

class Feed {
 public:
  Feed(const netlist::System& system, const network::Network& network, const Guards& guards);

  /// Metres from the nearest post without passing a device; infinite: behind one, or not fed.
  [[nodiscard]] double metres(int point) const { return metres_[static_cast<std::size_t>(point)]; }
  /// The end of the wire away from the batteries.
  [[nodiscard]] int far_point(int wire) const;
  [[nodiscard]] Beyond beyond(int wire) const;
  [[nodiscard]] Source source(int wire) const;
  /// On the shortest way without a device from a battery to an engine's starting motor.
  [[nodiscard]] bool cranks(int element) const { return cranks_[static_cast<std::size_t>(element)]; }
  /// A fuse or a breaker, its rating given or not.
  [[nodiscard]] bool stops(int element) const { return stops_[static_cast<std::size_t>(element)]; }
  /// m; 0 for all but wires.
  [[nodiscard]] double length(int element) const { return length_[static_cast<std::size_t>(element)]; }

 private:
  void measure();
  void mark_cranking(const netlist::System& system);
  [[nodiscard]] int upstream_wire(int point) const;

  const network::Network& network_;
  std::vector<double> length_, area_;
  std::vector<bool> ungrounded_, conducts_, stops_, cranks_;
  std::vector<double> metres_;  ///< per point
  std::vector<int> by_;    ///< per point: the element that leads to it from a post; −1: a post, or not fed
  std::vector<int> rank_;  ///< per point: order in which it was reached; −1: not
  std::vector<std::vector<int>> at_;  ///< per point: its elements
};

/// How long a starting motor is cranked and then rests where the netlist does not say (from memory: 30 s at
/// most, then two minutes).
inline constexpr double cranking_seconds = 30, cranking_rest_seconds = 120;

/// Known by its id or note: "starter", "starting motor", "cranking".
[[nodiscard]] bool is_starting_motor(const netlist::Load& load);

}  // namespace ohmtrail::plan
