#pragma once
#include <optional>
#include <string>
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"
#include "ohmtrail/plan/size.hpp"

/// What may be chosen: for every run in scope the offers that could replace it, and what each would make of
/// the run's elements in every case.
namespace ohmtrail::plan {

/// One cable that may be bought.
struct Offer {
  trade::Gauge gauge;
  std::string spelling;
  std::optional<double> price;  ///< per metre
  std::optional<units::Temperature> insulation;
  std::optional<trade::ConductorKind> conductor;
};

/// r(I) = ohms · (1 + alpha (ambient + rise (I / rated)² − 20)); alpha 0: the plain resistance.
struct ElementValue {
  int element = -1;
  double ohms = 0;
  double alpha = 0, ambient = 0, rise = 0, rated = 0;
  double duty = 1;  ///< least share of the rise that is left where loads of short duty run

  [[nodiscard]] double at(double amperes) const;
};

/// One offer for one run.
struct Candidate {
  std::size_t offer = 0;
  double cost = 0;        ///< price, or kg
  double mass = 0;        ///< kg
  double area = 0;        ///< m²
  double ampacity = 0;    ///< A
  double fuse_limit = 0;  ///< A, the largest fuse or breaker that may stand over it
};

/// One run in scope with its candidates, thinnest first (by area, then by list order).
struct RunSpace {
  std::size_t run = 0;  ///< index into System::runs
  std::vector<Candidate> candidates;
};

/// One case: its network as the file has it, and what each candidate makes of each run's elements.
struct CaseSpace {
  network::Network network;
  std::vector<std::vector<std::vector<ElementValue>>> values;  ///< [run in scope][candidate] → elements
};

/// A fuse, or a breaker with a rating, and what it would be with every rating that it may have.
struct DeviceSpace {
  int element = -1;            ///< index into Network::elements, alike in every case
  double rated = 0;            ///< A, as it is
  std::vector<double> ladder;  ///< A, rising, with the one that it has
  std::vector<double> ohms;    ///< Ω, new with each of these
};

/// A candidate's index for every run in scope.
using Design = std::vector<int>;

/// A limit that nothing in scope can keep, nor makes worse: it is told, and not held against any design.
struct OutOfReach {
  std::size_t in_case = 0;
  int element = -1;  ///< load
};

struct DesignSpace {
  netlist::System system;  ///< test loads switched off, starting motors with the duty of one
  std::vector<Offer> offers;
  std::vector<RunSpace> runs;
  std::vector<CaseSpace> cases;
  std::vector<DeviceSpace> devices;
  bool priced = false;
  std::vector<std::string> cranked;      ///< loads taken for starting motors by their name
  std::vector<OutOfReach> out_of_reach;  ///< their drop limits are gone from the networks of `cases`
};

/// Takes the limits out of the space.
void leave_out(DesignSpace& space, const std::vector<OutOfReach>& limits);

[[nodiscard]] DesignSpace design_space(const netlist::System& system, const std::vector<std::string>& only);

/// The system with the run's cable replaced by the offer: new cable and new ends, as sound as their kind.
void rewire(netlist::Run& run, const Offer& offer);

/// What an element of a network does with a current, as plain numbers.
[[nodiscard]] ElementValue value_of(const network::Network& network, int element);

/// For every run of the system its place in `DesignSpace::runs`; −1: not in scope.
[[nodiscard]] std::vector<int> places_in_scope(const DesignSpace& space);

/// A, the largest fuse or breaker over a wire of this ampacity: no more than that, and in a road vehicle no
/// more than the rules there let over its gauge.
[[nodiscard]] double largest_device(const netlist::System& system, const trade::Gauge& gauge,
                                    double ampacity);

[[nodiscard]] double cost(const DesignSpace& space, const Design& design);

}  // namespace ohmtrail::plan
