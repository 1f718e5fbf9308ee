#include "render/number.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "ohmtrail/diagnose/temperature_in_words.hpp"

namespace ohmtrail::render {
namespace {

const std::string no_value = "–";
const std::string narrow_space = "\u202F";

/// How many digits stand behind the point so that three in all are significant.
int decimals(double value) {
  const double size = std::fabs(value);
  return size >= 99.95 ? 0 : size >= 9.995 ? 1 : 2;
}

struct Prefix {
  double factor;
  const char* letter;
};

// Rounding may lift a value into the next prefix: 999.6 mV is 1.00 V.
constexpr std::array<Prefix, 6> prefixes{
    {{1e6, "M"}, {1e3, "k"}, {1, ""}, {1e-3, "m"}, {1e-6, "µ"}, {1e-9, "n"}}};

/// With a minus sign instead of a hyphen.
std::string with_minus_sign(const std::string& number) {
  return number.starts_with('-') ? "\u2212" + number.substr(1) : number;
}

std::string with_prefix(double value, const char* unit) {
  if (!std::isfinite(value)) return no_value;
  const double size = std::fabs(value);
  if (size < 0.5e-9) return "0" + narrow_space + unit;
  const Prefix& prefix = *std::find_if(prefixes.begin(), prefixes.end() - 1,
                                       [&](const Prefix& one) { return size >= one.factor * 0.9995; });
  const double scaled = value / prefix.factor;
  return with_minus_sign(
      fmt::format("{:.{}f}{}{}{}", scaled, decimals(scaled), narrow_space, prefix.letter, unit));
}

}  // namespace

std::string volts(double value) {
  return with_prefix(value, "V");
}
std::string amperes(double value) {
  return with_prefix(value, "A");
}
std::string watts(double value) {
  return with_prefix(value, "W");
}
std::string ohms(double value) {
  return with_prefix(value, "Ω");
}

std::string standing_volts(double value) {
  if (!std::isfinite(value)) return no_value;
  return with_minus_sign(fmt::format("{:.2f}{}V", std::fabs(value) < 0.005 ? 0.0 : value, narrow_space));
}

std::string celsius(double value) {
  if (!std::isfinite(value)) return no_value;
  const bool char_before = value > diagnose::charring_celsius;
  return fmt::format("{}{:.0f}{}°C", char_before ? ">\u202F" : "",
                     char_before ? diagnose::charring_celsius : value, narrow_space);
}

std::string percent(double share) {
  if (!std::isfinite(share)) return no_value;
  return fmt::format("{:.{}f}{}%", share * 100, share != 0 && std::fabs(share) < 0.0995 ? 1 : 0,
                     narrow_space);
}

std::string plain(double value) {
  return std::isfinite(value) ? fmt::format("{:.{}f}", value, decimals(value)) : no_value;
}

}  // namespace ohmtrail::render
