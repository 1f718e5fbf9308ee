#pragma once
#include <array>
#include <string_view>

/// How warm things may become, and how bright they are to an infrared meter.
namespace ohmtrail::trade::tables {

/// Rise, temperature and ambient as the source prints them; empty where it gives none.
struct TemperatureRow {
  std::string_view kind, item, rise, temperature, ambient, note, status, source;
};

inline constexpr std::array<TemperatureRow, 34> temperature_rows{{
    {"limit", "lug, static heating test", "50", "", "",
     "at the static test current (4 AWG: 125 A, assigned 85 A)", "found (secondary)",
     "UL 486A-486B as explained on a public electrical forum"},
    {"limit", "lug, current cycling test", "125", "", "",
     "500 cycles; 4 AWG: 140 A (75 C class), 175 A (90 C class)", "found (secondary)",
     "UL 486A-486B as explained on a public electrical forum"},
    {"limit", "equipment wire terminal, cycling", "125", "", "",
     "stability factor within 10 C; readings after 1,25,50,75,100,125,175,225,275,350,425,500 cycles",
     "found (secondary)", "UL 486E as summarised in a public terminal-block guide"},
    {"limit", "battery switch terminal, continuous (1 h) and intermittent (5 min)", "100", "", "",
     "housing not above 65 C rise", "found (secondary)",
     "UL 1107 as explained on a public marine-mechanic page"},
    {"limit", "terminal, bare copper", "60", "100", "40", "", "from memory",
     "from memory: IEC 60947-1, Table 2 (terminals)"},
    {"limit", "terminal, bare brass", "65", "105", "40", "", "from memory",
     "from memory: IEC 60947-1, Table 2 (terminals)"},
    {"limit", "terminal, tinned copper or brass", "65", "105", "40", "new and clean", "found (secondary)",
     "IEC 60947-1, Table 2 (terminals) quoted in a public answer"},
    {"limit", "terminal, silver or nickel plated", "70", "110", "40", "", "from memory",
     "from memory: IEC 60947-1, Table 2 (terminals)"},
    {"limit", "breaker terminal after test sequence", "80", "120", "40", "near end of life",
     "found (secondary)", "IEC 60947-2, Table 7 quoted in a public answer"},
    {"limit", "contact, bare copper, air", "35", "75", "40",
     "high-voltage switchgear common clauses; same contact metals", "found",
     "IEC 60694:1996+A2:2001, Table 3 (public excerpt)"},
    {"limit", "contact, silver or nickel, air", "65", "105", "40",
     "high-voltage switchgear common clauses; same contact metals", "found",
     "IEC 60694:1996+A2:2001, Table 3 (public excerpt)"},
    {"limit", "contact, tin, air", "50", "90", "40",
     "high-voltage switchgear common clauses; same contact metals", "found",
     "IEC 60694:1996+A2:2001, Table 3 (public excerpt)"},
    {"limit", "bolted joint, bare copper, air", "50", "90", "40",
     "high-voltage switchgear common clauses; same contact metals", "found",
     "IEC 60694:1996+A2:2001, Table 3 (public excerpt)"},
    {"limit", "bolted joint, silver or nickel, air", "75", "115", "40",
     "high-voltage switchgear common clauses; same contact metals", "found",
     "IEC 60694:1996+A2:2001, Table 3 (public excerpt)"},
    {"limit", "bolted joint, tin, air", "65", "105", "40",
     "high-voltage switchgear common clauses; same contact metals", "found",
     "IEC 60694:1996+A2:2001, Table 3 (public excerpt)"},
    {"limit", "terminal, bare", "50", "90", "40",
     "high-voltage switchgear common clauses; same contact metals", "found",
     "IEC 60694:1996+A2:2001, Table 3 (public excerpt)"},
    {"limit", "terminal, silver nickel or tin", "65", "105", "40",
     "high-voltage switchgear common clauses; same contact metals", "found",
     "IEC 60694:1996+A2:2001, Table 3 (public excerpt)"},
    {"limit", "terminal block at test current", "45", "", "", "", "found",
     "DIN EN 60998-1 quoted on a public page"},
    {"severity", "versus similar part, same load", "1-3", "", "", "possible deficiency", "found (secondary)",
     "ANSI/NETA MTS thermographic criteria, as tabulated on a public page"},
    {"severity", "versus similar part, same load", "4-15", "", "", "probable deficiency", "found (secondary)",
     "ANSI/NETA MTS thermographic criteria, as tabulated on a public page"},
    {"severity", "versus similar part, same load", "over 15", "", "", "major: repair at once",
     "found (secondary)", "ANSI/NETA MTS thermographic criteria, as tabulated on a public page"},
    {"severity", "over ambient", "1-10", "", "", "possible deficiency", "found (secondary)",
     "ANSI/NETA MTS thermographic criteria, as tabulated on a public page"},
    {"severity", "over ambient", "11-20", "", "", "probable deficiency", "found (secondary)",
     "ANSI/NETA MTS thermographic criteria, as tabulated on a public page"},
    {"severity", "over ambient", "21-40", "", "", "monitor until corrected", "found (secondary)",
     "ANSI/NETA MTS thermographic criteria, as tabulated on a public page"},
    {"severity", "over ambient", "over 40", "", "", "major: repair at once", "found (secondary)",
     "ANSI/NETA MTS thermographic criteria, as tabulated on a public page"},
    {"severity", "versus reference", "10-25", "", "", "routine", "found (secondary)",
     "US Navy MIL-STD-2194 thermographic criteria, as tabulated on a public page (number from memory)"},
    {"severity", "versus reference", "25-40", "", "", "failure probable unless corrected",
     "found (secondary)",
     "US Navy MIL-STD-2194 thermographic criteria, as tabulated on a public page (number from memory)"},
    {"severity", "versus reference", "40-70", "", "", "failure almost certain unless corrected",
     "found (secondary)",
     "US Navy MIL-STD-2194 thermographic criteria, as tabulated on a public page (number from memory)"},
    {"severity", "versus reference", "70 and over", "", "", "failure imminent", "found (secondary)",
     "US Navy MIL-STD-2194 thermographic criteria, as tabulated on a public page (number from memory)"},
    {"severity", "versus reference", "10-20", "", "", "minor", "found",
     "utility thermography course manual (public)"},
    {"severity", "versus reference", "21-49", "", "", "serious", "found",
     "utility thermography course manual (public)"},
    {"severity", "versus reference", "50 and over", "", "", "critical", "found",
     "utility thermography course manual (public)"},
    {"scaling", "rise versus load, exponent of current", "1.6-2.0", "", "",
     "rise2 = rise1 x (I2/I1)^n; 2.0 for pure I2R with fixed h", "common practice",
     "common practice; textbooks on thermography"},
    {"limit", "PVC insulation", "", "60", "", "also 75, 90 and 105 C grades", "from memory",
     "from memory: cable standards"},
}};

struct EmissivityRow {
  std::string_view surface, temperature, spectrum;
  double least, greatest;
  std::string_view source;
};

inline constexpr std::array<EmissivityRow, 12> emissivity_rows{{
    {"black vinyl electrical tape", "<105", "8-14 µm", 0.96, 0.96,
     "ITC technical publication 29 as tabulated in an infrared emissivity compilation"},
    {"copper polished", "50-100", "total", 0.02, 0.02, "Bramson, Infrared Radiation (Plenum) as tabulated"},
    {"copper commercial burnished", "20", "total", 0.07, 0.07,
     "Bramson, Infrared Radiation (Plenum) as tabulated"},
    {"copper oxidized", "50", "total", 0.6, 0.7, "Bramson, Infrared Radiation (Plenum) as tabulated"},
    {"copper oxidized heavily", "20", "total", 0.78, 0.78,
     "Wolfe and Zissis, The Infrared Handbook as tabulated"},
    {"copper oxidized black", "27", "total", 0.78, 0.78,
     "Wolfe, Handbook of Military Infrared Technology as tabulated"},
    {"brass dull tarnished", "20-350", "total", 0.22, 0.22,
     "Bramson, Infrared Radiation (Plenum) as tabulated"},
    {"brass oxidized", "100", "total", 0.61, 0.61, "Wolfe and Zissis, The Infrared Handbook as tabulated"},
    {"aluminium polished", "50-100", "total", 0.04, 0.06,
     "Bramson, Infrared Radiation (Plenum) as tabulated"},
    {"lead oxidized", "", "8-14 µm", 0.2, 0.6, "pyrometer emissivity appendix"},
    {"PVC or rubber jacket", "", "total", 0.90, 0.95,
     "from memory: Incropera and others, Fundamentals of Heat and Mass Transfer, Table A.11"},
    {"tin plate, bright", "", "total", 0.05, 0.05,
     "from memory: Incropera and others, Fundamentals of Heat and Mass Transfer, Table A.11"},
}};

}  // namespace ohmtrail::trade::tables
