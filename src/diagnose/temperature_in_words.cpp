#include "ohmtrail/diagnose/temperature_in_words.hpp"

#include <fmt/format.h>

namespace ohmtrail::diagnose {

std::string temperature_in_words(double celsius) {
  if (celsius > charring_celsius) return fmt::format("over {:.0f} °C", charring_celsius);
  return fmt::format("{:.0f} °C", celsius);
}

std::string temperature_in_short(double celsius) {
  if (celsius > charring_celsius) return fmt::format("> {:.0f} °C", charring_celsius);
  return temperature_in_words(celsius);
}

std::string reaches_in_words(double celsius) {
  const auto words = temperature_in_words(celsius);
  return celsius > charring_celsius ? words + " by the numbers, so it would char before it got there"
                                    : "about " + words;
}

}  // namespace ohmtrail::diagnose
