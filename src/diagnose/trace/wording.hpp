#pragma once
#include <string>
#include <vector>

#include "ohmtrail/diagnose/duty_clock.hpp"
#include "ohmtrail/diagnose/next.hpp"
#include "ohmtrail/netlist/system.hpp"

/// The sentences of a guided search.
namespace ohmtrail::diagnose {

/// `"bow thruster" and "windlass"`
[[nodiscard]] std::string loads_in_words(const DutyClock::Ids& loads);

/// "everything on", "nothing on", or which loads.
[[nodiscard]] std::string switched_on_in_words(const netlist::System& system, const netlist::Case& one);

/// `What is switched on?` with the cases and their numbers.
[[nodiscard]] std::string which_case(const netlist::System& system);

[[nodiscard]] ReadingPlace place_of(const NextOption& option);

/// "volts" or "amperes".
[[nodiscard]] std::string unit_asked(const NextOption& asked);

/// What a load of short duty needs before it is switched on; empty where that was said before.
[[nodiscard]] std::string before_running(const DutyClock& clock, const DutyClock::Ids& loads,
                                         units::Time now);
/// What it needs once it has run.
[[nodiscard]] std::string after_running(const DutyClock& clock, const DutyClock::Ids& loads, units::Time now);

}  // namespace ohmtrail::diagnose
