#pragma once
#include <map>
#include <string>

#include "ohmtrail/diagnose/hot_spot.hpp"
#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::diagnose {

/// The system as its readings show it: `resistance` of every element that some reading informs, `emf` and
/// `resistance` of informed batteries, and what each load took in the cases that were read. The readings are
/// gone, so that nothing counts twice; `sound` values stay.
[[nodiscard]] netlist::System with_inferred(const netlist::System& system, const InferResult& result);

/// Probability that an element or battery is faulty, by id.
[[nodiscard]] std::map<std::string, double> fault_probabilities(const InferResult& result);

/// By element id: parts of conductors that are more likely faulty than not, where no part is it with four
/// fifths of that chance. A part of under 5 % is left out.
[[nodiscard]] std::map<std::string, Unparted> unparted(const InferResult& result);

}  // namespace ohmtrail::diagnose
