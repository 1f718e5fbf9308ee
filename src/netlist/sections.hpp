#pragma once
#include "netlist/object.hpp"

/// The sections of a netlist: which tables of keys there are, and codecs for the values that are more than
/// one key.
namespace ohmtrail::netlist {

/// A reading as it is written, before it is known which of the four kinds it is.
struct ReadingForm {
  std::optional<Voltage> volts;
  std::optional<Current> amps;
  std::optional<Resistance> ohms;
  std::optional<Temperature> temperature;
  std::string red, black, in, across, at, in_case, meter;
  Value spread;
  std::optional<double> spread_number;
  std::optional<double> minutes;
  std::string note;
};

/// The accuracy of a meter for one quantity.
template <class Q>
struct AccuracyForm : Accuracy {};

template <>
std::span<const Key<System>> keys();
template <>
std::span<const Key<SystemInfo>> keys();
template <>
std::span<const Key<Limits>> keys();
template <>
std::span<const Key<Job>> keys();
template <>
std::span<const Key<Battery>> keys();
template <>
std::span<const Key<BatteryChecks>> keys();
template <>
std::span<const Key<RestCheck>> keys();
template <>
std::span<const Key<LoadTest>> keys();
template <>
std::span<const Key<TesterCheck>> keys();
template <>
std::span<const Key<CellCheck>> keys();
template <>
std::span<const Key<Charger>> keys();
template <>
std::span<const Key<Converter>> keys();
template <>
std::span<const Key<Run>> keys();
template <>
std::span<const Key<RunEnd>> keys();
template <>
std::span<const Key<ReturnConductor>> keys();
template <>
std::span<const Key<Joint>> keys();
template <>
std::span<const Key<Switch>> keys();
template <>
std::span<const Key<Fuse>> keys();
template <>
std::span<const Key<Shunt>> keys();
template <>
std::span<const Key<Isolator>> keys();
template <>
std::span<const Key<Load>> keys();
template <>
std::span<const Key<Case>> keys();
template <>
std::span<const Key<Meter>> keys();
template <>
std::span<const Key<AccuracyForm<Voltage>>> keys();
template <>
std::span<const Key<AccuracyForm<Current>>> keys();
template <>
std::span<const Key<AccuracyForm<Resistance>>> keys();
template <>
std::span<const Key<AccuracyForm<TemperatureDifference>>> keys();
template <>
std::span<const Key<ReadingForm>> keys();
template <>
std::span<const Key<Point>> keys();
template <>
std::span<const Key<CableOffer>> keys();

template <>
struct Check<System> {
  static void run(Reader&, Value, System&);
};
template <>
struct Check<SystemInfo> {
  static void run(Reader&, Value, SystemInfo&);
};
template <>
struct Check<Battery> {
  static void run(Reader&, Value, Battery&);
};
template <>
struct Check<TesterCheck> {
  static void run(Reader&, Value, TesterCheck&);
};
template <>
struct Check<LoadTest> {
  static void run(Reader&, Value, LoadTest&);
};
template <>
struct Check<CellCheck> {
  static void run(Reader&, Value, CellCheck&);
};
template <>
struct Check<Run> {
  static void run(Reader&, Value, Run&);
};
template <>
struct Check<RunEnd> {
  static void run(Reader&, Value, RunEnd&);
};
template <>
struct Check<Joint> {
  static void run(Reader&, Value, Joint&);
};
template <>
struct Check<Switch> {
  static void run(Reader&, Value, Switch&);
};
template <>
struct Check<Fuse> {
  static void run(Reader&, Value, Fuse&);
};
template <>
struct Check<Load> {
  static void run(Reader&, Value, Load&);
};
template <>
struct Check<ReadingForm> {
  static void run(Reader&, Value, ReadingForm&);
};

/// A word, or {kind, sound, resistance, seen}.
struct EndCodec {
  using Type = RunEnd;
  static bool read(Reader& reader, Value value, RunEnd& end);
  static Json write(const RunEnd& end);
  static Json schema();
};

/// A word for both ends, or {"from": E, "to": E}.
struct Ends {
  RunEnd& from;
  RunEnd& to;
};
bool read_ends(Reader& reader, Value value, Ends ends);
[[nodiscard]] Json write_ends(const RunEnd& from, const RunEnd& to);
[[nodiscard]] Json ends_schema();

struct ReadingCodec {
  using Type = Reading;
  static bool read(Reader& reader, Value value, Reading& reading);
  static Json write(const Reading& reading);
  static Json schema();
};

using SeenCodec = List<Word<trade::Observation>>;
using NameList = List<Name>;

}  // namespace ohmtrail::netlist
