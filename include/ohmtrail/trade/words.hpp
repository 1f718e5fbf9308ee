#pragma once

#include "ohmtrail/units/quantity.hpp"

/// The fixed words of the trade that files and tables share.
namespace ohmtrail::trade {

enum class Chemistry { flooded, agm, gel, lfp };

enum class ConductorKind { bare_copper, tinned_copper, aluminium, copper_clad_aluminium };

enum class TerminationKind { crimped, soldered, bolted_bare, ferrule };

enum class JointKind { post_clamp, stud, splice, plug, terminal_strip, fuse_clip, bus_bar, chassis };

enum class SwitchKind { battery_switch, breaker, contactor, toggle };

enum class FuseForm { blade, bolt_down, cartridge, in_line };

/// What eye and hand find (`seen`).
enum class Observation {
  looks_sound,
  not_reached,
  moves_reading,
  turns_by_hand,
  loose_nut,
  wing_nut,
  washer_under_lug,
  green_corrosion,
  white_corrosion,
  bulging_jacket,
  shrunken_jacket,
  broken_strands,
  darkened,
  warm,
  melted,
  pitted,
  bulged_case,
  frozen
};

enum class GaugeSystem { awg, sae, metric };

/// A conductor size: "2/0 AWG", "2 SAE", "35 mm2".
struct Gauge {
  GaugeSystem system = GaugeSystem::awg;
  /// AWG and SAE: the gauge number, 0 for 1/0, −1 for 2/0, −2 for 3/0, −3 for 4/0. Metric: unused.
  int number = 0;
  /// Copper area: by ASTM B258 for AWG, the SAE minimum for SAE, the nominal area for mm².
  units::Area area;
  friend bool operator==(const Gauge&, const Gauge&) = default;
};

}  // namespace ohmtrail::trade
