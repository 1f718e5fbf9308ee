#include <fmt/format.h>

#include "netlist/codec.hpp"
#include "netlist/quantity_hint.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::netlist {

namespace {

/// "10" without its unit: 10 AWG is half as thick as 10 mm2.
void doubt_bare_number(Reader& reader, Value value) {
  const std::string_view text = value.string();
  if (text.find_first_not_of("0123456789. ") != std::string_view::npos) return;
  reader.problems.warning(value, {"gauge-without-unit", fmt::format("\"{0}\" is read as {0} AWG", text), "",
                                  fmt::format("write \"{0} AWG\", or \"{0} mm2\" if that is meant", text)});
}

}  // namespace

bool GaugeCodec::read(Reader& reader, Value value, trade::Gauge& gauge) {
  if (!value.is(Kind::string)) {
    const std::string hint =
        value.is(Kind::number) ? fmt::format("write \"{0} AWG\", \"{0} SAE\" or \"{0} mm2\"", value.source())
                               : std::string();
    return wrong_kind(reader, value, "a gauge such as \"2/0 AWG\", \"2 SAE\" or \"35 mm2\"", hint);
  }
  const auto parsed = trade::parse_gauge(value.string());
  if (!parsed) {
    Remark remark = parser_remark("unknown-gauge", parsed.error());
    remark.hint = gauge_hint(value.string());
    reader.problems.error(value, std::move(remark));
    return false;
  }
  doubt_bare_number(reader, value);
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
                          {"bad-quantity", fmt::format("{} does not say what the load takes", shown(value)),
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

}  // namespace ohmtrail::netlist
