#pragma once
#include <optional>
#include <string>
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/solve/case_solution.hpp"
#include "plan/design_space.hpp"
#include "plan/guards.hpp"

/// The real nonlinear solve as judge over a rewired system.
namespace ohmtrail::plan {

/// A limit that a system breaks.
struct Broken {
  enum class What { drop, stopped, collapsed, ampacity, fuse } what = What::drop;
  int element = -1;  ///< load, wire or device
  std::size_t in_case = 0;
  double value = 0;  ///< V of drop, A of device; of a wire the steady current that warms it as much
  double limit = 0;  ///< V, A
};

struct Assessment {
  netlist::System system;  ///< with fuses and breakers rated for what they carry
  std::vector<solve::CaseSolution> cases;
  std::vector<std::vector<double>>
      full_rise;                       ///< [case][element] K at rated current if it flowed without end
  std::vector<Broken> broken;          ///< by case, then file order
  std::optional<std::string> failure;  ///< a case without certified solution
  [[nodiscard]] bool keeps_limits() const { return broken.empty() && !failure; }
};

/// The steady current, A, that would warm a wire as much as it becomes: less than it carries where loads of
/// short duty run.
[[nodiscard]] double steady_amperes(const Assessment& assessment, std::size_t in_case, int wire);

/// Rates the devices that guard runs in scope (least standard rating of at least 1.25 times the current, or
/// the one it has where that serves), solves every case and lists every limit that is broken.
[[nodiscard]] Assessment assess(const DesignSpace& space, const std::vector<Guards>& guards,
                                netlist::System rewired);

/// The file's system with this design.
[[nodiscard]] netlist::System rewired(const DesignSpace& space, const Design& design);

}  // namespace ohmtrail::plan
