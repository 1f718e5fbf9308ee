#pragma once
#include <compare>
#include <map>
#include <set>
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"
#include "ohmtrail/trade/fin.hpp"

/// Who heats a connection and what cools it.
namespace ohmtrail::diagnose {

/// A cable that carries the heat of a connection off.
struct Cooling {
  std::size_t run = 0;  ///< index in the netlist
  int wire = 0;         ///< element index
  trade::Fin fin;
  double weight = 0;  ///< what it carries off for one kelvin at a film coefficient of 1
};

struct Surround {
  std::vector<int> contacts;    ///< elements whose heat leaves together: itself, and the lugs that it touches
  std::vector<Cooling> cables;  ///< its own cable, and those whose lugs sit on a point that it touches
};

/// Whether an element is a connection: termination, joint, switch, fuse or shunt.
[[nodiscard]] bool is_contact(network::Role role);

/// The surroundings of many connections of one network: who touches whom is found once.
class Surroundings {
 public:
  Surroundings(const netlist::System& system, const network::Network& network);
  [[nodiscard]] Surround of(int element) const;

 private:
  /// Which end of which conductor a termination is of.
  struct WireEnd {
    std::size_t run = 0;
    network::Part wire = network::Part::wire;  ///< or return_wire
    bool at_from = true;
    friend auto operator<=>(const WireEnd&, const WireEnd&) = default;
  };
  [[nodiscard]] static WireEnd end_of(const network::Element& termination);

  const netlist::System& system_;
  const network::Network& network_;
  std::vector<std::vector<int>> terminations_;  ///< per point, element indices
  std::map<WireEnd, int> wires_;                ///< element index of each conductor, under its `from` end
};

}  // namespace ohmtrail::diagnose
