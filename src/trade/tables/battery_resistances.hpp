#pragma once
#include <array>
#include <string_view>

#include "trade/tables/listed.hpp"

/// Internal resistance: typical values, limits in terms of CCA, and how it grows in the cold and with
/// discharge. 1 kHz and seconds' values differ 1.5 to 3 times; no public table was found.
namespace ohmtrail::trade::tables {

inline constexpr std::string_view data_sheets = "from memory: published data sheets of several makes";
inline constexpr std::string_view pass_limit_12_volts =
    "derived from the half-CCA load test and 12.6 V rested";
inline constexpr std::string_view cca_definition = "derived from SAE J537 definition and 12.5 V at -18 C";
inline constexpr std::string_view pass_limit_6_volts = "derived from the half-CCA load test and 6.3 V rested";
inline constexpr std::string_view allowed_sag =
    "derived from the half-CCA load test and the rest voltages against temperature";
inline constexpr std::string_view cranking_power = "derived from US Army TM 5-4210-230-14&P-1, Table 3";
inline constexpr std::string_view cell_data_sheets = "from memory: cell data sheets";
inline constexpr std::string_view textbooks = "from memory: battery textbooks";

inline constexpr std::array<ListedRow<7>, 20> resistance_rows{
    {{{"golf-cart 6 V 225 Ah", "flooded", "1.5", "2.3", "4.0", "", "DC, seconds scale, 25 C, full"},
      "common practice, low confidence",
      "common practice; no public table found"},
     {{"golf-cart 8 V 170 Ah", "flooded", "2.5", "4.0", "6.0", "", "DC, seconds scale"},
      "common practice, low confidence",
      "common practice; no public table found"},
     {{"deep-cycle 12 V 100 Ah", "flooded", "5.0", "8.0", "15.0", "", "DC, seconds scale"},
      "common practice, low confidence",
      "common practice"},
     {{"starting 12 V 600 CCA", "flooded", "3.5", "5.0", "8.0", "", "DC, seconds scale"},
      "common practice",
      "common practice; one public page gives 3-5 mohm healthy and 20 mohm or more bad for 12 V lead-acid"},
     {{"AGM 12 V 100 Ah", "AGM", "3.5", "5.0", "7.0", "",
       "1 kHz AC value; DC seconds value 1.5-2 times more"},
      "from memory",
      data_sheets},
     {{"gel 12 V 100 Ah", "gel", "4.5", "6.0", "9.0", "", "1 kHz AC value"}, "from memory", data_sheets},
     {{"LFP 12.8 V 100 Ah with battery-management switch", "LFP", "4.0", "10.0", "40.0", "",
       "cells 4 x 0.3-0.5 mohm; the switch, sense and internal wiring add most; data sheets often state only "
       "an upper bound of 40-50 mohm"},
      "from memory",
      data_sheets},
     {{"LFP cell 100 Ah", "LFP", "0.25", "0.4", "0.6", "", "1 kHz AC value"}, "from memory", data_sheets},
     {{"12 V, 400 CCA: pass limit at 21 C", "flooded", "", "", "15.00",
       "R_max = (12.6-9.6)/(0.5 CCA) = 6.0/CCA", "effective 15 s resistance that just meets 9.6 V"},
      "derived",
      pass_limit_12_volts},
     {{"12 V, 400 CCA: definition limit at -18 C", "flooded", "", "", "13.25", "R = (12.5-7.2)/CCA = 5.3/CCA",
       "effective 30 s resistance of a battery that just meets its rating at -18 C"},
      "derived",
      cca_definition},
     {{"6 V, 400 CCA: pass limit at 21 C", "flooded", "", "", "7.50", "R_max = 3.0/CCA", ""},
      "derived",
      pass_limit_6_volts},
     {{"12 V, 600 CCA: pass limit at 21 C", "flooded", "", "", "10.00",
       "R_max = (12.6-9.6)/(0.5 CCA) = 6.0/CCA", "effective 15 s resistance that just meets 9.6 V"},
      "derived",
      pass_limit_12_volts},
     {{"12 V, 600 CCA: definition limit at -18 C", "flooded", "", "", "8.83", "R = (12.5-7.2)/CCA = 5.3/CCA",
       "effective 30 s resistance of a battery that just meets its rating at -18 C"},
      "derived",
      cca_definition},
     {{"6 V, 600 CCA: pass limit at 21 C", "flooded", "", "", "5.00", "R_max = 3.0/CCA", ""},
      "derived",
      pass_limit_6_volts},
     {{"12 V, 800 CCA: pass limit at 21 C", "flooded", "", "", "7.50",
       "R_max = (12.6-9.6)/(0.5 CCA) = 6.0/CCA", "effective 15 s resistance that just meets 9.6 V"},
      "derived",
      pass_limit_12_volts},
     {{"12 V, 800 CCA: definition limit at -18 C", "flooded", "", "", "6.62", "R = (12.5-7.2)/CCA = 5.3/CCA",
       "effective 30 s resistance of a battery that just meets its rating at -18 C"},
      "derived",
      cca_definition},
     {{"6 V, 800 CCA: pass limit at 21 C", "flooded", "", "", "3.75", "R_max = 3.0/CCA", ""},
      "derived",
      pass_limit_6_volts},
     {{"12 V, 1000 CCA: pass limit at 21 C", "flooded", "", "", "6.00",
       "R_max = (12.6-9.6)/(0.5 CCA) = 6.0/CCA", "effective 15 s resistance that just meets 9.6 V"},
      "derived",
      pass_limit_12_volts},
     {{"12 V, 1000 CCA: definition limit at -18 C", "flooded", "", "", "5.30", "R = (12.5-7.2)/CCA = 5.3/CCA",
       "effective 30 s resistance of a battery that just meets its rating at -18 C"},
      "derived",
      cca_definition},
     {{"6 V, 1000 CCA: pass limit at 21 C", "flooded", "", "", "3.00", "R_max = 3.0/CCA", ""},
      "derived",
      pass_limit_6_volts}}};

inline constexpr std::array<ListedRow<5>, 19> resistance_factor_rows{
    {{{"flooded", "temperature", "21", "1.000", "ratio of allowed sag at 0.5 CCA"}, "derived", allowed_sag},
     {{"flooded", "temperature", "16", "1.030", "ratio of allowed sag at 0.5 CCA"}, "derived", allowed_sag},
     {{"flooded", "temperature", "10", "1.059", "ratio of allowed sag at 0.5 CCA"}, "derived", allowed_sag},
     {{"flooded", "temperature", "4", "1.086", "ratio of allowed sag at 0.5 CCA"}, "derived", allowed_sag},
     {{"flooded", "temperature", "-1", "1.146", "ratio of allowed sag at 0.5 CCA"}, "derived", allowed_sag},
     {{"flooded", "temperature", "-7", "1.205", "ratio of allowed sag at 0.5 CCA"}, "derived", allowed_sag},
     {{"flooded", "temperature", "-12", "1.263", "ratio of allowed sag at 0.5 CCA"}, "derived", allowed_sag},
     {{"flooded", "temperature", "-18", "1.320", "ratio of allowed sag at 0.5 CCA"}, "derived", allowed_sag},
     {{"flooded", "temperature", "26.7", "1.00",
       "inverse of available cranking power 100 percent (upper bound of the resistance ratio)"},
      "derived",
      cranking_power},
     {{"flooded", "temperature", "0", "1.54",
       "inverse of available cranking power 65 percent (upper bound of the resistance ratio)"},
      "derived",
      cranking_power},
     {{"flooded", "temperature", "-17.8", "2.50",
       "inverse of available cranking power 40 percent (upper bound of the resistance ratio)"},
      "derived",
      cranking_power},
     {{"flooded", "temperature", "-28.8", "5.00",
       "inverse of available cranking power 20 percent (upper bound of the resistance ratio)"},
      "derived",
      cranking_power},
     {{"flooded", "temperature", "25", "1.00", "slope about -1 percent per C near 25 C"},
      "from memory",
      "from memory: battery textbooks (electrolyte conductivity)"},
     {{"LFP", "temperature", "25", "1.0", "reference"}, "from memory", cell_data_sheets},
     {{"LFP", "temperature", "0", "2.0", "1.7-2.5"}, "from memory", cell_data_sheets},
     {{"LFP", "temperature", "-20", "4.5", "3-6"}, "from memory", cell_data_sheets},
     {{"flooded", "soc percent", "100", "1.0", ""}, "from memory", textbooks},
     {{"flooded", "soc percent", "50", "1.2", "1.1-1.4"}, "from memory", textbooks},
     {{"flooded", "soc percent", "20", "1.8", "1.5-2.5"}, "from memory", textbooks}}};

}  // namespace ohmtrail::trade::tables
