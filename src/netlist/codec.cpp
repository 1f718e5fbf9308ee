#include "netlist/codec.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "netlist/characters.hpp"
#include "netlist/nearest.hpp"
#include "netlist/quantity_hint.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::netlist {

namespace {

/// The units layer's "what, expected what" in two.
Remark remark_of(std::string_view name, std::string_view message) {
  constexpr std::string_view divider = ", expected ";
  const auto at = message.find(divider);
  if (at == std::string_view::npos) return {name, std::string(message), "", ""};
  return {name, std::string(message.substr(0, at)), std::string(message.substr(at + divider.size())), ""};
}

std::string expected_quantity(const FieldKind& field) {
  const std::string_view bare = field.definition == "hours"     ? " or a number in hours"
                                : field.definition == "minutes" ? " or a number in minutes"
                                                                : "";
  return units::accepted_units(field.kind) + std::string(bare);
}

bool in_range(Reader& reader, Value value, const FieldKind& field, Range range, double si) {
  if (range == Range::any || si > 0 || (range == Range::not_negative && si == 0)) return true;
  const std::string_view limit = range == Range::positive ? "above zero" : "zero or more";
  const std::string_view what = si == 0 ? "zero" : "negative";
  reader.problems.error(
      value, {si == 0 ? "not-positive" : "negative-value", fmt::format("{} is {}", shown(value), what),
              fmt::format("{}, {}", expected_quantity(field), limit), ""});
  return false;
}

}  // namespace

bool wrong_kind(Reader& reader, Value value, std::string expected, std::string hint) {
  reader.problems.error(
      value, {"wrong-type", fmt::format("met {}", shown(value)), std::move(expected), std::move(hint)});
  return false;
}

bool read_quantity(Reader& reader, Value value, const FieldKind& field, Range range, double& si) {
  double met = 0;
  if (value.is(Kind::number)) {
    met = value.number() * field.si_per_number;
    if (field.kind == units::Kind::fraction) met = value.number() / 100;
    if (!std::isfinite(met)) {
      reader.problems.error(value, {"out-of-range", fmt::format("{} is too large", shown(value)),
                                    expected_quantity(field), ""});
      return false;
    }
    if (field.kind == units::Kind::temperature && met < -273.15) {
      reader.problems.error(value, {"out-of-range", fmt::format("{} °C is below absolute zero", shown(value)),
                                    "a temperature in °C", ""});
      return false;
    }
  } else if (value.is(Kind::string)) {
    const auto parsed = units::parse_si(value.string(), field.kind);
    if (!parsed) {
      Remark remark = remark_of("bad-quantity", parsed.error());
      remark.hint = quantity_hint(value.string(), field.kind);
      reader.problems.error(value, std::move(remark));
      return false;
    }
    met = *parsed;
  } else {
    return wrong_kind(reader, value, expected_quantity(field));
  }
  if (!in_range(reader, value, field, range, met)) return false;
  si = met;
  return true;
}

Json write_quantity(double si, const FieldKind& field) {
  if (field.si_per_number == 1) return si;
  const bool fraction = field.kind == units::Kind::fraction;
  const double number = fraction ? si * 100 : si / field.si_per_number;
  // The number may not lead back to the same double; a neighbour does, or the SI unit spelled out.
  for (const double candidate :
       {number, std::nextafter(number, HUGE_VAL), std::nextafter(number, -HUGE_VAL)}) {
    if ((fraction ? candidate / 100 : candidate * field.si_per_number) == si) return candidate;
  }
  if (field.kind == units::Kind::time) return fmt::format("{} s", units::exact(si));
  if (field.kind == units::Kind::charge) return fmt::format("{} C", units::exact(si));
  return number;
}

Json quantity_schema(const FieldKind& field, Range range) {
  Json schema = {{"$ref", fmt::format("#/$defs/{}", field.definition)}};
  if (range == Range::positive) schema["exclusiveMinimum"] = 0;
  if (range == Range::not_negative) schema["minimum"] = 0;
  if (range != Range::any) schema["not"] = {{"type", "string"}, {"pattern", "^\\s*-"}};
  return schema;
}

