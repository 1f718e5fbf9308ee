#pragma once
#include <array>
#include <string_view>

/// Allowable currents and the factors that lower them, each group with its source.
namespace ohmtrail::trade::tables {

/// Insulation temperature ratings of the columns, °C.
inline constexpr std::array<double, 7> cfr_ratings{60, 75, 80, 90, 105, 125, 200};

struct CfrRow {
  int awg;  ///< 0 for 1/0 … −3 for 4/0
  std::array<double, 7> amps;
};

inline constexpr std::string_view cfr_source = "33 CFR 183.425 Table 5 (2015 annual edition)";

inline constexpr std::array<CfrRow, 15> cfr_rows{{{18, {10, 10, 15, 20, 20, 25, 25}},
                                                  {16, {15, 15, 20, 25, 25, 30, 35}},
                                                  {14, {20, 20, 25, 30, 35, 40, 45}},
                                                  {12, {25, 25, 35, 40, 45, 50, 55}},
                                                  {10, {40, 40, 50, 55, 60, 70, 70}},
                                                  {8, {55, 65, 70, 70, 80, 90, 100}},
                                                  {6, {80, 95, 100, 100, 120, 125, 135}},
                                                  {4, {105, 125, 130, 135, 160, 170, 180}},
                                                  {3, {120, 145, 150, 155, 180, 195, 210}},
                                                  {2, {140, 170, 175, 180, 210, 225, 240}},
                                                  {1, {165, 195, 210, 210, 245, 265, 280}},
                                                  {0, {195, 230, 245, 245, 285, 305, 325}},
                                                  {-1, {225, 265, 285, 285, 330, 355, 370}},
                                                  {-2, {260, 310, 330, 330, 385, 410, 430}},
                                                  {-3, {300, 360, 385, 385, 445, 475, 510}}}};

/// Note 1: multiplier in engine spaces, by column of `cfr_ratings`.
inline constexpr std::array<double, 7> cfr_engine_space{0.58, 0.75, 0.78, 0.82, 0.85, 0.89, 1.00};
inline constexpr std::string_view cfr_engine_space_source = "33 CFR 183.425 Table 5 note 1";

/// Multiplier from so many current-carrying conductors up.
struct BundleRow {
  int conductors_from;
  double factor;
};

inline constexpr std::array<BundleRow, 4> cfr_bundle{{{3, 0.70}, {4, 0.60}, {7, 0.50}, {25, 0.40}}};
inline constexpr std::string_view cfr_bundle_source =
    "33 CFR 183.425 Table 5 note 2, binding by 183.435(b) at 50 V and up";

/// Ambient temperatures that the engine-space factors imply: each factor is √((T − 50)/(T − 30)) to two
/// figures, save 1.00 at 200 °C.
inline constexpr double reference_ambient = 30, engine_space_ambient = 50;

/// ISO columns; the third is for 85 to 90 °C.
inline constexpr std::array<double, 6> iso_ratings{60, 70, 85, 105, 125, 200};

struct IsoRow {
  double square_millimetres;
  std::array<double, 6> amps;
};

inline constexpr std::string_view iso_source =
    "from memory: ISO 10133:2000 / ISO 13297:2000 Annex A Table A.1";

inline constexpr std::array<IsoRow, 15> iso_rows{{{0.75, {6, 10, 12, 16, 20, 25}},
                                                  {1, {8, 14, 18, 20, 25, 35}},
                                                  {1.5, {12, 18, 21, 25, 30, 40}},
                                                  {2.5, {17, 25, 30, 35, 40, 45}},
                                                  {4, {22, 35, 40, 45, 50, 55}},
                                                  {6, {29, 45, 50, 60, 70, 75}},
                                                  {10, {40, 65, 70, 90, 100, 120}},
                                                  {16, {54, 90, 100, 130, 150, 170}},
                                                  {25, {71, 120, 140, 170, 185, 200}},
                                                  {35, {87, 160, 185, 210, 225, 240}},
                                                  {50, {105, 210, 230, 270, 300, 325}},
                                                  {70, {135, 265, 285, 330, 360, 375}},
                                                  {95, {165, 310, 330, 390, 410, 430}},
                                                  {120, {190, 360, 400, 450, 480, 520}},
                                                  {150, {220, 380, 430, 475, 520, 560}}}};

/// Engine-space multipliers by column of `iso_ratings`; 60 °C insulation is not meant for engine spaces
/// there, so its place holds the 33 CFR factor.
inline constexpr std::array<double, 6> iso_engine_space{0.58, 0.75, 0.82, 0.86, 0.89, 1.00};
inline constexpr std::string_view iso_engine_space_source =
    "from memory: ISO 10133 Annex A note; 60 °C: 33 CFR 183.425 Table 5 note 1";

inline constexpr std::array<BundleRow, 3> iso_bundle{{{4, 0.70}, {7, 0.60}, {25, 0.50}}};
inline constexpr std::string_view iso_bundle_source = "from memory: ISO 13297 Annex A note, low confidence";

}  // namespace ohmtrail::trade::tables
