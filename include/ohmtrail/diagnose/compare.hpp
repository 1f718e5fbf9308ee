#pragma once
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/netlist/system.hpp"

/// Two surveys of one system: what was cured, what is left, what is new.
namespace ohmtrail::diagnose {

enum class Change { none, better, worse };

struct ElementChange {
  std::string id;
  double before = 0, after = 0;  ///< Ω
  double change = 0;             ///< after − before; 0 where it lies within the uncertainty of the two
  Change verdict = Change::none;
};

/// A load's volts with the batteries and loads of one and the same day: what the work alone has brought.
struct LoadChange {
  std::string id, in_case;
  double volts_before = 0, volts_after = 0;
};

struct Comparison {
  std::vector<ElementChange>
      elements;  ///< in both surveys, order of the first; batteries by their resistance
  std::vector<ElementChange> conductors;  ///< in both surveys, each from stud to stud
  std::vector<LoadChange> loads;
  /// Ids of elements; of a conductor where neither survey tells which part of it is faulty. `fresh`: faulty
  /// now, not before.
  std::vector<std::string> cured, left, fresh;
  std::vector<std::string> gone, added;  ///< elements of one survey only
};

/// Odds from which an element counts as faulty here.
inline constexpr double faulty_from = 0.5;

/// Matches by id. Both are solved at the open-circuit voltages and loads of `before`, in the cases both have,
/// so that a charged battery is not taken for a cure.
[[nodiscard]] tl::expected<Comparison, InferFailure> compare(const netlist::System& before,
                                                             const netlist::System& after);

}  // namespace ohmtrail::diagnose
