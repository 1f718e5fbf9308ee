#pragma once
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

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
  std::optional<Resistance> sound;       ///< given outright, not corrected for temperature
  std::optional<Resistance> as_found;    ///< key `resistance`
  Seen seen;
};

enum class SystemKind { vessel, cart, vehicle, shore };
enum class Terminations { whole, contact_and_crimp };

struct Limits {
  Fraction critical_drop{0.03};
  Fraction other_drop{0.10};
  std::optional<Fraction> swing;  ///< percent of nominal
};

struct Job {
  std::string customer, technician, date, reference, complaint;
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
};

struct RestCheck {
  Voltage volts;
  std::optional<Time> rested;  ///< key `hours`
  std::optional<Temperature> temperature;
  bool charging = false;  ///< a charger was on: no rest voltage at all
};

struct LoadTest {
  std::optional<Voltage> before;
  Current amps;
  Voltage volts;
  std::optional<Time> duration;  ///< key `seconds`
  std::optional<Temperature> temperature;
  bool charging = false;  ///< a charger was on and carried part of the load
};

/// A conductance tester's reading.
struct TesterCheck {
  std::optional<Current> cca;
  std::optional<Resistance> resistance;  ///< key `ohms`
  std::optional<Temperature> temperature;
};

enum class ElectrolyteLevel { above, at, below, dry };

struct CellCheck {
  std::optional<double> specific_gravity;  ///< as read, not yet corrected for temperature
  std::optional<Voltage> volts;
  std::optional<Temperature> temperature;
  std::optional<ElectrolyteLevel> level;
};

struct BatteryChecks {
  std::optional<RestCheck> rest;
  std::optional<LoadTest> load_test;
  std::optional<TesterCheck> tester;
  std::vector<CellCheck> cells;
  std::optional<Voltage> top_leak;  ///< post to case top
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
};

struct Charger {
  std::string id, plus, minus;
  Voltage setpoint;
  Current limit;
  std::string note;
};

struct RunEnd {
  trade::TerminationKind kind = trade::TerminationKind::crimped;
  Resistances resistances;
  std::string note;
};

/// The return conductor of a run. `ends` and `wire.sound` are inherited from the run where not given;
/// `as_found` and `seen` never are.
struct ReturnConductor {
  std::string from, to;
  RunEnd end_from, end_to;
  Resistances wire;
  std::string note;
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
};

struct Joint {
  std::string id, from, to;
  trade::JointKind kind;
  std::optional<Current> rating;
  Resistances resistances;
  std::string note;
};

struct Switch {
  std::string id, from, to;
  trade::SwitchKind kind;
  std::optional<Current> rating;
  std::optional<Current> interrupts;
  bool closed = true;
  Resistances resistances;
  std::string note;
};

struct Fuse {
  std::string id, from, to;
  Current rating;
  std::optional<trade::FuseForm> form;
  std::optional<Current> interrupts;
  std::optional<Voltage> volts;
  Resistances resistances;
  std::string note;
};

struct Shunt {
  std::string id, from, to;
  Current rating;
  Voltage drop;
  std::string note;
};

struct Isolator {
  std::string id, from, to;  ///< from is the anode
  Voltage drop{0.7};
  std::optional<Current> rating;
  std::string note;
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
  std::optional<Time> on_for, rest_for;
  Fraction efficiency{1};  ///< inverters: `takes` is what comes out, takes / efficiency + idle goes in
  Power idle;
  std::string note;
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
};

enum class Reach { easy, tools, no };

struct Point {
  std::string place;
  Reach reach = Reach::easy;
  std::string note;
};

struct Case {
  std::string name;
  bool all_on = false;
  std::vector<std::string> on;              ///< load ids
  std::map<std::string, Takes> set;         ///< load id → what it takes in this case
  std::vector<std::string> open, closed;    ///< element, run or switch ids
  std::vector<std::string> chargers;        ///< ids that run
  std::optional<Temperature> ambient;
  std::optional<Time> per_day;              ///< key `hours_per_day`
  std::string note;
};

/// ±(percent of reading + counts × last digit).
struct Accuracy {
  double percent = 0;
  double counts = 0;
  double last_digit = 0;  ///< key `digits_to`, in the SI unit of the quantity
};

struct Meter {
  std::string id;
  std::optional<Accuracy> volts, amps, ohms, temperature;
  std::string note;
};

struct VoltsReading { Voltage value; std::string red, black; };
struct AmpsReading { Current value; std::string in; };
struct OhmsReading { Resistance value; std::string across; };
struct TemperatureReading { Temperature value; std::string at; };

struct Reading {
  std::variant<VoltsReading, AmpsReading, OhmsReading, TemperatureReading> what;
  std::string in_case;              ///< empty only for ohms
  std::string meter;                ///< empty: the built-in one
  std::optional<double> spread;     ///< ± the value jumped about, in the quantity's SI unit
  std::optional<double> minutes;    ///< when it was taken, for drift
  std::string note;
};

struct CableOffer {
  trade::Gauge gauge;
  std::string gauge_as_written;
  std::optional<double> price;  ///< per metre, any one currency
  std::optional<Temperature> insulation;
  std::optional<trade::ConductorKind> conductor;
  std::string note;
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
};

}  // namespace ohmtrail::netlist
