#pragma once
#include <optional>
#include <string>
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"

/// The readings to take on a system, each with the value that a sound one would show.
namespace ohmtrail::diagnose {

enum class BenchKind {
  rest,   ///< a battery's posts, everything off
  posts,  ///< a battery's posts under load
  amps,   ///< a clamp round the cable that carries most
  load,   ///< across a running load
  drop    ///< along one run, or across one joint, switch or fuse
};

struct BenchReading {
  BenchKind kind = BenchKind::drop;
  std::string of;          ///< id of the element; of a run lug to lug: of its wire
  std::string red, black;  ///< points; empty for a clamp
  double expected = 0;     ///< V or A; of a rest reading: what a full battery shows
  bool tools = false;      ///< something must be opened to get there
};

/// What is read with one set of things switched on.
struct BenchRound {
  std::string in_case;             ///< empty: everything off
  std::vector<std::string> loads;  ///< ids of the loads that run
  std::vector<BenchReading> readings;
};

struct BenchSheet {
  std::vector<BenchRound> rounds;         ///< at rest first, then the cases in file order
  std::vector<std::string> out_of_reach;  ///< ids that no probe gets to, so that nothing is read across them
};

/// Follows the current from the supply to every load and back. A part that carries current in several cases
/// is read where it drops most; a case in which none does is left out. Values are those of the system with
/// every part sound. `solved` are the cases to read in, of `system`; one without a solution when sound is
/// left out.
[[nodiscard]] BenchSheet bench_sheet(const netlist::System& system,
                                     const std::vector<solve::CaseSolution>& solved);

}  // namespace ohmtrail::diagnose
