#include "units/unit_words.hpp"

#include <algorithm>
#include <array>

namespace ohmtrail::units {
namespace {

// Factors are exact by definition: inch 25.4 mm, foot 0.3048 m, pound 0.45359237 kg (international yard and
// pound agreement, 1959); Fahrenheit and kelvin by their definitions on the Celsius scale. µ is written as
// U+00B5 or U+03BC, Ω as U+03A9 or U+2126: keyboards and meters' software differ.
constexpr UnitWord voltage[] = {{"V", 1},          {"mV", 1e-3}, {"uV", 1e-6}, {"\u00b5V", 1e-6},
                                {"\u03bcV", 1e-6}, {"kV", 1e3},  {"volt", 1},  {"volts", 1}};
constexpr UnitWord current[] = {{"A", 1},    {"mA", 1e-3}, {"uA", 1e-6}, {"\u00b5A", 1e-6}, {"\u03bcA", 1e-6},
                                {"kA", 1e3}, {"amp", 1},   {"amps", 1},  {"ampere", 1},     {"amperes", 1}};
constexpr UnitWord resistance[] = {{"ohm", 1},
                                   {"mohm", 1e-3},
                                   {"uohm", 1e-6},
                                   {"kohm", 1e3},
                                   {"ohms", 1},
                                   {"mohms", 1e-3},
                                   {"uohms", 1e-6},
                                   {"kohms", 1e3},
                                   {"\u03a9", 1},
                                   {"m\u03a9", 1e-3},
                                   {"u\u03a9", 1e-6},
                                   {"\u00b5\u03a9", 1e-6},
                                   {"\u03bc\u03a9", 1e-6},
                                   {"k\u03a9", 1e3},
                                   {"\u2126", 1},
                                   {"m\u2126", 1e-3},
                                   {"u\u2126", 1e-6},
                                   {"\u00b5\u2126", 1e-6},
                                   {"\u03bc\u2126", 1e-6},
                                   {"k\u2126", 1e3},
                                   {"\u00b5ohm", 1e-6},
                                   {"\u03bcohm", 1e-6}};
constexpr UnitWord power[] = {{"W", 1}, {"mW", 1e-3}, {"kW", 1e3}, {"watt", 1}, {"watts", 1}};
constexpr UnitWord energy[] = {{"J", 1}, {"kJ", 1e3}, {"Wh", 3600}, {"kWh", 3.6e6}};
constexpr UnitWord charge[] = {{"Ah", 3600}, {"mAh", 3.6}, {"C", 1}};
constexpr UnitWord length[] = {{"m", 1},         {"mm", 1e-3},     {"cm", 1e-2},       {"km", 1e3},
                               {"in", 0.0254},   {"inch", 0.0254}, {"inches", 0.0254}, {"ft", 0.3048},
                               {"foot", 0.3048}, {"feet", 0.3048}, {"yd", 0.9144},     {"metre", 1},
                               {"metres", 1},    {"meter", 1},     {"meters", 1}};
constexpr UnitWord area[] = {{"mm2", 1e-6},      {"mm\u00b2", 1e-6}, {"cm2", 1e-4},
                             {"cm\u00b2", 1e-4}, {"m2", 1},          {"m\u00b2", 1}};
constexpr UnitWord time[] = {{"s", 1},        {"ms", 1e-3},   {"min", 60},    {"h", 3600},     {"sec", 1},
                             {"second", 1},   {"seconds", 1}, {"minute", 60}, {"minutes", 60}, {"hour", 3600},
                             {"hours", 3600}, {"hr", 3600},   {"d", 86400}};
constexpr UnitWord mass[] = {{"kg", 1}, {"g", 1e-3}, {"lb", 0.45359237}, {"oz", 0.028349523125}};
constexpr UnitWord temperature[] = {{"C", 1},
                                    {"\u00b0C", 1},
                                    {"\u2103", 1},
                                    {"degC", 1},
                                    {"F", 5.0 / 9, -32},
                                    {"\u00b0F", 5.0 / 9, -32},
                                    {"\u2109", 5.0 / 9, -32},
                                    {"degF", 5.0 / 9, -32},
                                    {"K", 1, -273.15}};
constexpr UnitWord temperature_difference[] = {
    {"K", 1}, {"C", 1}, {"\u00b0C", 1}, {"F", 5.0 / 9}, {"\u00b0F", 5.0 / 9}};
constexpr UnitWord fraction[] = {{"%", 1e-2}, {"percent", 1e-2}};

constexpr std::array<KindWords, 13> kinds{{
    {Kind::voltage, "volts", "V, mV, µV, kV", voltage},
    {Kind::current, "amperes", "A, mA, kA", current},
    {Kind::resistance, "ohms", "ohm, mohm, uohm, kohm or Ω, mΩ, µΩ, kΩ", resistance},
    {Kind::power, "watts", "W, mW, kW", power},
    {Kind::energy, "energy", "J, kJ, Wh, kWh", energy},
    {Kind::charge, "ampere-hours", "Ah, mAh", charge},
    {Kind::length, "a length", "m, cm, mm, ft, in", length},
    {Kind::area, "an area", "mm2", area},
    {Kind::time, "a time", "s, min, h", time},
    {Kind::mass, "a mass", "kg, g, lb", mass},
    {Kind::temperature, "a temperature", "°C or C, °F or F, K", temperature},
    {Kind::temperature_difference, "a temperature difference", "K, C, F", temperature_difference},
    {Kind::fraction, "percent", "%", fraction},
}};

}  // namespace

const KindWords& words_of(Kind kind) {
  return *std::find_if(kinds.begin(), kinds.end(), [kind](const KindWords& k) { return k.kind == kind; });
}

std::span<const KindWords> all_kind_words() {
  return kinds;
}

const UnitWord* find_word(const KindWords& words, std::string_view word) {
  const auto found = std::find_if(words.words.begin(), words.words.end(),
                                  [word](const UnitWord& u) { return u.word == word; });
  return found == words.words.end() ? nullptr : &*found;
}

}  // namespace ohmtrail::units
