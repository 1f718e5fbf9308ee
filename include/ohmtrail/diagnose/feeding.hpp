#pragma once
#include <string>
#include <vector>

#include "ohmtrail/solve/case_solution.hpp"

/// Which source feeds what. Kirchhoff's laws do not say whose amperes a load takes where currents meet; the
/// convention here is proportional sharing: what leaves a point is mixed as what arrives there, traced along
/// the positive side. From memory: J. Bialek, Tracing the flow of electricity, IEE Proceedings 143 (1996).
namespace ohmtrail::diagnose {

/// What one supply gives to one taker.
struct FedFrom {
  std::string source;  ///< the supply's first battery, or a charger
  double current = 0;  ///< A
  double share = 0;    ///< of what the taker takes
};

/// A running load, or a string of batteries that is being charged.
struct Fed {
  std::string taker;  ///< the load, or the string's first battery
  network::Role role = network::Role::load;
  double current = 0;         ///< A
  std::vector<FedFrom> from;  ///< largest first; the currents add up to `current`
};

/// Loads in file order, then batteries.
[[nodiscard]] std::vector<Fed> feeding(const solve::CaseSolution& solved);

/// Current that one string drives through another instead of through a load.
struct Circulation {
  std::string from, to;  ///< first battery of each
  double current = 0;    ///< A
};
[[nodiscard]] std::vector<Circulation> circulating(const solve::CaseSolution& solved,
                                                   const std::vector<Fed>& fed);

}  // namespace ohmtrail::diagnose
