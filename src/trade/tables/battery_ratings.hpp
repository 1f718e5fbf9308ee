#pragma once
#include <array>
#include <string_view>

#include "trade/tables/listed.hpp"

/// What the label says, and what it says in other words.
namespace ohmtrail::trade::tables {

inline constexpr std::string_view practice = "common practice";

inline constexpr std::array<ListedRow<7>, 9> rating_rows{
    {{{"CCA SAE J537", "-18", "30", "1.2", "3.6", "7.2", "new, fully charged"},
      "found",
      "SAE J537 as quoted in several passenger-car service manuals and battery glossaries"},
     {{"Icc EN 50342-1, point 1", "-18", "10", "1.25", "3.75", "7.5", ""},
      "found",
      "EN 50342-1 as quoted in public battery lexicons"},
     {{"Icc EN 50342-1, point 2 (C1)", "-18", "90", "1.0", "3.0", "6.0",
       "150 s for class C2; second part run at 0.6 Icc (that factor from memory)"},
      "found",
      "EN 50342-1 as quoted in public battery lexicons"},
     {{"IEC 60095-1 (older)", "-18", "60", "1.4", "4.2", "8.4",
       "newer editions are quoted with 7.2-7.5 V at 30/10 s: DOUBT"},
      "found",
      "IEC 60095-1 as quoted in public battery lexicons"},
     {{"DIN 43539 T2", "-18", "30", "1.5", "4.5", "9.0", "and 6.0 V not before 150 s"},
      "found",
      "DIN 43539 Teil 2 as quoted in public forum and lexicon"},
     {{"MCA / CA", "0", "30", "1.2", "3.6", "7.2", "marine cranking amperes"},
      "from memory",
      "from memory: battery industry definition"},
     {{"Reserve capacity", "26.7", "", "1.75", "5.25", "10.5", "minutes at 25 A"},
      "found",
      "passenger-car service manuals 1997-1999"},
     {{"20 h capacity", "25", "72000", "1.75", "5.25", "10.5", "Ah at C/20"},
      "from memory",
      "from memory: common rating"},
     {{"6 h capacity (traction)", "25", "21600", "1.7", "5.1", "10.2",
       "motive power rating is at the 6 h rate"},
      "found (rate), end voltage from memory",
      "US Army TM 10-6140-200-14, para 1-9; end voltage from memory"}}};

inline constexpr std::array<ListedRow<4>, 11> conversion_rows{
    {{{"CCA over Ah20 starting", "6.0", "", "from the two equal load choices 0.5 CCA = 3 Ah"},
      "found",
      "outboard-motor service manual 1994 (public)"},
     {{"CCA over Ah20 dual purpose", "5.0", "4-6", ""}, "common practice", practice},
     {{"CCA over Ah20 deep cycle", "4.0", "3-5", ""}, "common practice", practice},
     {{"MCA over CCA", "1.25", "1.2-1.3", ""}, "common practice", practice},
     {{"CCA EN over CCA SAE", "1.05", "1.0-1.1", "conversion is not exact"}, "common practice", practice},
     {{"Ah20 from RC minutes", "0.5 x RC + 16", "", "rough"}, "common practice", practice},
     {{"Ah at 25A from RC minutes", "0.4167", "", "Ah = RC x 25/60 at the 25 A rate"},
      "derived",
      "derived from the reserve capacity definition"},
     {{"recharge factor flooded", "1.2", "1.10-1.25", "Ah put back over Ah taken"},
      "common practice",
      "common practice; TM 5-4210-230-14&P-1 says removed Ah plus an allowance"},
     {{"slow charge rate A per positive plate per cell", "1.0", "",
       "overnight 10-16 h, up to 24 h; sulphated 48-72 h"},
      "found",
      "US Army TM 5-4210-230-14&P-1, slow charging; TM 5-1185"},
     {{"recharge time flooded h", "10", "8-14",
       "C/10 bulk plus absorption; last 20 percent takes half the time"},
      "common practice",
      practice},
     {{"recharge time lfp h", "2", "1-5", "set by charger and battery-management limit"},
      "common practice",
      practice}}};

}  // namespace ohmtrail::trade::tables
