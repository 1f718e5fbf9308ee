#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "ohmtrail/netlist/section.hpp"
#include "ohmtrail/netlist/system.hpp"

/// One system in one case as points and two-terminal elements: runs opened into termination, wire,
/// termination; the case's switches, loads and chargers applied; table values filled in.
namespace ohmtrail::network {

using namespace units;

enum class Role { battery, charger, wire, termination, joint, switchgear, fuse, shunt, isolator, load };

using netlist::Section;

/// Which part of its run (or converter) an element is; `whole` for all others.
enum class Part {
  whole,
  from,
  from_crimp,
  wire,
  to_crimp,
  to,
  return_from,
  return_from_crimp,
  return_wire,
  return_to_crimp,
  return_to,
  converter_in,
  converter_out
};

/// The section of the netlist that an element comes from, its index there, and which part of the entry it is.
struct Origin {
  Section section;
  std::size_t index;
  Part part = Part::whole;
};

/// How a wire's own current heats it: T = ambient + rise · (I / rated)², R(T) = R20 (1 + α20 (T − 20 °C)).
struct WireHeating {
  double temperature_coefficient;  ///< α20, 1/K; 0 where the resistance was given outright
  Temperature ambient;
  TemperatureDifference rise_at_rated;  ///< insulation rating − reference ambient of the ampacity table
  Current rated;                        ///< ampacity with every factor applied
  Time time_constant;                   ///< of its warming: heat capacity over what it gives off for a kelvin
  /// Share of the steady rise that it reaches. Where a load of short duty is on, `solve_case` lowers it to
  /// what the wire has at the end of its turn.
  double share = 1;

  /// What the wire is warmed by at its rated current, turns considered.
  [[nodiscard]] TemperatureDifference rise() const { return rise_at_rated * share; }
};

/// A load that runs for a while and then rests: its wires warm by their heat capacity.
struct ShortDuty {
  Time on;
  std::optional<Time> rest;  ///< empty: once, from cold
};

struct Element {
  std::string id;
  Role role;
  int from, to;  ///< indices into Network::points; battery, charger and load: from is plus
  Origin origin;
  /// Conducting, switched on, running. An inactive element carries no current and has no resistance.
  bool active = true;

  /// Passive elements and batteries: the resistance in use. Wires with a temperature coefficient: at 20 °C.
  Resistance resistance;
  /// What a good one of its kind has, on the same footing; empty: not known, never faulty.
  std::optional<Resistance> sound;
  bool sound_from_table = true;  ///< the netlist gave neither `sound` nor (batteries) `resistance`
  bool as_found_given = false;   ///< the netlist gave `resistance`

  std::optional<WireHeating> heating;  ///< wires
  Voltage voltage;  ///< battery: open-circuit; charger: set point; isolator: drop at rating
  Current limit;    ///< charger: most it delivers; isolator: rating (0: not given)

  std::optional<netlist::Takes> takes;  ///< loads: what this case lets it take
  std::optional<Voltage> nominal;       ///< loads and batteries
  std::optional<Voltage> stops_below;   ///< loads
  std::optional<ShortDuty> short_duty;  ///< loads
  std::optional<Fraction> drop_limit;   ///< loads; empty for test loads
  /// Converters: element index of the other half. The input takes output power / efficiency + idle.
  int partner = -1;
  double efficiency = 1;
  Power idle;
  netlist::Seen seen;
};

/// A default that shaped a result; `id` is an element or "system".
/// The quantity that an assumption gives a value to; `other`: its text tells the value itself, if there is
/// one.
enum class Assumed { other, ambient, sound_resistance, resistance, voltage, chance };

struct Assumption {
  std::string id, text;
  std::optional<double> value;  ///< SI; an ambient in °C, a chance of 1
  Assumed quantity = Assumed::other;
};

struct Network {
  std::string case_name;
  std::vector<std::string> points;  ///< file order, derived points where their run stands
  std::vector<Element> elements;    ///< file order
  std::optional<int> reference;     ///< the point at 0 V, where the netlist or the first battery names one
  std::vector<Assumption> assumptions;

  [[nodiscard]] std::optional<int> point(const std::string& name) const;
  /// Element index by id; a bare run id means its wire.
  [[nodiscard]] std::optional<int> element(const std::string& id) const;
};

/// Builds the network of `system` (which must have passed validation) in one of its cases.
[[nodiscard]] Network build(const netlist::System& system, const netlist::Case& in_case);

}  // namespace ohmtrail::network
