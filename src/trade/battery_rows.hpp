#pragma once
#include <array>
#include <string_view>

/// The battery tables that are computed with, each group with its source. Volts of 12 V batteries as printed.
namespace ohmtrail::trade {

struct ChargeRow {
  double charge;   ///< 0 to 1
  double gravity;  ///< at 26.7 °C
  double volts_of_12;
  double freezes_celsius;
};

inline constexpr std::string_view flooded_source =
    "gravity and freezing: US Army TM 5-4210-230-14&P-1, battery Table 2, 26.7 °C; volts: the matching "
    "open-circuit "
    "table published with the same 1.265 scale";
inline constexpr std::array<ChargeRow, 5> flooded_rows{{{0.00, 1.120, 11.89, -9.4},
                                                        {0.25, 1.155, 12.06, -15.0},
                                                        {0.50, 1.190, 12.24, -26.1},
                                                        {0.75, 1.225, 12.45, -37.2},
                                                        {1.00, 1.265, 12.65, -59.5}}};

struct RestRow {
  double charge;
  double volts_of_12;
};

inline constexpr std::string_view agm_source =
    "from memory: sealed-battery maker technical manual, 24 h after charge; US Army TM 9-6115-730-24 accepts "
    "12.8 to "
    "13.0 V when full";
inline constexpr std::array<RestRow, 5> agm_rows{
    {{0.00, 11.80}, {0.25, 12.00}, {0.50, 12.30}, {0.75, 12.60}, {1.00, 12.80}}};

inline constexpr std::string_view rest_temperature_source =
    "public data set of 12 V flooded and gel voltage against temperature and charge";
inline constexpr std::string_view gel_source = rest_temperature_source;
inline constexpr std::array<RestRow, 5> gel_rows{
    {{0.00, 11.80}, {0.25, 12.00}, {0.50, 12.40}, {0.75, 12.60}, {1.00, 12.80}}};

struct CellRow {
  double charge;
  double volts;
};

inline constexpr std::string_view lfp_source =
    "public pseudo open-circuit voltage of a 1.2 Ah lithium iron phosphate cell at C/32, mean of charge and "
    "discharge, piecewise-linear breakpoints";
inline constexpr std::array<CellRow, 10> lfp_rows{{{0, 2.0102},
                                                   {0.0033, 2.4177},
                                                   {0.0117, 2.7405},
                                                   {0.0267, 2.9299},
                                                   {0.0534, 3.0872},
                                                   {0.0885, 3.1942},
                                                   {0.2972, 3.2772},
                                                   {0.9833, 3.3511},
                                                   {0.995, 3.4180},
                                                   {1, 3.5981}}};

/// A full 12 V flooded battery at rest. Every state of charge, and gel, differ from their 26.7 °C value
/// alike.
struct RestTemperatureRow {
  double celsius;
  double full_volts_of_12;
};

inline constexpr double full_volts_at_reference = 12.650;
inline constexpr std::array<RestTemperatureRow, 13> rest_temperature_rows{{{-17.8, 12.516},
                                                                           {-12.2, 12.542},
                                                                           {-6.7, 12.566},
                                                                           {-1.1, 12.588},
                                                                           {4.4, 12.606},
                                                                           {10.0, 12.622},
                                                                           {15.6, 12.634},
                                                                           {21.1, 12.643},
                                                                           {26.7, 12.650},
                                                                           {32.2, 12.655},
                                                                           {37.8, 12.658},
                                                                           {43.3, 12.661},
                                                                           {48.9, 12.663}}};

struct LoadTestRow {
  double celsius;
  double volts_of_12;
  double volts_of_6;
};

inline constexpr std::string_view load_test_source =
    "US Army TM 5-4210-230-14&P-1, battery Table 5: least volts at half CCA after 15 s";
inline constexpr std::array<LoadTestRow, 8> load_test_rows{{{21, 9.6, 4.80},
                                                            {16, 9.5, 4.75},
                                                            {10, 9.4, 4.70},
                                                            {4, 9.3, 4.60},
                                                            {-1, 9.1, 4.50},
                                                            {-7, 8.9, 4.40},
                                                            {-12, 8.7, 4.30},
                                                            {-18, 8.5, 4.20}}};

}  // namespace ohmtrail::trade
