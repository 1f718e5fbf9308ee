#include "ohmtrail/units/parse.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>

#include "units/unit_words.hpp"

namespace ohmtrail::units {
namespace {

bool is_space(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

std::string_view trim(std::string_view text) {
  while (!text.empty() && is_space(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_space(text.back())) text.remove_suffix(1);
  // U+00A0, the space that word processors put between a number and its unit.
  constexpr std::string_view no_break_space = "\u00a0";
  while (text.starts_with(no_break_space)) text.remove_prefix(no_break_space.size());
  return text;
}

struct NumberAndWord {
  double number;
  std::string_view word;  ///< may be empty
};

tl::unexpected<std::string> refuse(std::string_view text, std::string_view why, Kind kind) {
  return tl::unexpected(fmt::format("\"{}\" {}, expected {}", text, why, accepted_units(kind)));
}

/// Splits "6 ft" into 6 and "ft". "nan" and "inf" are not numbers here: from_chars would take them.
tl::expected<NumberAndWord, std::string> split(std::string_view text, Kind kind) {
  std::string_view rest = trim(text);
  if (rest.size() > 1 && rest.front() == '+' && rest[1] != '-') rest.remove_prefix(1);
  const std::string_view unsigned_part = rest.substr(!rest.empty() && rest.front() == '-' ? 1 : 0);
  if (rest.empty()) return refuse(text, "is empty", kind);
  const char first = unsigned_part.empty() ? ' ' : unsigned_part.front();
  if (first == 'n' || first == 'N' || first == 'i' || first == 'I')
    return refuse(text, "is not a finite number", kind);
  double number = 0;
  const auto [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), number);
  if (error == std::errc::result_out_of_range) return refuse(text, "is out of range", kind);
  if (error != std::errc{}) return refuse(text, "does not start with a number", kind);
  rest.remove_prefix(static_cast<std::size_t>(end - rest.data()));
  if (!rest.empty() && rest.front() == ',')
    return refuse(text, "has a comma: write a point before the decimals and nothing between thousands", kind);
  return NumberAndWord{number, trim(rest)};
}

std::string lower(std::string_view text) {
  std::string result(text);
  std::transform(result.begin(), result.end(), result.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return result;
}

/// Why a word does not do: another kind's unit, a slip in capitals, or unknown.
std::string why_not(std::string_view word, const KindWords& wanted) {
  for (const UnitWord& unit : wanted.words)
    if (lower(unit.word) == lower(word))
      return fmt::format("has the unit \"{}\": did you mean {}", word, unit.word);
  for (const KindWords& other : all_kind_words())
    if (find_word(other, word) != nullptr) return fmt::format("is {}", other.name);
  return fmt::format("has the unknown unit \"{}\"", word);
}

Parsed<double> finite(double si, std::string_view text, Kind kind) {
  if (!std::isfinite(si)) return refuse(text, "is out of range", kind);
  if (kind == Kind::temperature && si < -273.15) return refuse(text, "is below absolute zero", kind);
  return si;
}

Parsed<double> with_unit(const NumberAndWord& parts, std::string_view text, Kind kind) {
  const KindWords& words = words_of(kind);
  const UnitWord* unit = find_word(words, parts.word);
  if (unit == nullptr) return refuse(text, why_not(parts.word, words), kind);
  // Division by the exact power of ten rounds once: 50 mV is 0.05 V to the last bit.
  const double shifted = parts.number + unit->offset;
  const double inverse = std::round(1 / unit->factor);
  const bool by_division =
      unit->factor < 1 && inverse * unit->factor == 1 && unit->offset == 0 && inverse >= 10;
  return finite(by_division ? shifted / inverse : shifted * unit->factor, text, kind);
}

/// The prefix letters that a hurried hand leaves without their unit.
std::string completed(std::string_view word, Kind kind) {
  static constexpr std::string_view prefixes[] = {"m", "u", "\u00b5", "\u03bc", "k"};
  const bool prefix = std::find(std::begin(prefixes), std::end(prefixes), word) != std::end(prefixes);
  const bool metered = kind == Kind::voltage || kind == Kind::current || kind == Kind::resistance;
  const std::string_view unit = words_of(kind).words.front().word;
  return prefix && metered ? fmt::format("{}{}", word, unit) : std::string(word);
}

}  // namespace

std::string accepted_units(Kind kind) {
  const KindWords& words = words_of(kind);
  return fmt::format("{} ({})", words.name, words.listed);
}

Parsed<double> parse_si(std::string_view text, Kind kind) {
  const auto parts = split(text, kind);
  if (!parts) return tl::unexpected(parts.error());
  if (parts->word.empty()) return refuse(text, "has no unit", kind);
  return with_unit(*parts, text, kind);
}

Parsed<double> number_to_si(double number, Kind kind) {
  const std::string text = fmt::format("{}", number);
  if (!std::isfinite(number)) return refuse(text, "is not a finite number", kind);
  if (kind == Kind::charge) return finite(number * 3600, text, kind);
  if (kind == Kind::fraction) return finite(number / 100, text, kind);
  return finite(number, text, kind);
}

Parsed<double> parse_reading_si(std::string_view text, Kind kind) {
  auto parts = split(text, kind);
  if (!parts) return tl::unexpected(parts.error());
  if (parts->word.empty()) return number_to_si(parts->number, kind);
  const std::string word = completed(parts->word, kind);
  return with_unit({parts->number, word}, text, kind);
}

Parsed<Time> time_from_hours(double hours) {
  return number_to_si(hours, Kind::time).map([](double h) { return Time{h * 3600}; });
}

}  // namespace ohmtrail::units
