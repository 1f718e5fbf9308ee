#pragma once
#include <optional>
#include <string>

#include "ohmtrail/trade/words.hpp"
#include "ohmtrail/units/quantity.hpp"

/// The resistance that a good one of its kind has, where the netlist does not give it.
namespace ohmtrail::trade {

struct Sound {
  units::Resistance value;
  std::string basis;  ///< the rule and its source, in words
};

/// Stud size that a lug of this gauge usually carries (common practice): its nominal thread in mm.
[[nodiscard]] int usual_stud(const Gauge& gauge);

/// The bolted contact of a termination alone: 15 µΩ on M8 and larger, 40 µΩ on M5–M6, 80 µΩ on M4
/// (common practice).
[[nodiscard]] Sound sound_contact(TerminationKind kind, const Gauge& gauge);

/// The crimp (or solder) alone: half the limit of MIL-T-7928 for its size.
[[nodiscard]] Sound sound_crimp(TerminationKind kind, const Gauge& gauge);

/// A whole termination: bolted contact and crimp together.
[[nodiscard]] Sound sound_termination(TerminationKind kind, const Gauge& gauge);

[[nodiscard]] Sound sound_joint(JointKind kind, std::optional<units::Current> rating);
[[nodiscard]] Sound sound_switch(SwitchKind kind, std::optional<units::Current> rating);

/// The cold resistance of the fuse itself, without its holder. Without a form: blade up to 40 A, bolt-down
/// above.
[[nodiscard]] Sound sound_fuse(std::optional<FuseForm> form, units::Current rating);

}  // namespace ohmtrail::trade
