#pragma once
#include <array>
#include <string_view>

#include "trade/tables/listed.hpp"

/// Lithium iron phosphate: volts against charge. The middle of the curve spans about 40 mV a cell for 39 % of
/// charge.
namespace ohmtrail::trade::tables {

inline constexpr std::string_view lfp_24_points =
    "public 24-point LFP cell table, test conditions not stated";
inline constexpr std::string_view lfp_c32 =
    "public pseudo open-circuit voltage of a 1.2 Ah LFP cell, C/32, room temperature, with a paper in IEEE "
    "Trans. Instrum. Meas. 2025";
inline constexpr std::string_view lfp_chart = "from memory: widely printed rested LFP chart";

inline constexpr std::array<ListedRow<5>, 45> lithium_rest_rows{
    {{{"24 points", "100", "3.5900", "14.360", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "95.71", "3.3200", "13.280", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "91.47", "3.3160", "13.264", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "87.09", "3.3130", "13.252", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "82.85", "3.3060", "13.224", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "78.54", "3.3040", "13.216", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "74.18", "3.2900", "13.160", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "69.92", "3.2800", "13.120", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "65.61", "3.2780", "13.112", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "61.31", "3.2760", "13.104", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "57.05", "3.2740", "13.096", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "52.74", "3.2720", "13.088", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "48.46", "3.2690", "13.076", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "44.14", "3.2660", "13.064", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "39.83", "3.2630", "13.052", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "35.55", "3.2500", "13.000", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "31.24", "3.2400", "12.960", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "26.87", "3.2300", "12.920", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "22.59", "3.2200", "12.880", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "18.24", "3.2000", "12.800", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "13.88", "3.1900", "12.760", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "9.63", "3.1700", "12.680", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "5.35", "3.1200", "12.480", "test conditions not stated"}, "found", lfp_24_points},
     {{"24 points", "1.01", "2.9000", "11.600", "test conditions not stated"}, "found", lfp_24_points},
     {{"C/32", "0", "2.0102", "8.041", "piecewise-linear breakpoints; mean of charge and discharge"},
      "found",
      lfp_c32},
     {{"C/32", "0.33", "2.4177", "9.671", "piecewise-linear breakpoints; mean of charge and discharge"},
      "found",
      lfp_c32},
     {{"C/32", "1.17", "2.7405", "10.962", "piecewise-linear breakpoints; mean of charge and discharge"},
      "found",
      lfp_c32},
     {{"C/32", "2.67", "2.9299", "11.720", "piecewise-linear breakpoints; mean of charge and discharge"},
      "found",
      lfp_c32},
     {{"C/32", "5.34", "3.0872", "12.349", "piecewise-linear breakpoints; mean of charge and discharge"},
      "found",
      lfp_c32},
     {{"C/32", "8.85", "3.1942", "12.777", "piecewise-linear breakpoints; mean of charge and discharge"},
      "found",
      lfp_c32},
     {{"C/32", "29.72", "3.2772", "13.109", "piecewise-linear breakpoints; mean of charge and discharge"},
      "found",
      lfp_c32},
     {{"C/32", "98.33", "3.3511", "13.404", "piecewise-linear breakpoints; mean of charge and discharge"},
      "found",
      lfp_c32},
     {{"C/32", "99.5", "3.4180", "13.672", "piecewise-linear breakpoints; mean of charge and discharge"},
      "found",
      lfp_c32},
     {{"C/32", "100", "3.5981", "14.392", "piecewise-linear breakpoints; mean of charge and discharge"},
      "found",
      lfp_c32},
     {{"chart", "100", "3.4000", "13.600", "rested; charts differ by 50-100 mV per cell mid-range"},
      "from memory",
      lfp_chart},
     {{"chart", "90", "3.3500", "13.400", "rested; charts differ by 50-100 mV per cell mid-range"},
      "from memory",
      lfp_chart},
     {{"chart", "80", "3.3200", "13.280", "rested; charts differ by 50-100 mV per cell mid-range"},
      "from memory",
      lfp_chart},
     {{"chart", "70", "3.3000", "13.200", "rested; charts differ by 50-100 mV per cell mid-range"},
      "from memory",
      lfp_chart},
     {{"chart", "60", "3.2700", "13.080", "rested; charts differ by 50-100 mV per cell mid-range"},
      "from memory",
      lfp_chart},
     {{"chart", "50", "3.2600", "13.040", "rested; charts differ by 50-100 mV per cell mid-range"},
      "from memory",
      lfp_chart},
     {{"chart", "40", "3.2500", "13.000", "rested; charts differ by 50-100 mV per cell mid-range"},
      "from memory",
      lfp_chart},
     {{"chart", "30", "3.2200", "12.880", "rested; charts differ by 50-100 mV per cell mid-range"},
      "from memory",
      lfp_chart},
     {{"chart", "20", "3.2000", "12.800", "rested; charts differ by 50-100 mV per cell mid-range"},
      "from memory",
      lfp_chart},
     {{"chart", "10", "3.0000", "12.000", "rested; charts differ by 50-100 mV per cell mid-range"},
      "from memory",
      lfp_chart},
     {{"chart", "0", "2.5000", "10.000", "rested; charts differ by 50-100 mV per cell mid-range"},
      "from memory",
      lfp_chart}}};

}  // namespace ohmtrail::trade::tables