bool Hours::read(Reader& reader, Value value, Time& time) {
  double seconds = 0;
  if (!read_quantity(reader, value, hours_field, Range::not_negative, seconds)) return false;
  time = Time{seconds};
  return true;
}
Json Hours::write(const Time& time) {
  return write_quantity(time.si(), hours_field);
}
Json Hours::schema() {
  return quantity_schema(hours_field, Range::not_negative);
}

bool Percent::read(Reader& reader, Value value, Fraction& fraction) {
  double share = 0;
  if (!read_quantity(reader, value, field_of<Fraction>(), Range::not_negative, share)) return false;
  if (share > 1) {
    reader.problems.error(value, {"out-of-range", fmt::format("{} is more than all of it", shown(value)),
                                  "a percentage from 0 to 100", ""});
    return false;
  }
  if (value.is(Kind::number) && share > 0 && share < 0.01) {
    reader.problems.warning(value, {"unusual-percent", fmt::format("{0} is read as {0} %", shown(value)), "",
                                    fmt::format("if a share of one is meant, write \"{} %\"", share * 1e4)});
  }
  fraction = Fraction{share};
  return true;
}
Json Percent::write(const Fraction& fraction) {
  return write_quantity(fraction.of_one(), field_of<Fraction>());
}
Json Percent::schema() {
  Json schema = quantity_schema(field_of<Fraction>(), Range::not_negative);
  schema["maximum"] = 100;
  return schema;
}

bool PositivePercent::read(Reader& reader, Value value, Fraction& fraction) {
  Fraction met;
  if (!Percent::read(reader, value, met)) return false;
  if (!in_range(reader, value, field_of<Fraction>(), Range::positive, met.of_one())) return false;
  fraction = met;
  return true;
}

bool PlainNumber::read(Reader& reader, Value value, double& number) {
  if (!value.is(Kind::number)) return wrong_kind(reader, value, "a plain number");
  const double met = value.number();
  if (met < 0) {
    reader.problems.error(
        value, {"negative-value", fmt::format("{} is negative", shown(value)), "zero or more", ""});
    return false;
  }
  number = met;
  return true;
}
Json PlainNumber::schema() {
  return {{"type", "number"}, {"minimum", 0}};
}

bool WholeNumber::read(Reader& reader, Value value, int& number) {
  constexpr double most = 1e6;
  const double met = value.is(Kind::number) ? value.number() : 0;
  if (!(met >= 1 && met <= most) || met != std::floor(met))
    return wrong_kind(reader, value, "a whole number from 1");
  number = static_cast<int>(met);
  return true;
}
Json WholeNumber::schema() {
  return {{"type", "integer"}, {"minimum", 1}, {"maximum", 1000000}};
}

bool Flag::read(Reader& reader, Value value, bool& flag) {
  if (!value.is(Kind::boolean)) {
    return wrong_kind(reader, value, "true or false", value.is(Kind::string) ? "without quotes" : "");
  }
  flag = value.boolean();
  return true;
}
Json Flag::schema() {
  return {{"type", "boolean"}};
}

bool Text::read(Reader& reader, Value value, std::string& text) {
  if (!value.is(Kind::string)) return wrong_kind(reader, value, "a text in quotes");
  text = value.string();
  return true;
}
Json Text::schema() {
  return {{"type", "string"}};
}

bool TextOrNumber::read(Reader& reader, Value value, std::string& text) {
  if (!value.is(Kind::number)) return Text::read(reader, value, text);
  text = value.source();
  return true;
}
Json TextOrNumber::schema() {
  return {{"type", Json::array({"string", "number"})}};
}

bool Name::read(Reader& reader, Value value, std::string& text) {
  if (!Text::read(reader, value, text)) return false;
  return tell_bad_name(reader, value, text, NameUse::reference);
}
Json Name::schema() {
  return {{"type", "string"}, {"minLength", 1}};
}

