#pragma once
#include <string>

namespace ohmtrail::diagnose {

/// Above it tin has melted (232 °C, Holm, Electric Contacts, from memory) and jackets char; what is computed
/// beyond it will never be reached, so the figure says no more than that. Common practice.
inline constexpr double charring_celsius = 250;

/// "140 °C", or "over 250 °C" where a figure would say nothing.
[[nodiscard]] std::string temperature_in_words(double celsius);

/// For tables: "140 °C" or "> 250 °C".
[[nodiscard]] std::string temperature_in_short(double celsius);

/// "about 140 °C", or "over 250 °C: it would char before it got there".
[[nodiscard]] std::string reaches_in_words(double celsius);

}  // namespace ohmtrail::diagnose
