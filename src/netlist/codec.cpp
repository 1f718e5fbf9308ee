#include "netlist/codec.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "netlist/characters.hpp"
#include "netlist/nearest.hpp"
#include "netlist/word_hint.hpp"

namespace ohmtrail::netlist {

bool wrong_kind(Reader& reader, Value value, std::string expected, std::string hint) {
  reader.problems.error(
      value, {"wrong-type", fmt::format("met {}", shown(value)), std::move(expected), std::move(hint)});
  return false;
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

namespace {

bool read_name(Reader& reader, Value value, NameUse use, std::string& text) {
  if (!value.is(Kind::string)) return wrong_kind(reader, value, "a text in quotes");
  if (!tell_bad_name(reader, value, value.string(), use)) return false;
  text = value.string();
  return true;
}

}  // namespace

bool Name::read(Reader& reader, Value value, std::string& text) {
  return read_name(reader, value, NameUse::reference, text);
}
Json Name::schema() {
  return {{"type", "string"}, {"minLength", 1}};
}

bool Identifier::read(Reader& reader, Value value, std::string& text) {
  if (value.is(Kind::number)) {
    return wrong_kind(reader, value, "a name in quotes", fmt::format("write \"{}\"", value.source()));
  }
  return read_name(reader, value, NameUse::definition, text);
}
Json Identifier::schema() {
  return {{"$ref", "#/$defs/identifier"}};
}

namespace {

std::string word_hint(std::string_view text, const std::vector<std::string_view>& known) {
  const std::string meant = word_meant(text, known);
  return meant.empty() ? did_you_mean(text, known) : fmt::format("write \"{}\"", meant);
}

}  // namespace

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
                                one_of(known), reader.problems.listing() ? word_hint(text, known) : ""});
  return std::nullopt;
}

}  // namespace ohmtrail::netlist
