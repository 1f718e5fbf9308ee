#include <fmt/format.h>

#include "netlist/nearest.hpp"
#include "netlist/sections.hpp"

/// Meters and the numbers read off them.
namespace ohmtrail::netlist {

namespace {

/// Percent of the reading, kept as the number of percent.
struct PercentOfReading {
  using Type = double;
  static bool read(Reader& reader, Value value, double& percent) {
    if (value.is(Kind::number)) return PlainNumber::read(reader, value, percent);
    double share = 0;
    if (!read_quantity(reader, value, field_of<Fraction>(), Range::not_negative, share)) return false;
    percent = share * 100;
    return true;
  }
  static Json write(double percent) { return percent; }
  static Json schema() { return Percent::schema(); }
};

/// The last digit in the unit of the meter's quantity.
template <class Q>
struct LastDigit {
  using Type = double;
  static bool read(Reader& reader, Value value, double& digit) {
    return read_quantity(reader, value, field_of<Q>(), Range::not_negative, digit);
  }
  static Json write(double digit) { return digit; }
  static Json schema() { return quantity_schema(field_of<Q>(), Range::not_negative); }
};

template <class Q>
std::span<const Key<AccuracyForm<Q>>> accuracy_keys() {
  using T = AccuracyForm<Q>;
  static constexpr Key<T> table[] = {
      optional<T, &T::percent, PercentOfReading>("percent", "of the reading"),
      optional<T, &T::counts, PlainNumber>("counts", "of the last digit"),
      optional<T, &T::last_digit, LastDigit<Q>>("digits_to", "what one count of the last digit is"),
  };
  return table;
}

template <class Q>
struct AccuracyCodec {
  using Type = Accuracy;
  static bool read(Reader& reader, Value value, Accuracy& accuracy) {
    AccuracyForm<Q> form;
    if (!Object<AccuracyForm<Q>>::read(reader, value, form)) return false;
    if (form.counts > 0 && !value.member("digits_to").exists()) {
      tell_missing_key(reader, value, "digits_to", "what one count of the last digit is, such as 0.001");
      return false;
    }
    accuracy = form;
    return true;
  }
  static Json write(const Accuracy& accuracy) { return Object<AccuracyForm<Q>>::write({accuracy}); }
  static Json schema() { return Object<AccuracyForm<Q>>::schema(); }
};

/// The number as it stands; what it means is known once the kind of reading is.
struct Minutes {
  using Type = double;
  static bool read(Reader& reader, Value value, double& minutes) {
    if (value.is(Kind::number)) {
      minutes = value.number();
      return true;
    }
    double seconds = 0;
    if (!read_quantity(reader, value, minutes_field, Range::any, seconds)) return false;
    minutes = seconds / 60;
    return true;
  }
  static Json write(double minutes) { return minutes; }
  static Json schema() { return quantity_schema(minutes_field, Range::any); }
};

bool keep_spread(Reader&, Value value, ReadingForm& form) {
  form.spread = value;
  return true;
}

void write_spread(Json& object, std::string_view name, const ReadingForm& form) {
  if (form.spread_number) object[std::string(name)] = *form.spread_number;
}

Json spread_schema() {
  return {{"anyOf", Json::array({Json{{"type", "number"}, {"minimum", 0}}, Json{{"type", "string"}}})}};
}

/// One kind of reading: its key, and the keys that say where it was taken.
struct ReadingKind {
  std::string_view key;
  std::vector<std::string_view> where;
  FieldKind spread;
};

const std::vector<ReadingKind>& reading_kinds() {
  static const std::vector<ReadingKind> kinds = {
      {"volts", {"red", "black"}, field_of<Voltage>()},
      {"amps", {"in"}, field_of<Current>()},
      {"ohms", {"across"}, field_of<Resistance>()},
      {"temperature", {"at"}, field_of<TemperatureDifference>()},
  };
  return kinds;
}

const ReadingKind* kind_of(Reader& reader, Value value) {
  const ReadingKind* met = nullptr;
  for (const ReadingKind& kind : reading_kinds()) {
    const Value member = value.member(kind.key);
    if (!member.exists()) continue;
    if (met != nullptr) {
      reader.problems.error_at_key(
          member, {"two-readings", fmt::format("both {} and {} in one reading", met->key, kind.key),
                   "exactly one of volts, amps, ohms, temperature", "make them two readings"});
    } else {
      met = &kind;
    }
  }
  if (met == nullptr) {
    reader.problems.error(value, {"no-reading", "the reading holds no number",
                                  "exactly one of volts, amps, ohms, temperature", ""});
  }
  return met;
}

void tell_where(Reader& reader, Value value, const ReadingKind& met) {
  for (const ReadingKind& kind : reading_kinds()) {
    for (const std::string_view key : kind.where) {
      const Value member = value.member(key);
      if (&kind == &met && !member.exists()) {
        tell_missing_key(reader, value, key,
                         fmt::format("where the {} were read: {}", met.key, one_of(met.where)));
      } else if (&kind != &met && member.exists() && !value.member(kind.key).exists()) {
        reader.problems.error_at_key(
            member, {"stray-key", fmt::format("\"{}\" does not belong to a reading of {}", key, met.key),
                     one_of(met.where), ""});
      }
    }
  }
}

Reading reading_of(const ReadingForm& form) {
  Reading reading;
  if (form.volts)
    reading.what = VoltsReading{*form.volts, form.red, form.black};
  else if (form.amps)
    reading.what = AmpsReading{*form.amps, form.in};
  else if (form.ohms)
    reading.what = OhmsReading{*form.ohms, form.across};
  else if (form.temperature)
    reading.what = TemperatureReading{*form.temperature, form.at};
  reading.in_case = form.in_case;
  reading.meter = form.meter;
  reading.spread = form.spread_number;
  reading.minutes = form.minutes;
  reading.note = form.note;
  return reading;
}

ReadingForm form_of(const Reading& reading) {
  ReadingForm form;
  form.in_case = reading.in_case;
  form.meter = reading.meter;
  form.spread_number = reading.spread;
  form.minutes = reading.minutes;
  form.note = reading.note;
  if (const auto* volts = std::get_if<VoltsReading>(&reading.what)) {
    form.volts = volts->value, form.red = volts->red, form.black = volts->black;
  } else if (const auto* amps = std::get_if<AmpsReading>(&reading.what)) {
    form.amps = amps->value, form.in = amps->in;
  } else if (const auto* ohms = std::get_if<OhmsReading>(&reading.what)) {
    form.ohms = ohms->value, form.across = ohms->across;
  } else if (const auto* temperature = std::get_if<TemperatureReading>(&reading.what)) {
    form.temperature = temperature->value, form.at = temperature->at;
  }
  return form;
}

}  // namespace

template <>
std::span<const Key<AccuracyForm<Voltage>>> keys() {
  return accuracy_keys<Voltage>();
}
template <>
std::span<const Key<AccuracyForm<Current>>> keys() {
  return accuracy_keys<Current>();
}
template <>
std::span<const Key<AccuracyForm<Resistance>>> keys() {
  return accuracy_keys<Resistance>();
}
template <>
std::span<const Key<AccuracyForm<TemperatureDifference>>> keys() {
  return accuracy_keys<TemperatureDifference>();
}

template <>
std::span<const Key<Meter>> keys() {
  using T = Meter;
  static constexpr Key<T> table[] = {
      required<T, &T::id, Name>("id", "its name"),
      optional<T, &T::volts, AccuracyCodec<Voltage>>("volts", "accuracy for volts"),
      optional<T, &T::amps, AccuracyCodec<Current>>("amps", "accuracy for amperes"),
      optional<T, &T::ohms, AccuracyCodec<Resistance>>("ohms", "accuracy for ohms"),
      optional<T, &T::temperature, AccuracyCodec<TemperatureDifference>>("temperature",
                                                                         "accuracy for temperatures"),
  };
  return table;
}

template <>
std::span<const Key<ReadingForm>> keys() {
  using T = ReadingForm;
  static constexpr Key<T> table[] = {
      optional<T, &T::in_case, Name>("case", "the case it was taken in; required except for ohms"),
      optional<T, &T::volts, AnySign<Voltage>>("volts", "V(red) − V(black)"),
      optional<T, &T::red, Name>("red", "point of the red probe"),
      optional<T, &T::black, Name>("black", "point of the black probe"),
      optional<T, &T::amps, AnySign<Current>>("amps", "current, positive from `from` to `to`"),
      optional<T, &T::in, Name>("in", "element that the clamp is around"),
      optional<T, &T::ohms, NotNegative<Resistance>>("ohms", "four-wire resistance, de-energised"),
      optional<T, &T::across, Name>("across", "element that was measured"),
      optional<T, &T::temperature, AnySign<Temperature>>("temperature", "temperature of an element"),
      optional<T, &T::at, Name>("at", "element that was measured"),
      optional<T, &T::meter, Name>("meter", "id of the meter; default a built-in one"),
      {"spread", Need::optional, "± the value jumped about", &keep_spread, &write_spread, &spread_schema},
      optional<T, &T::minutes, Minutes>("minutes", "when it was taken, for drift"),
  };
  return table;
}

void Check<ReadingForm>::run(Reader& reader, Value value, ReadingForm& form) {
  const ReadingKind* kind = kind_of(reader, value);
  if (kind == nullptr) return;
  tell_where(reader, value, *kind);
  double spread = 0;
  if (form.spread.exists() && read_quantity(reader, form.spread, kind->spread, Range::not_negative, spread)) {
    form.spread_number = spread;
  }
}

bool ReadingCodec::read(Reader& reader, Value value, Reading& reading) {
  ReadingForm form;
  const bool good = Object<ReadingForm>::read(reader, value, form);
  reading = reading_of(form);
  return good;
}

Json ReadingCodec::write(const Reading& reading) {
  return Object<ReadingForm>::write(form_of(reading));
}

Json ReadingCodec::schema() {
  Json schema = Object<ReadingForm>::schema();
  for (const ReadingKind& kind : reading_kinds()) {
    Json needed = Json::array({kind.key});
    for (const std::string_view key : kind.where) needed.push_back(key);
    if (kind.key != "ohms") needed.push_back("case");
    schema["oneOf"].push_back({{"required", needed}});
  }
  return schema;
}

}  // namespace ohmtrail::netlist
