#include "netlist/sections.hpp"

/// What the current passes: runs, joints, switches, fuses, shunts, isolators.
namespace ohmtrail::netlist {

namespace {

/// sound, resistance and seen of what holds them in `resistances`.
template <class T>
constexpr Key<T> sound_key() {
  return optional < T, [](auto& o) -> auto& {
    return o.resistances.sound;
  }
  , NotNegative < Resistance >> ("sound", "resistance of a good one of its kind; default from the tables");
}
template <class T>
constexpr Key<T> resistance_key() {
  return optional < T, [](auto& o) -> auto& {
    return o.resistances.as_found;
  }
  , NotNegative < Resistance >> ("resistance", "resistance as found; default as sound");
}
template <class T>
constexpr Key<T> seen_key() {
  return optional < T, [](auto& o) -> auto& {
    return o.resistances.seen;
  }
  , SeenCodec > ("seen", "what the eye and hand found");
}
/// The same of a wire, which holds them in `wire`.
template <class T>
constexpr Key<T> wire_sound_key() {
  return optional < T, [](auto& o) -> auto& {
    return o.wire.sound;
  }
  , NotNegative < Resistance >> ("sound", "resistance of the wire alone when good; default from the tables");
}
template <class T>
constexpr Key<T> wire_resistance_key() {
  return optional < T, [](auto& o) -> auto& {
    return o.wire.as_found;
  }
  , NotNegative < Resistance >> ("resistance", "resistance of the wire alone as found; default as sound");
}
template <class T>
constexpr Key<T> wire_seen_key() {
  return optional < T, [](auto& o) -> auto& {
    return o.wire.seen;
  }
  , SeenCodec > ("seen", "what the eye and hand found on the wire");
}

template <class T>
constexpr Key<T> id_key() {
  return required<T, &T::id, Identifier>("id", "its name");
}
template <class T>
constexpr Key<T> from_key() {
  return required<T, &T::from, Identifier>("from", "point where it begins");
}
template <class T>
constexpr Key<T> to_key() {
  return required<T, &T::to, Identifier>("to", "point where it ends");
}

template <class T, Need need>
constexpr Key<T> ends_key() {
  return {"ends",
          Need::optional,
          "its terminations: a word for both, or {\"from\": …, \"to\": …}; default crimped",
          [](Reader& reader, Value value, T& owner) {
            return read_ends(reader, value, {owner.end_from, owner.end_to});
          },
          [](Json& object, std::string_view name, const T& owner) {
            const bool plain = owner.end_from == RunEnd{} && owner.end_to == RunEnd{};
            if (need == Need::required || !plain)
              object[std::string(name)] = write_ends(owner.end_from, owner.end_to);
          },
          &ends_schema};
}

struct LengthFrom {
  using Type = bool;
  static std::vector<std::string_view> known() { return {"measured", "estimated"}; }
  static bool read(Reader& reader, Value value, bool& estimated) {
    const auto index = read_word(reader, value, known());
    if (index) estimated = *index == 1;
    return index.has_value();
  }
  static Json write(bool estimated) { return known()[estimated ? 1 : 0]; }
  static Json schema() { return {{"enum", known()}}; }
};

}  // namespace

template <>
std::span<const Key<Resistances>> keys() {
  using T = Resistances;
  static constexpr Key<T> table[] = {
      optional<T, &T::sound, NotNegative<Resistance>>("sound", "resistance of a good crimp"),
      optional<T, &T::as_found, NotNegative<Resistance>>("resistance", "resistance of the crimp as found"),
      optional<T, &T::seen, SeenCodec>("seen", "what the eye and hand found on the crimp")};
  return table;
}

template <>
std::span<const Key<RunEnd>> keys() {
  using T = RunEnd;
  static constexpr Key<T> table[] = {
      optional<T, &T::kind, Word<trade::TerminationKind>>("kind", "default crimped"), sound_key<T>(),
      resistance_key<T>(), seen_key<T>(),
      optional<T, &T::crimp, Object<Resistances>>("crimp",
                                                  "the crimp's own sound, resistance, seen; those beside it "
                                                  "are then the bolted contact's")};
  return table;
}

template <>
std::span<const Key<ReturnConductor>> keys() {
  using T = ReturnConductor;
  // Written in full: what is left out would be inherited.
  static constexpr Key<T> table[] = {from_key<T>(),
                                     to_key<T>(),
                                     ends_key<T, Need::required>(),
                                     wire_sound_key<T>(),
                                     wire_resistance_key<T>(),
                                     wire_seen_key<T>()};
  return table;
}

template <>
std::span<const Key<Run>> keys() {
  using T = Run;
  static constexpr Key<T> table[] = {
      id_key<T>(),
      from_key<T>(),
      to_key<T>(),
      required<T, &T::gauge, GaugeCodec>("gauge", "conductor size: \"2/0 AWG\", \"2 SAE\", \"35 mm2\""),
      required<T, &T::length, Positive<Length>>("length", "one way"),
      optional<T, &T::conductor, Word<trade::ConductorKind>>("conductor", "default tinned-copper"),
      optional<T, &T::length_estimated, LengthFrom>("length_from", "default measured"),
      optional<T, &T::insulation, Positive<Temperature>>("insulation", "temperature rating, default 105 °C"),
      optional<T, &T::in, Text>("in", "engine-space or a free word"),
      optional<T, &T::bundle, WholeNumber>("bundle", "current-carrying conductors together, default 1"),
      ends_key<T, Need::optional>(),
      wire_sound_key<T>(),
      wire_resistance_key<T>(),
      wire_seen_key<T>(),
      optional<T, &T::return_conductor, Object<ReturnConductor>>("return", "its return conductor"),
  };
  return table;
}

template <>
std::span<const Key<Joint>> keys() {
  using T = Joint;
  static constexpr Key<T> table[] = {id_key<T>(),
                                     from_key<T>(),
                                     to_key<T>(),
                                     required<T, &T::kind, Word<trade::JointKind>>("kind", "what it is"),
                                     optional<T, &T::rating, Positive<Current>>("rating", "rated current"),
                                     sound_key<T>(),
                                     resistance_key<T>(),
                                     seen_key<T>()};
  return table;
}

template <>
std::span<const Key<Switch>> keys() {
  using T = Switch;
  static constexpr Key<T> table[] = {
      id_key<T>(),
      from_key<T>(),
      to_key<T>(),
      required<T, &T::kind, Word<trade::SwitchKind>>("kind", "what it is"),
      optional<T, &T::rating, Positive<Current>>("rating", "rated current"),
      optional<T, &T::interrupts, Positive<Current>>("interrupts", "the most a breaker interrupts"),
      optional<T, &T::closed, Flag>("closed", "default true"),
      sound_key<T>(),
      resistance_key<T>(),
      seen_key<T>()};
  return table;
}

template <>
std::span<const Key<Fuse>> keys() {
  using T = Fuse;
  static constexpr Key<T> table[] = {
      id_key<T>(),
      from_key<T>(),
      to_key<T>(),
      required<T, &T::rating, Positive<Current>>("rating", "rated current"),
      optional<T, &T::form, Word<trade::FuseForm>>("form", "what it looks like"),
      optional<T, &T::interrupts, Positive<Current>>("interrupts", "the most it interrupts"),
      optional<T, &T::volts, Positive<Voltage>>("volts", "rated voltage"),
      sound_key<T>(),
      resistance_key<T>(),
      seen_key<T>()};
  return table;
}

template <>
std::span<const Key<Shunt>> keys() {
  using T = Shunt;
  static constexpr Key<T> table[] = {
      id_key<T>(), from_key<T>(), to_key<T>(),
      required<T, &T::rating, Positive<Current>>("rating", "rated current, \"500 A\""),
      required<T, &T::drop, Positive<Voltage>>("drop", "drop at the rated current, \"50 mV\"")};
  return table;
}

template <>
std::span<const Key<Isolator>> keys() {
  using T = Isolator;
  static constexpr Key<T> table[] = {
      id_key<T>(), from_key<T>(), to_key<T>(),
      optional<T, &T::drop, Positive<Voltage>>("drop", "forward drop at its rating, default 0.7 V"),
      optional<T, &T::rating, Positive<Current>>("rating", "rated current")};
  return table;
}

}  // namespace ohmtrail::netlist
