#pragma once
#include <array>
#include <string_view>

/// What sound terminations, joints, switches and fuses resist, each group with its source.
namespace ohmtrail::trade::tables {

/// A crimp's greatest drop at its test current.
struct CrimpRow {
  int awg;
  double test_amps, millivolts;
  bool from_memory;
};

inline constexpr std::string_view crimp_source =
    "MIL-T-7928E crimp table as reproduced in aircraft-wiring training texts; 2 AWG to 4/0 from memory: "
    "MIL-T-7928 / "
    "SAE AS7928 larger sizes";

inline constexpr std::array<CrimpRow, 16> crimp_rows{{{22, 9, 7, false},
                                                      {20, 11, 6, false},
                                                      {18, 16, 5, false},
                                                      {16, 22, 7, false},
                                                      {14, 32, 6, false},
                                                      {12, 41, 5, false},
                                                      {10, 55, 5, false},
                                                      {8, 73, 5, false},
                                                      {6, 101, 5, false},
                                                      {4, 135, 5, false},
                                                      {2, 181, 5, true},
                                                      {1, 211, 5, true},
                                                      {0, 245, 5, true},
                                                      {-1, 283, 5, true},
                                                      {-2, 328, 5, true},
                                                      {-3, 380, 5, true}}};

/// A bolted contact by stud, from so many square millimetres of conductor up.
struct StudRow {
  double square_millimetres_from;
  int thread_mm;
  double micro_ohm;
};

inline constexpr std::string_view stud_source = "common practice";

inline constexpr std::array<StudRow, 4> stud_rows{{{20, 8, 15}, {7, 6, 40}, {3.2, 5, 40}, {0, 4, 80}}};

/// Joints and switches: a resistance, or a drop at the rated current where that governs.
struct KindRow {
  std::string_view kind;
  double milliohm;             ///< without a rating
  double millivolts_at_rated;  ///< 0: the rating does not matter
  std::string_view basis;
};

inline constexpr std::array<KindRow, 8> joint_rows{{
    {"post-clamp", 0.030, 0,
     "common practice: a clean post and clamp; US Army TM 10-3930-671-24 and TM 5-3820-256-24-4 want no drop "
     "that a "
     "meter shows while cranking"},
    {"stud", 0.015, 3.75,
     "half of MIL-DTL-83454A Table VIII (7.5 mV at rated current), never below 15 µΩ; without a "
     "rating a contact on M8, common practice"},
    {"splice", 0.100, 5, "two crimps at half the limit of MIL-T-7928E; without a rating one for 12 AWG"},
    {"plug", 1.0, 15, "common practice, low confidence: 15 mV at rated current"},
    {"terminal-strip", 0.125, 3.75, "half of MIL-DTL-83454A Table VIII (7.5 mV at rated current)"},
    {"fuse-clip", 1.0, 15,
     "common practice: 0.5 to 2 mΩ for both clips of a blade fuse; 15 mV at rated current"},
    {"bus-bar", 0.015, 0, "common practice: a bolted contact on M8; the bar itself is a few µΩ"},
    {"chassis", 0.200, 0,
     "common practice, low confidence: well below the 2.5 mΩ bonding limit of FAA AC 43.13-1B "
     "par. 11-188"},
}};

inline constexpr std::array<KindRow, 4> switch_rows{{
    {"battery-switch", 0.12, 0, "common practice, low confidence: 0.05 to 0.3 mΩ new, geometric middle"},
    {"breaker", 2.0, 100, "common practice: thermal breakers drop 50 to 200 mV at rated current"},
    {"contactor", 0.30, 0, "from memory: data sheets of several makes, 0.2 to 0.5 mΩ new at 100 to 400 A"},
    {"toggle", 3.0, 50,
     "from memory: data sheets of relays, 20 to 50 mV at 10 A and 2 to 5 mΩ new; common practice"},
}};

/// Cold resistance of a blade fuse.
struct BladeRow {
  double rating, milliohm, millivolts_at_rated;
};

inline constexpr std::string_view blade_source =
    "from memory: published data of a common standard blade fuse (ISO 8820-3 type C form), cold resistance; "
    "the 10 A "
    "row agrees with a training page (7.69 mΩ)";

inline constexpr std::array<BladeRow, 13> blade_rows{{{1, 123.0, 176},
                                                      {2, 53.5, 141},
                                                      {3, 31.1, 137},
                                                      {4, 22.8, 140},
                                                      {5, 17.85, 128},
                                                      {7.5, 10.91, 116},
                                                      {10, 7.7, 109},
                                                      {15, 4.8, 102},
                                                      {20, 3.38, 98},
                                                      {25, 2.52, 92},
                                                      {30, 1.97, 84},
                                                      {35, 1.61, 87},
                                                      {40, 1.44, 96}}};

/// Every other fuse: cold drop at rated current, mV, and hot.
inline constexpr double fuse_cold_millivolts = 60, fuse_hot_millivolts = 90;
inline constexpr std::string_view fuse_source =
    "estimate: 60 mV cold to 90 mV hot at rated current, plus or minus 40 percent; common practice, no "
    "public table";

}  // namespace ohmtrail::trade::tables
