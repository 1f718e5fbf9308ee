#pragma once
#include <string>

/// Numbers as people read them: three significant digits, an SI prefix, a narrow no-break space, a unit.
namespace ohmtrail::render {

/// 0.0123 V → "12.3 mV". "–" where the value does not exist.
[[nodiscard]] std::string volts(double value);
[[nodiscard]] std::string amperes(double value);
[[nodiscard]] std::string watts(double value);
[[nodiscard]] std::string ohms(double value);
/// A voltage that stands somewhere, to 10 mV: "12.34 V".
[[nodiscard]] std::string standing_volts(double value);
/// To whole degrees; "> 250 °C" where everything would have charred.
[[nodiscard]] std::string celsius(double value);
/// Of a share of one: whole percents from ten on, one digit below.
[[nodiscard]] std::string percent(double share);
/// Three significant digits without prefix or unit.
[[nodiscard]] std::string plain(double value);

}  // namespace ohmtrail::render
