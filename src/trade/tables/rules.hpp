#pragma once
#include <array>
#include <string_view>

/// Rules on protection and on voltage drop, a row each with its source.
namespace ohmtrail::trade::tables {

struct RuleRow {
  std::string_view rule;
  double value;
  std::string_view unit, condition, source;
};

inline constexpr std::array<RuleRow, 23> protection_rows{{
    {"fuse, farthest from its source", 7, "in",
     "only if placing it at the source is physically impractical; measured along the conductor",
     "33 CFR 183.455(b)(1)"},
    {"fuse, farthest from its source, sheathed", 40, "in",
     "only if 7 in is impractical and the conductor is in a sheath or enclosure the whole way",
     "33 CFR 183.455(b)(2)"},
    {"fuse, farthest from the battery", 72, "in",
     "ungrounded battery output conductor; engine cranking main feed exempt", "33 CFR 183.460(a)"},
    {"largest fuse below 50 V", 150, "% of allowable current", "circuits below 50 V", "33 CFR 183.455(c)(1)"},
    {"largest fuse from 50 V up", 100, "% of allowable current", "circuits of 50 V or more",
     "33 CFR 183.455(c)(2)"},
    {"next standard rating, cap from 50 V up", 150, "% of allowable current",
     "if 100 percent is not a standard size the next larger may be used up to this", "33 CFR 183.455(c)(2)"},
    {"least voltage rating of a fuse", 100, "% of nominal voltage", "", "33 CFR 183.455(d)"},
    {"largest fuse on an alternator", 120, "% of rated output at 60 °C", "not for self-limiting machines",
     "33 CFR 183.460(b)"},
    {"pigtails exempt below", 7, "in", "exposed length", "33 CFR 183.425(g), 183.455(e)"},
    {"smallest conductor in a sheath", 18, "AWG", "", "33 CFR 183.425(d)"},
    {"smallest conductor on its own", 16, "AWG", "", "33 CFR 183.425(e)"},
    {"18 AWG beyond its sheath at most", 30, "in", "", "33 CFR 183.425(f)"},
    {"electronic circuits exempt below", 1, "A", "", "33 CFR 183.425(g)"},
    {"small passenger vessels: next rating up to", 150, "% of allowable current",
     "next larger device allowed when ampacity is not a standard size", "46 CFR 183.380(d)"},
    {"small passenger vessels: largest lighting fuse", 30, "A", "", "46 CFR 183.380(g)"},
    {"small passenger vessels: smallest power or lighting conductor", 14, "AWG", "", "46 CFR 183.340(c)"},
    {"small passenger vessels: smallest control conductor", 22, "AWG", "", "46 CFR 183.340(c)"},
    {"park trailers: fuse, farthest from the supply", 18, "in", "park trailer low-voltage circuits",
     "NEC 552.10(E)(4)"},
    {"recreational vehicles: smallest battery to chassis conductor", 8, "AWG",
     "copper; not less than the other lead if that is larger", "NEC 552.10(C)(4)"},
    {"fuse, farthest from its source, small craft", 200, "mm",
     "longer allowed when sheathed or otherwise protected", "from memory: ISO 10133:2000 8.1"},
    {"smallest conductor on its own, small craft", 1, "mm2", "each conductor longer than 200 mm",
     "ISO 10133:2012 7.7"},
    {"smallest conductor in a sheath, small craft", 0.75, "mm2", "may leave the sheath for up to 800 mm",
     "ISO 10133:2012 7.7"},
    {"farthest between supports, small craft", 450, "mm",
     "300 mm for battery conductors up to the disconnect switch", "ISO 10133:2012 7.3 and 7.4"},
}};

struct DropRow {
  std::string_view scope;
  double limit;
  std::string_view unit, applies_to, source;
};

inline constexpr std::array<DropRow, 27> drop_rows{{
    {"small passenger vessels d.c.", 10, "% at load terminals", "all d.c. conductors; steady state",
     "46 CFR 183.340(p)"},
    {"small passenger vessels (larger)", 10, "% at load terminals", "all conductors", "46 CFR 120.340(p)"},
    {"commercial fishing vessels", 10, "% at load terminals", "conductors", "46 CFR 28.865(b)"},
    {"sailing school vessels below 50 V", 10, "% at load terminals", "power and lighting conductors",
     "46 CFR 169.672(c)(2)"},
    {"small-craft practice", 3, "%",
     "panel or switchboard main feeders; bilge blowers; electronic equipment; navigation lights; other "
     "circuits where drop must be minimum",
     "ABYC E-11 voltage drop clause (quoted in found text)"},
    {"small-craft practice", 10, "%",
     "lighting other than navigation lights; other circuits where drop is not critical",
     "ABYC E-11 voltage drop clause (quoted in found text)"},
    {"small craft", 3, "%",
     "panel main conductors; navigation lights; bilge blowers; bilge pumps; safety equipment",
     "ISO 10133 (2012 preview text)"},
    {"small craft", 10, "%", "other d.c. circuits", "from memory: ISO 10133 clause 4"},
    {"inland vessels zones 1-4", 5, "% of nominal", "main switchboard to worst point; lighting",
     "BinSchUO 2008 Annex II 9.15(5)"},
    {"inland vessels zones 1-4", 7, "% of nominal", "main switchboard to worst point; power and heating",
     "BinSchUO 2008 Annex II 9.15(5)"},
    {"aircraft", 2, "% of regulated voltage", "source to bus", "FAA-H-8083 airframe handbook"},
    {"aircraft 14 V", 0.5, "V", "bus to load ground; continuous", "FAA AC 43.13-1B Table 11-7"},
    {"aircraft 28 V", 1, "V", "bus to load ground; continuous", "FAA AC 43.13-1B Table 11-7"},
    {"aircraft 14 V", 1, "V", "intermittent", "from memory: FAA AC 43.13-1B Table 11-6"},
    {"aircraft 28 V", 2, "V", "intermittent", "from memory: FAA AC 43.13-1B Table 11-6"},
    {"starting motor circuit light and medium duty 6 V", 0.12, "V per 100 A at 20 °C",
     "battery terminals to motor terminals with all connections; excluding motor relays solenoids",
     "SAE J541 (from a summary)"},
    {"starting motor circuit light and medium duty 12 V", 0.2, "V per 100 A at 20 °C", "same",
     "SAE J541 (from a summary)"},
    {"starting motor circuit light and medium duty 24 V", 0.4, "V per 100 A at 20 °C", "same",
     "SAE J541 (from a summary)"},
    {"starting motor circuit heavy duty 12 V", 0.1, "V per 100 A at 20 °C", "same",
     "SAE J541 (from a summary)"},
    {"starting motor circuit heavy duty 24-32 V", 0.17, "V per 100 A at 20 °C", "same",
     "SAE J541 (from a summary)"},
    {"cranking circuit", 0.2, "V per 100 A", "whole circuit", "US Army TM 10-3930-671-24 page F-303"},
    {"battery cables positive plus negative at 500 A 12 V", 0.5, "V", "both cables summed",
     "US Army TM 5-2420-230-24-2 section 013-009"},
    {"battery cables positive plus negative at 250 A 24 V", 1.0, "V", "both cables summed",
     "US Army TM 5-2420-230-24-2 section 013-009"},
    {"starter control circuit 12 V", 1.0, "V at 20 °C", "positive plus negative; hold-in and pull-in active",
     "US Army TM 5-2420-230-24-2 page 13-33"},
    {"starter control circuit 24 V", 2.0, "V at 20 °C", "same", "US Army TM 5-2420-230-24-2 page 13-33"},
    {"building practice (informational)", 3, "%", "branch circuit", "NEC 210.19(A) note"},
    {"building practice (informational)", 5, "%", "feeder plus branch", "NEC 210.19(A) note"},
}};

}  // namespace ohmtrail::trade::tables
