#pragma once
#include <array>
#include <string_view>

#include "ohmtrail/trade/conductor.hpp"

/// Conductor metals and the factors of lay and tin, each with its source.
namespace ohmtrail::trade::tables {

inline constexpr Metal copper{units::Resistivity{0.017241e-6},
                              0.00393,
                              units::Density{8890},
                              units::ThermalConductivity{398},
                              units::SpecificHeat{385},
                              "resistivity, coefficient and density of annealed copper: IEC 60028 and NBS "
                              "Handbook 100; thermal conductivity at "
                              "335 K: Incropera and others, Fundamentals of Heat and Mass Transfer, example "
                              "3.9; specific heat from memory: the "
                              "same, Table A.1"};

inline constexpr Metal aluminium{
    units::Resistivity{0.028264e-6},
    0.00403,
    units::Density{2705},
    units::ThermalConductivity{204.2},
    units::SpecificHeat{903},
    "aluminium 1350, 61.0 % IACS; coefficient: power engineering handbook; thermal conductivity at 20 °C: "
    "heat-transfer "
    "data book; density from memory: IEC 60889; specific heat from memory: Incropera and others, Table A.1"};

inline constexpr Metal copper_clad_aluminium{
    units::Resistivity{0.02743e-6},
    0.00405,
    units::Density{3320},
    units::ThermalConductivity{223.6},
    units::SpecificHeat{764},
    "10 % copper by volume: resistivity and coefficient from memory: ASTM B566 class 10A, data sheets' 62.9 "
    "% IACS and "
    "0.120 lb/in3 agree; thermal conductivity and specific heat derived by the rule of mixtures"};

/// Ratio of stranded to solid rows.
inline constexpr double lay = 1.02;
inline constexpr std::string_view lay_source =
    "NEC (2011 and later) chapter 9 table 8: stranded rows are 1.8 to 2.5 % above solid copper of the same "
    "area";

/// Greatest resistivity of tinned annealed wire by its diameter.
struct TinRow {
  double diameter_from;  ///< mm, the row holds from here up to the row before
  double resistivity;    ///< Ω·mm²/m
};
inline constexpr std::array<TinRow, 5> tin_rows{
    {{7.4, 0.0176547}, {2.6, 0.0177458}, {0.51, 0.0179303}, {0.28, 0.0183116}, {0.0, 0.0185084}}};
inline constexpr std::string_view tin_source =
    "ASTM B33-04 Table 2: greatest resistivity of tinned annealed wire by diameter of the strand, density "
    "8.89";

/// Strands of class B stranding.
inline constexpr int strands_up_to_2_awg = 7, strands_above = 19;
inline constexpr std::string_view strand_source = "NEC (2011 and later) chapter 9 table 8, stranding column";

}  // namespace ohmtrail::trade::tables
