#pragma once
#include <functional>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"
#include "ohmtrail/solve/case_solution.hpp"

/// The cheapest cable and fuses that keep every limit in every case, with proof.
namespace ohmtrail::plan {

/// How far the search is; told about once a second.
struct Progress {
  double bound = 0;            ///< no design is cheaper
  std::optional<double> best;  ///< cheapest design found that keeps every limit
  int rounds = 0;              ///< masters solved, or boxes of designs bounded
  bool priced = false;         ///< costs are money; false: kg of conductor
};

struct SizeOptions {
  std::vector<std::string> only;                  ///< ids of the runs to choose; empty: all
  double time_limit_in_seconds = 60;              ///< for all of it, the report on what was found included
  std::function<void(const Progress&)> progress;  ///< may be empty
};

/// What decided a run's gauge: the next smaller offer breaks this.
enum class Reason { kept, cheapest, drop, ampacity, fuse };

/// The choice for one run, changed or not.
struct RunChoice {
  std::string id;
  std::string gauge, was;      ///< spelled as in `cable_list`; `was` as in the file
  double area = 0;             ///< m², of one conductor
  double mass = 0;             ///< kg of conductor metal, both conductors
  double mass_was = 0;         ///< kg, of the cable that the file describes
  double cost = 0;             ///< price, or kg where the list has no prices
  std::optional<double> fuse;  ///< A; empty: no fuse guards this run
  std::string fuse_id;
  double ampacity = 0;  ///< A, with every factor
  double current = 0;   ///< A, largest over the cases
  /// A, the steady current that would warm it as much: less than `current` where loads of short duty run.
  double steady = 0;
  bool chosen = false;   ///< in the scope of the search
  bool renewed = false;  ///< new cable: another gauge, or as found it was not sound
  Reason reason = Reason::kept;
};

/// Voltage of one load in one case before and after.
struct LoadChange {
  std::string id, in_case;
  std::optional<double> volts_before, volts_after;  ///< V; empty: had no solution
  double drop = 0;                                  ///< V, after
  double drop_fraction = 0;                         ///< of nominal, after
  std::optional<double> limit_fraction;
  bool within = true, running = true;  ///< after
};

/// A fuse whose rating changes, or that would open on an inrush.
struct FuseChoice {
  std::string id;
  double was = 0, rating = 0;         ///< A
  std::optional<double> inrush;       ///< A that it sees for the starting time
  std::optional<double> opens_after;  ///< s at that inrush, soonest; empty: rides through
};

/// Why no choice from the list suffices.
struct Shortfall {
  std::string subject;  ///< load, run or fuse
  std::string in_case;
  std::string text;    ///< by how much, with the thickest cable everywhere
  std::string remedy;  ///< a shorter route, a thicker cable than listed, a higher system voltage
};

struct SizeResult {
  std::vector<RunChoice> runs;    ///< file order, every run
  std::vector<FuseChoice> fuses;  ///< file order
  std::vector<LoadChange> loads;  ///< by case, then file order
  double cost = 0, bound = 0;
  bool priced = false;                ///< cost is money; false: kg of conductor
  bool proved = false;                ///< no cheaper choice from the list meets every limit in every case
  bool found = false;                 ///< a design that keeps every limit stands in `runs`
  std::string method;                 ///< how the bound was proved
  std::vector<Shortfall> shortfalls;  ///< not empty: nothing on the list suffices
  std::vector<network::Assumption> assumptions;
  std::vector<solve::CaseSolution> solved;  ///< every case as chosen, test loads off; as found if nothing was
  netlist::System rewired;                  ///< the system with the chosen cable and fuses
};

/// Chooses a gauge for each run from `system.cable_list`, or from every AWG of 18 to 4/0 by conductor mass.
/// The error is a sentence for the caller: an unknown run in `only`, a case with a shorted source.
[[nodiscard]] tl::expected<SizeResult, std::string> size(const netlist::System& system,
                                                         const SizeOptions& options = {});

}  // namespace ohmtrail::plan
