#pragma once
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"

/// Which fuse or breaker stands guard over which wire.
namespace ohmtrail::plan {

/// One overcurrent device and what it feeds before the next one.
struct Guard {
  int element = -1;           ///< fuse, or breaker with a rating; index into Network::elements
  std::vector<int> elements;  ///< passive elements that it guards
};

struct Guards {
  std::vector<Guard> devices;  ///< file order
  std::vector<int> guard_of;   ///< per element: index into `devices` of the first that guards it; −1: none
  /// Per element: passive, and not joined to the reference of its island by passive elements.
  std::vector<bool> ungrounded;
  std::vector<bool>
      unprotected;  ///< per element: ungrounded, and joined to a battery's post before any device
  std::vector<bool> string_link;  ///< per element: joins batteries of one string, where no device can guard
};

/// Whether an element is a fuse, or a breaker with a rating.
[[nodiscard]] bool is_device(const netlist::System& system, const network::Element& element);

/// Ratings that a device may have, A, rising: those of the fuse's form; for a breaker, or where the form is
/// not given, those of every form.
[[nodiscard]] std::vector<double> device_ladder(const netlist::System& system,
                                                const network::Element& element);

/// A device guards what lies beyond it, seen from the batteries (from chargers and converters where no
/// battery reaches), up to the next device; and from overload, not from a short circuit, the cable from a
/// battery that feeds it alone. Positions of switches do not matter: an open one may be closed tomorrow.
[[nodiscard]] Guards find_guards(const netlist::System& system, const network::Network& network);

}  // namespace ohmtrail::plan
