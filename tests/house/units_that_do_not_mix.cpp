// Compiled once as it stands, which must succeed, and once with each of the macros below, which must not.
#include "ohmtrail/units/parse.hpp"
#include "ohmtrail/units/quantity.hpp"

using namespace ohmtrail::units;

int main() {
  const Voltage volts{12.6};
  const Current amperes{8};
  const Resistance ohms{1.2};
  const Length feet = 6 * Length{0.3048};
  const Temperature warm{40}, cold{20};
  [[maybe_unused]] Voltage drop = amperes * ohms;
  [[maybe_unused]] Power heat = volts * amperes;
  [[maybe_unused]] Resistance loop = volts / amperes;
  [[maybe_unused]] TemperatureDifference rise = warm - cold;

#if defined(VOLTS_PLUS_AMPERES)
  [[maybe_unused]] auto sum = volts + amperes;
#elif defined(FEET_PLUS_OHMS)
  [[maybe_unused]] auto sum = feet + ohms;
#elif defined(VOLTS_LESS_THAN_WATTS)
  [[maybe_unused]] bool less = volts < heat;
#elif defined(TWO_TEMPERATURES_ADDED)
  [[maybe_unused]] auto sum = warm + cold;
#elif defined(PLAIN_NUMBER_AS_VOLTS)
  drop = 12.6;
#elif defined(WATTS_AS_VOLTS)
  drop = heat;
#elif defined(PERCENT_PLUS_NUMBER)
  [[maybe_unused]] auto sum = Fraction{0.03} + 3;
#elif defined(FEET_READ_AS_VOLTS)
  drop = *parse<Length>("6 ft");
#endif
  return feet > Length{1} ? 0 : 1;
}
