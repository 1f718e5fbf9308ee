#pragma once
#include <array>
#include <string_view>

/// Fuse ratings, opening times and the rules on protection, each group with its source.
namespace ohmtrail::trade::tables {

inline constexpr std::array<double, 18> blade_ladder{1,  2,  3,  4,  5,  7.5, 10, 15, 20,
                                                     25, 30, 35, 40, 50, 60,  70, 80, 100};
inline constexpr std::string_view blade_ladder_source =
    "from memory: ISO 8820-3 types C (1 to 40 A) and E (50 to 100 A)";

inline constexpr std::array<double, 18> bolt_down_ladder{30,  40,  50,  60,  70,  80,  100, 125, 150,
                                                         175, 200, 225, 250, 300, 350, 400, 450, 500};
inline constexpr std::string_view bolt_down_ladder_source =
    "from memory: ISO 8820-5 strips SF30 (30 to 200 A) and SF51 (80 to 500 A), low confidence at the ends";

/// Up to 600 A; the standard goes on to 6000 A, which no battery system of this trade needs.
inline constexpr std::array<double, 26> cartridge_ladder{15,  20,  25,  30,  35,  40,  45,  50,  60,
                                                         70,  80,  90,  100, 110, 125, 150, 175, 200,
                                                         225, 250, 300, 350, 400, 450, 500, 600};
inline constexpr std::string_view cartridge_ladder_source = "NEC 240.6(A), fuses and inverse-time breakers";

inline constexpr std::array<double, 10> in_line_ladder{1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30};
inline constexpr std::string_view in_line_ladder_source = "common practice: glass tube fuses";

struct GateRow {
  double percent, min_seconds, max_seconds;  ///< max 0: none
};
inline constexpr std::array<GateRow, 5> blade_gates{
    {{110, 360000, 0}, {135, 0.75, 600}, {160, 0.25, 50}, {200, 0.15, 5}, {350, 0.04, 0.5}}};
inline constexpr std::string_view blade_gates_source =
    "from memory: ISO 8820-3 / SAE J1284, blade types C and F, low confidence";

struct FormLimits {
  std::string_view form;
  double breaks_amps, volts;
  std::string_view source;
};
inline constexpr std::array<FormLimits, 4> form_limits{{
    {"blade", 1000, 32, "ISO 8820-3:2015 scope (32 V or 58 V; 1000 A)"},
    {"bolt-down", 2000, 32, "common practice, low confidence: 2000 A at 32 V; read the body"},
    {"cartridge", 20000, 125,
     "common practice: fast high-interrupt cartridges, 20 kA at 125 V d.c.; read the body"},
    {"in-line", 200, 32, "common practice, low confidence: glass tubes break little; read the cap"},
}};

struct VehicleRow {
  int awg;
  double amps;
};
inline constexpr std::array<VehicleRow, 5> vehicle_rows{{{18, 6}, {16, 8}, {14, 15}, {12, 20}, {10, 30}}};
inline constexpr std::string_view vehicle_source = "from memory: NEC tables 551.10(E)(1) and 552.10(E)(1)";

struct InterruptRow {
  bool at_32_volts;
  double cold_cranking_to;  ///< A, this and below; 0: any
  double main, branch;      ///< A
  std::string_view source;
};
inline constexpr std::array<InterruptRow, 5> interrupt_rows{{
    {false, 650, 1500, 750, "ABYC E-11 Table V-A (reprint)"},
    {false, 1100, 3000, 1500, "ABYC E-11 Table V-A (reprint)"},
    {false, 0, 5000, 2500, "ABYC E-11 Table V-A (reprint)"},
    {true, 1250, 3000, 1500, "from memory: ABYC E-11 Table V-A, low confidence"},
    {true, 0, 5000, 2500, "from memory: ABYC E-11 Table V-A, low confidence"},
}};

}  // namespace ohmtrail::trade::tables
