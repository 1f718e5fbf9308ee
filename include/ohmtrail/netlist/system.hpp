#pragma once
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "ohmtrail/netlist/rare.hpp"
#include "ohmtrail/trade/words.hpp"
#include "ohmtrail/units/quantity.hpp"

/// What a checked netlist file holds, section by section, in file order. Plain data: no JSON, no graph.
/// An optional that is empty was not given; defaults that need a table are filled in by `network`.
namespace ohmtrail::netlist {

using namespace units;  // the quantities are this layer's vocabulary

/// What the eye and hand found on one thing.
using Seen = std::vector<trade::Observation>;

/// Resistance of a thing as a good one has it and as this one was found.
struct Resistances {
  std::optional<Resistance> sound;     ///< given outright, not corrected for temperature
  std::optional<Resistance> as_found;  ///< key `resistance`
  Seen seen;
  friend bool operator==(const Resistances&, const Resistances&) = default;
};

enum class SystemKind { vessel, cart, vehicle, shore };
enum class Terminations { whole, contact_and_crimp };

struct Limits {
  Fraction critical_drop{0.03};
  Fraction other_drop{0.10};
  std::optional<Fraction> swing;  ///< percent of nominal
  friend bool operator==(const Limits&, const Limits&) = default;
};

struct Job {
  std::string customer, technician, date, reference, complaint;
  friend bool operator==(const Job&, const Job&) = default;
};

struct SystemInfo {
  std::string name;
  Voltage nominal;
  SystemKind kind = SystemKind::vessel;
  Terminations terminations = Terminations::whole;
  Temperature ambient{25};
  Temperature engine_space{50};
  Limits limits;
  Job job;
  std::string note;
  friend bool operator==(const SystemInfo&, const SystemInfo&) = default;
};

struct RestCheck {
  Voltage volts;
  std::optional<Time> rested;  ///< key `hours`
  std::optional<Temperature> temperature;
  bool charging = false;  ///< a charger was on: no rest voltage at all
  friend bool operator==(const RestCheck&, const RestCheck&) = default;
};

struct LoadTest {
  std::optional<Voltage> before;
  Current amps;
  Voltage volts;
  std::optional<Time> duration;  ///< key `seconds`
  std::optional<Temperature> temperature;
  bool charging = false;  ///< a charger was on and carried part of the load
  friend bool operator==(const LoadTest&, const LoadTest&) = default;
};

/// A conductance tester's reading.
struct TesterCheck {
  std::optional<Current> cca;
  std::optional<Resistance> resistance;  ///< key `ohms`
  std::optional<Temperature> temperature;
  friend bool operator==(const TesterCheck&, const TesterCheck&) = default;
};

enum class ElectrolyteLevel { above, at, below, dry };

struct CellCheck {
  std::optional<double> specific_gravity;  ///< as read, not yet corrected for temperature
  std::optional<Voltage> volts;
  std::optional<Temperature> temperature;
  std::optional<ElectrolyteLevel> level;
  friend bool operator==(const CellCheck&, const CellCheck&) = default;
};

struct BatteryChecks {
  std::optional<RestCheck> rest;
  std::optional<LoadTest> load_test;
  std::optional<TesterCheck> tester;
  std::vector<CellCheck> cells;
  std::optional<Voltage> top_leak;  ///< post to case top
  friend bool operator==(const BatteryChecks&, const BatteryChecks&) = default;
};

struct Battery {
  std::string id, plus, minus;
  Voltage nominal;
  trade::Chemistry chemistry = trade::Chemistry::flooded;
  std::optional<Charge> capacity;
  std::optional<Current> cca;
  std::optional<Fraction> state_of_charge;  ///< key `soc`; empty: 100 %
  std::optional<Voltage> emf;
  std::optional<Resistance> resistance;
  std::string made;
  BatteryChecks checks;
  Seen seen;
  std::string note;
  friend bool operator==(const Battery&, const Battery&) = default;
};

struct Charger {
  std::string id, plus, minus;
  Voltage setpoint;
  Current limit;
  std::string note;
  friend bool operator==(const Charger&, const Charger&) = default;
};

struct RunEnd {
  trade::TerminationKind kind = trade::TerminationKind::crimped;
  /// Contact and crimp are two elements: everywhere with `Terminations::contact_and_crimp`, else where
  /// `crimp` is given or something names this end's `…-metal` point or its crimp. Filled in by `read`.
  bool opened = false;
  Resistances resistances;
  /// The crimp's own values. One given here makes its like in `resistances` that of the bolted contact alone.
  Rare<Resistances> crimp;
  std::string note;
  friend bool operator==(const RunEnd&, const RunEnd&) = default;
};

/// What contact and crimp of an opened end have: a value that is given for both together is shared half and
/// half.
struct Halves {
  Resistances contact, crimp;
};
[[nodiscard]] Halves halves(const RunEnd& end);

/// The return conductor of a run. `ends` and `wire.sound` are inherited from the run where not given;
/// `as_found` and `seen` never are.
struct ReturnConductor {
  std::string from, to;
  RunEnd end_from, end_to;
  Resistances wire;
  std::string note;
  friend bool operator==(const ReturnConductor&, const ReturnConductor&) = default;
};

struct Run {
  std::string id, from, to;
  trade::Gauge gauge;
  Length length;  ///< one way
  trade::ConductorKind conductor = trade::ConductorKind::tinned_copper;
  bool length_estimated = false;
  Temperature insulation{105};
  std::string in;  ///< "engine-space" or a free word
  int bundle = 1;
  RunEnd end_from, end_to;
  Resistances wire;
  std::optional<ReturnConductor> return_conductor;
  std::string note;
  friend bool operator==(const Run&, const Run&) = default;
};

struct Joint {
  std::string id, from, to;
  trade::JointKind kind{};
  std::optional<Current> rating;
  Resistances resistances;
  std::string note;
  friend bool operator==(const Joint&, const Joint&) = default;
};

struct Switch {
  std::string id, from, to;
  trade::SwitchKind kind{};
  std::optional<Current> rating;
  std::optional<Current> interrupts;
  bool closed = true;
  Resistances resistances;
  std::string note;
  friend bool operator==(const Switch&, const Switch&) = default;
};

struct Fuse {
  std::string id, from, to;
  Current rating;
  std::optional<trade::FuseForm> form;
  std::optional<Current> interrupts;
  std::optional<Voltage> volts;
  Resistances resistances;
  std::string note;
  friend bool operator==(const Fuse&, const Fuse&) = default;
};

struct Shunt {
  std::string id, from, to;
  Current rating;
  Voltage drop;
  std::string note;
  friend bool operator==(const Shunt&, const Shunt&) = default;
};

struct Isolator {
  std::string id, from, to;  ///< from is the anode
  Voltage drop{0.7};
  std::optional<Current> rating;
  std::string note;
  friend bool operator==(const Isolator&, const Isolator&) = default;
};

/// Constant power, constant current or resistance.
using Takes = std::variant<Power, Current, Resistance>;

enum class LoadClass { critical, other, test };

struct Load {
  std::string id, plus, minus;
  Takes takes;
  LoadClass load_class = LoadClass::other;
  std::optional<Voltage> nominal;  ///< empty: the system's
  std::optional<Voltage> stops_below;
  std::optional<Voltage> restarts_above;  ///< after a stop; empty: as soon as it is above `stops_below` again
  std::optional<Current> inrush;
  std::optional<Current> stall;  ///< at nominal voltage with the motor held fast: it is then a resistance
  std::optional<Time> on_for, rest_for;
  Fraction efficiency{1};  ///< inverters: `takes` is what comes out, takes / efficiency + idle goes in
  Power idle;
  std::string note;
  friend bool operator==(const Load&, const Load&) = default;
};

/// A DC-DC converter: a constant-power load `ID/in` and a charger `ID/out`.
struct Converter {
  std::string id, plus_in, minus_in, plus_out, minus_out;
  Voltage setpoint;
  Current limit;
  Fraction efficiency{0.9};
  Power idle;
  std::optional<Voltage> stops_below;
  std::string note;
  friend bool operator==(const Converter&, const Converter&) = default;
};

enum class Reach { easy, tools, no };

struct Point {
  std::string place;
  Reach reach = Reach::easy;
  std::string note;
  friend bool operator==(const Point&, const Point&) = default;
};

struct Case {
  std::string name;
  bool all_on = false;
  std::vector<std::string> on;            ///< load ids
  std::map<std::string, Takes> set;       ///< load id → what it takes in this case
  std::vector<std::string> starting;      ///< ids whose `set` is the word "inrush": for a moment only
  std::vector<std::string> open, closed;  ///< element, run or switch ids
  std::vector<std::string> chargers;      ///< ids that run
  std::optional<Temperature> ambient;
  std::optional<Time> per_day;  ///< key `hours_per_day`
  std::string note;
  friend bool operator==(const Case&, const Case&) = default;
};

/// ±(percent of reading + counts × last digit).
struct Accuracy {
  double percent = 0;
  double counts = 0;
  double last_digit = 0;  ///< key `digits_to`, in the SI unit of the quantity
  friend bool operator==(const Accuracy&, const Accuracy&) = default;
};

struct Meter {
  std::string id;
  std::optional<Accuracy> volts, amps, ohms, temperature;
  std::string note;
  friend bool operator==(const Meter&, const Meter&) = default;
};

struct VoltsReading {
  Voltage value;
  std::string red, black;
  friend bool operator==(const VoltsReading&, const VoltsReading&) = default;
};
struct AmpsReading {
  Current value;
  std::string in;
  friend bool operator==(const AmpsReading&, const AmpsReading&) = default;
};
struct OhmsReading {
  Resistance value;
  std::string across;
  friend bool operator==(const OhmsReading&, const OhmsReading&) = default;
};
struct TemperatureReading {
  Temperature value;
  std::string at;
  friend bool operator==(const TemperatureReading&, const TemperatureReading&) = default;
};

struct Reading {
  std::variant<VoltsReading, AmpsReading, OhmsReading, TemperatureReading> what;
  std::string in_case;            ///< empty only for ohms
  std::string meter;              ///< empty: the built-in one
  std::optional<double> spread;   ///< ± the value jumped about, in the quantity's SI unit
  std::optional<double> minutes;  ///< when it was taken, for drift
  std::string note;
  friend bool operator==(const Reading&, const Reading&) = default;
};

struct CableOffer {
  trade::Gauge gauge;
  std::string gauge_as_written;
  std::optional<double> price;  ///< per metre, any one currency
  std::optional<Temperature> insulation;
  std::optional<trade::ConductorKind> conductor;
  std::string note;
  friend bool operator==(const CableOffer&, const CableOffer&) = default;
};

struct System {
  SystemInfo info;
  std::vector<Battery> batteries;
  std::vector<Charger> chargers;
  std::vector<Run> runs;
  std::vector<Joint> joints;
  std::vector<Switch> switches;
  std::vector<Fuse> fuses;
  std::vector<Shunt> shunts;
  std::vector<Isolator> isolators;
  std::vector<Load> loads;
  std::vector<Converter> converters;
  std::map<std::string, Point> points;
  std::vector<Case> cases;  ///< never empty after reading: `all-on` is made where none is given
  std::vector<Meter> meters;
  std::vector<Reading> readings;
  std::vector<CableOffer> cable_list;
  std::string reference;  ///< empty: the first source's minus point
  std::vector<std::string> stubs;
  std::string note;
  friend bool operator==(const System&, const System&) = default;
};

}  // namespace ohmtrail::netlist
