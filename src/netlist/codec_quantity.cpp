#include <fmt/format.h>

#include <cmath>

#include "netlist/codec.hpp"
#include "netlist/quantity_hint.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::netlist {

namespace {

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

Remark parser_remark(std::string_view name, std::string_view message) {
  constexpr std::string_view divider = ", expected ";
  const auto at = message.find(divider);
  if (at == std::string_view::npos) return {name, std::string(message), "", ""};
  return {name, std::string(message.substr(0, at)), std::string(message.substr(at + divider.size())), ""};
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
      Remark remark = parser_remark("bad-quantity", parsed.error());
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

}  // namespace ohmtrail::netlist
