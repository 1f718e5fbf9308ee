#pragma once
#include <string_view>

/// Words of the drawings; see text.hpp.
namespace ohmtrail::render::text {

inline constexpr std::string_view language = "en";

// Wiring diagram
inline constexpr std::string_view diagram_title = "Wiring diagram";
inline constexpr std::string_view open = "open";
inline constexpr std::string_view off = "off";
inline constexpr std::string_view stopped = "stopped";
inline constexpr std::string_view run_title = "Run {}, {}, {} long: {} lost at {}, {} of heat";
inline constexpr std::string_view return_name = "{} (return)";
inline constexpr std::string_view plain_title = "Joined directly";
inline constexpr std::string_view bar_title = "{} · {}";
inline constexpr std::string_view idle_title = "{}: no current in this case";
inline constexpr std::string_view device_title = "{}: {} lost at {}, {} of heat";
inline constexpr std::string_view load_title = "Load {}: {} at {}, takes {}";
inline constexpr std::string_view supply_title = "Battery {}: {} at its posts, delivers {}";
inline constexpr std::string_view supply_taking_title = "Battery {}: {} at its posts, takes {}";
inline constexpr std::string_view charger_title = "Charger {}: {}, delivers {}";
inline constexpr std::string_view converter_title = "Converter {}";
inline constexpr std::string_view point_title = "{}: {}";
inline constexpr std::string_view hot_spot_title = "Hot spot {}: {}";
inline constexpr std::string_view legend_loss = "Voltage lost, as a share of what is allowed";
inline constexpr std::string_view legend_width = "Line width: copper area";
inline constexpr std::string_view legend_end = "end of a run";
inline constexpr std::string_view legend_disc = "hot spot, by rank";
inline constexpr std::string_view legend_open = "open";
inline constexpr std::string_view legend_idle = "no current";
inline constexpr std::string_view shows_volts =
    "Numbers: voltage lost in each part; voltage at posts, bars and loads";
inline constexpr std::string_view shows_amps = "Numbers: current, arrow in its direction";
inline constexpr std::string_view shows_heat = "Numbers: heat, and temperature where it is known";
inline constexpr std::string_view shows_gauge = "Numbers: conductor size and length, ratings";
inline constexpr std::string_view block_system = "System";
inline constexpr std::string_view block_case = "Case";
inline constexpr std::string_view block_date = "Date";
inline constexpr std::string_view block_reference = "Reference";
inline constexpr std::string_view block_customer = "Customer";
inline constexpr std::string_view block_technician = "Technician";
inline constexpr std::string_view hot_list = "Hot spots, each where it costs most";
inline constexpr std::string_view hot_more = "and {} more";
inline constexpr std::string_view lost_only = "{} lost";
inline constexpr std::string_view lost_and_back = "{} lost, {} back";

// A large system on several sheets
inline constexpr std::string_view on_sheet = "sheet {}";
inline constexpr std::string_view board_title = "Sheet {}: {} circuits of {}";
inline constexpr std::string_view board_title_one = "Sheet {}: 1 circuit of {}";
inline constexpr std::string_view board_goes_on = "Sheet {}, continued: circuits of {}";

// A picture on several pages
inline constexpr std::string_view part_of = "Part {}";
inline constexpr std::string_view part_left = " · {} to its left";
inline constexpr std::string_view part_right = " · {} to its right";
inline constexpr std::string_view part_above = " · {} above";
inline constexpr std::string_view part_below = " · {} below";

// Voltage staircase
inline constexpr std::string_view staircase_title = "Where the voltage goes: {}, {}";
inline constexpr std::string_view stair_left = "{} left";
inline constexpr std::string_view stair_load = "{} is left for {}";
inline constexpr std::string_view stair_found = "lost, as found";
inline constexpr std::string_view stair_rated = "with every part sound";
inline constexpr std::string_view stair_column_both = "as found / if sound";
inline constexpr std::string_view stair_column_found = "as found";
inline constexpr std::string_view stair_limit = "more than is allowed between the {} and the load";
inline constexpr std::string_view stair_supply = "inside battery {}";
inline constexpr std::string_view stair_charger = "{}, below its set point";
inline constexpr std::string_view stair_way_there = "From the {} to the load";
inline constexpr std::string_view stair_way_back = "From the load back to the {}";

// Bank picture
inline constexpr std::string_view bank_title = "Batteries";
inline constexpr std::string_view bank_at_rest = "at rest";
inline constexpr std::string_view bank_loaded = "at {}";
inline constexpr std::string_view bank_failed = "at {}: failed";
inline constexpr std::string_view bank_passed = "at {}: passed";
inline constexpr std::string_view bank_cells = "specific gravity of each cell, at 26.7 °C";
inline constexpr std::string_view bank_band = "healthy, fully charged";
inline constexpr std::string_view bank_no_cells = "cells not read";
inline constexpr std::string_view bank_no_checks = "no test was made";

// What feeds a load
inline constexpr std::string_view battery = "battery";
inline constexpr std::string_view charger = "charger";
inline constexpr std::string_view converter = "converter";

// Parts of a sag, in words for someone who knows nothing of volts
inline constexpr std::string_view part_battery = "the battery itself";
inline constexpr std::string_view part_charger = "the charger, which gives all it can";
inline constexpr std::string_view part_converter = "the converter, which gives all it can";
inline constexpr std::string_view part_wires = "the cables";
inline constexpr std::string_view part_terminations = "the ends of the cables";
inline constexpr std::string_view part_joints = "joints and bars";
inline constexpr std::string_view part_switchgear = "switches and fuses";
inline constexpr std::string_view part_isolators = "charging diodes";

// What a hot spot is
inline constexpr std::string_view cause_corroded_conductor = "damaged or corroded cable";
inline constexpr std::string_view cause_in_doubt = "suspected, not yet sure";
inline constexpr std::string_view cause_somewhere = "a bad place, not yet told which";
inline constexpr std::string_view cause_bad_termination = "bad cable end";
inline constexpr std::string_view cause_bad_joint = "bad joint";
inline constexpr std::string_view cause_worn_contact = "worn contact";
inline constexpr std::string_view cause_undersized = "cable too thin";
inline constexpr std::string_view cause_weak_battery = "worn battery";
inline constexpr std::string_view cause_discharged_battery = "discharged battery";

// Where a hot spot is
inline constexpr std::string_view where_battery = "battery {}";
inline constexpr std::string_view battery_word = "batter";  ///< a name that has it needs no other
inline constexpr std::string_view where_wire = "cable {}";
inline constexpr std::string_view where_return_wire = "return cable of {}";
inline constexpr std::string_view where_end = "cable {}, its end at {}";
inline constexpr std::string_view where_return_end = "return cable of {}, its end at {}";
inline constexpr std::string_view where_cable = "cable {} with its ends";
inline constexpr std::string_view where_return_cable = "return cable of {} with its ends";
inline constexpr std::string_view where_both = "cable {}, both conductors";
inline constexpr std::string_view where_input = "{}, its input";
inline constexpr std::string_view where_output = "{}, its output";
inline constexpr std::string_view where_place = "{} ({})";

}  // namespace ohmtrail::render::text