bool Identifier::read(Reader& reader, Value value, std::string& text) {
  if (value.is(Kind::number)) {
    return wrong_kind(reader, value, "a name in quotes", fmt::format("write \"{}\"", value.source()));
  }
  if (!Text::read(reader, value, text)) return false;
  return tell_bad_name(reader, value, text, NameUse::definition);
}
Json Identifier::schema() {
  return {{"$ref", "#/$defs/identifier"}};
}

bool GaugeCodec::read(Reader& reader, Value value, trade::Gauge& gauge) {
  if (!value.is(Kind::string)) {
    const std::string hint =
        value.is(Kind::number) ? fmt::format("write \"{0} AWG\", \"{0} SAE\" or \"{0} mm2\"", value.source())
                               : std::string();
    return wrong_kind(reader, value, "a gauge such as \"2/0 AWG\", \"2 SAE\" or \"35 mm2\"", hint);
  }
  const auto parsed = trade::parse_gauge(value.string());
  if (!parsed) {
    Remark remark = remark_of("unknown-gauge", parsed.error());
    remark.hint = gauge_hint(value.string());
    reader.problems.error(value, std::move(remark));
    return false;
  }
  gauge = *parsed;
  return true;
}
Json GaugeCodec::write(const trade::Gauge& gauge) {
  return trade::print(gauge);
}
Json GaugeCodec::schema() {
  return {{"$ref", "#/$defs/gauge"}};
}

namespace {

/// No text is two of them. The likely one first: a parse that fails is slow, for it finds out why.
std::optional<Takes> what_it_takes(std::string_view text) {
  if (text.ends_with('A')) {
    if (const auto current = units::parse<Current>(text)) return *current;
  }
  if (const auto power = units::parse<Power>(text)) return *power;
  if (const auto current = units::parse<Current>(text)) return *current;
  if (const auto resistance = units::parse<Resistance>(text)) return *resistance;
  return std::nullopt;
}

}  // namespace

bool TakesCodec::read(Reader& reader, Value value, Takes& takes) {
  constexpr std::string_view expected = "a power \"1000 W\", a current \"8 A\" or a resistance \"1.2 ohm\"";
  if (!value.is(Kind::string)) {
    const std::string hint =
        value.is(Kind::number) ? fmt::format("write \"{0} W\" or \"{0} A\"", value.source()) : std::string();
    return wrong_kind(reader, value, std::string(expected), hint);
  }
  const std::string_view text = value.string();
  const std::optional<Takes> met = what_it_takes(text);
  if (!met) {
    reader.problems.error(value,
                          {"bad-quantity", fmt::format("{} says not what the load takes", shown(value)),
                           std::string(expected), quantity_hint(text, units::Kind::power)});
    return false;
  }
  const double si = std::visit([](auto q) { return q.si(); }, *met);
  if (!(si > 0)) {
    reader.problems.error(
        value, {si < 0 ? "negative-value" : "not-positive",
                fmt::format("{} is {}", shown(value), si < 0 ? "negative" : "zero"),
                fmt::format("{}, above zero", expected), "to switch a load off leave it out of \"on\""});
    return false;
  }
  takes = *met;
  return true;
}

Json TakesCodec::write(const Takes& takes) {
  constexpr std::string_view unit[] = {"W", "A", "ohm"};
  const double si = std::visit([](auto q) { return q.si(); }, takes);
  return fmt::format("{} {}", units::exact(si), unit[takes.index()]);
}
Json TakesCodec::schema() {
  return {{"$ref", "#/$defs/takes"}};
}

std::optional<std::size_t> read_word(Reader& reader, Value value,
                                     const std::vector<std::string_view>& known) {
  if (!value.is(Kind::string)) {
    wrong_kind(reader, value, one_of(known));
    return std::nullopt;
  }
  const std::string_view text = value.string();
  const auto found = std::find(known.begin(), known.end(), text);
  if (found != known.end()) return static_cast<std::size_t>(found - known.begin());
  reader.problems.error(value, {"unknown-word", fmt::format("{} is not one of the words", shown(value)),
                                one_of(known), reader.problems.listing() ? did_you_mean(text, known) : ""});
  return std::nullopt;
}

}  // namespace ohmtrail::netlist
