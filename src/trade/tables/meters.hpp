#pragma once
#include <array>
#include <string_view>

/// Accuracy of the meters of the trade by class.
namespace ohmtrail::trade::tables {

/// One range of the meter that is assumed where none is named.
struct RangeRow {
  std::string_view quantity;
  double up_to;  ///< SI
  double percent, counts, last_digit;
};

inline constexpr std::string_view meter_source =
    "common practice: class accuracy of hand meters; read the meter's manual";

inline constexpr std::array<RangeRow, 4> volt_ranges{{{"volts", 0.6, 0.5, 2, 1e-4},
                                                      {"volts", 6, 0.5, 2, 1e-3},
                                                      {"volts", 60, 0.5, 2, 1e-2},
                                                      {"volts", 600, 0.5, 2, 1e-1}}};
inline constexpr std::array<RangeRow, 2> amp_ranges{
    {{"amperes", 60, 2, 5, 1e-2}, {"amperes", 1000, 2.5, 5, 1e-1}}};
inline constexpr std::array<RangeRow, 4> ohm_ranges{{{"ohms", 0.02, 1, 5, 1e-6},
                                                     {"ohms", 0.2, 1, 5, 1e-5},
                                                     {"ohms", 2, 1, 5, 1e-4},
                                                     {"ohms", 20, 1, 5, 1e-3}}};
inline constexpr double infrared_percent = 2, infrared_kelvin = 2, infrared_digit = 0.1;

struct ClassRow {
  std::string_view instrument, range, accuracy, resolution, note;
};

inline constexpr std::array<ClassRow, 21> class_rows{{
    {"hand multimeter, 6000 counts", "d.c. 600 mV", "0.5 % + 2 counts", "0.1 mV", ""},
    {"hand multimeter, 6000 counts", "d.c. 6 V", "0.5 % + 2 counts", "1 mV", ""},
    {"hand multimeter, 6000 counts", "d.c. 60 V", "0.5 % + 2 counts", "10 mV", "at 12.65 V ±0.083 V"},
    {"hand multimeter, 2000 counts", "d.c. 20 V", "0.5 to 1.0 % + 2 to 3 counts", "10 mV",
     "at 12.65 V ±0.09 to 0.16 V"},
    {"hand multimeter, 50000 counts", "d.c. 50 V", "0.03 to 0.05 % + 2 counts", "1 mV", ""},
    {"hand multimeter", "d.c. 200 mV", "0.5 % + 2 counts", "0.1 mV", "0.1 mV at 100 A is 1 µΩ"},
    {"hand multimeter", "input resistance", "10 MΩ", "", "no matter on these circuits"},
    {"hand multimeter", "600 Ω", "0.9 to 1.5 % + 2 to 5 counts", "0.1 Ω",
     "leads add 0.1 to 0.5 Ω: useless below 1 Ω"},
    {"d.c. clamp, Hall", "40 to 100 A", "2 % + 5 counts", "0.01 to 0.1 A",
     "zero it first; remanence 0.1 to 1 A"},
    {"d.c. clamp, Hall", "400 to 1000 A", "2 to 3 % + 5 counts", "0.1 to 1 A", "place in the jaw adds 1 %"},
    {"shunt, 50 or 75 mV", "class", "0.5 or 1 %", "", "copper leads must not lie inside the sense taps"},
    {"four-wire milliohm meter, hand", "20 mΩ", "0.5 to 1 % + 5 counts", "1 to 10 µΩ",
     "thermal voltages: reverse and average"},
    {"micro-ohm meter, 10 to 100 A", "1 to 10 mΩ", "0.25 to 1 %", "0.1 to 1 µΩ", ""},
    {"battery ohm tester, 1 kHz", "3 to 30 mΩ", "1 to 2 % + 5 counts", "1 to 10 µΩ",
     "reads the ohmic part only: lower than over seconds"},
    {"hydrometer, glass", "specific gravity", "±0.005", "0.005", "eye at the level surface, float free"},
    {"hydrometer, dial or ball", "specific gravity", "±0.010 to 0.025", "", ""},
    {"refractometer", "specific gravity", "±0.005", "0.005", ""},
    {"infrared thermometer", "surface", "±2 °C or 2 %", "0.1 °C",
     "bright metal reads cold: tape or paint the lug; the spot must be smaller than it"},
    {"contact probe, type K", "surface", "±2.2 °C or 0.75 %", "0.1 °C", "from memory: ASTM E230"},
    {"thermal camera", "surface", "±2 °C or 2 %", "0.05 to 0.1 °C", "compare like with like"},
    {"hand multimeter, min/max", "cranking", "100 to 250 ms window, fast 0.25 to 1 ms", "",
     "the slow mode misses the first inrush"},
}};

}  // namespace ohmtrail::trade::tables
