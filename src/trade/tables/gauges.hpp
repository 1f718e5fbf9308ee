#pragma once
#include <array>
#include <string_view>

#include "ohmtrail/units/quantity.hpp"

/// Conductor sizes as data, each group with its source.
namespace ohmtrail::trade::tables {

/// AWG by the formula of ASTM B258; these are the ends of the range carried.
inline constexpr int thinnest_awg = 22, thickest_awg = -3;

struct SaeRow {
  int number;                 ///< 0 for 1/0 … −3 for 4/0
  double designation;         ///< the metric designation beside the gauge, mm²
  double circular_mils;       ///< minimum area; 0 where only mm² is known
  double square_millimetres;  ///< minimum area where circular mils are not known
};

inline constexpr std::string_view sae_source =
    "SAE J378/J1127/J1128 minimum conductor area, as reprinted in small-craft conductor tables; 22 and 20 "
    "from "
    "memory: SAE J1128 conductor table";

inline constexpr std::array<SaeRow, 16> sae_rows{{{22, 0.35, 0, 0.324},
                                                  {20, 0.5, 0, 0.508},
                                                  {18, 0.8, 1537, 0},
                                                  {16, 1, 2336, 0},
                                                  {14, 2, 3702, 0},
                                                  {12, 3, 5833, 0},
                                                  {10, 5, 9343, 0},
                                                  {8, 8, 14810, 0},
                                                  {6, 13, 24538, 0},
                                                  {4, 19, 37360, 0},
                                                  {2, 32, 62450, 0},
                                                  {1, 40, 77790, 0},
                                                  {0, 50, 98980, 0},
                                                  {-1, 62, 125100, 0},
                                                  {-2, 81, 158600, 0},
                                                  {-3, 103, 205500, 0}}};

[[nodiscard]] units::Area sae_area(const SaeRow& row);

/// Nominal areas of IEC 60228, mm².
inline constexpr std::array<double, 19> metric_sizes{0.5, 0.75, 1,  1.5, 2.5, 4,   6,   10,  16, 25,
                                                     35,  50,   70, 95,  120, 150, 185, 240, 300};

/// Maximum resistance at 20 °C of IEC 60228, Ω/km; NaN-free, one row a size of `metric_sizes`.
struct MetricRow {
  double square_millimetres;
  double class2_plain, class2_coated, class5_plain, class5_coated;
};

inline constexpr std::string_view metric_source =
    "IEC 60228 (2004) Tables 2 and 3, maximum resistance at 20 °C";

inline constexpr std::array<MetricRow, 19> metric_rows{{{0.5, 36.0, 36.7, 39.0, 40.1},
                                                        {0.75, 24.5, 24.8, 26.0, 26.7},
                                                        {1, 18.1, 18.2, 19.5, 20.0},
                                                        {1.5, 12.1, 12.2, 13.3, 13.7},
                                                        {2.5, 7.41, 7.56, 7.98, 8.21},
                                                        {4, 4.61, 4.70, 4.95, 5.09},
                                                        {6, 3.08, 3.11, 3.30, 3.39},
                                                        {10, 1.83, 1.84, 1.91, 1.95},
                                                        {16, 1.15, 1.16, 1.21, 1.24},
                                                        {25, 0.727, 0.734, 0.780, 0.795},
                                                        {35, 0.524, 0.529, 0.554, 0.565},
                                                        {50, 0.387, 0.391, 0.386, 0.393},
                                                        {70, 0.268, 0.270, 0.272, 0.277},
                                                        {95, 0.193, 0.195, 0.206, 0.210},
                                                        {120, 0.153, 0.154, 0.161, 0.164},
                                                        {150, 0.124, 0.126, 0.129, 0.132},
                                                        {185, 0.0991, 0.100, 0.106, 0.108},
                                                        {240, 0.0754, 0.0762, 0.0801, 0.0817},
                                                        {300, 0.0601, 0.0607, 0.0641, 0.0654}}};

}  // namespace ohmtrail::trade::tables
