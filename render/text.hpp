#pragma once
#include <string_view>

/// Every word that a picture or a report says, in one place, so that a translation is one more such table.
/// `{}` are filled in with names and numbers in the order given.
namespace ohmtrail::render::text {

inline constexpr std::string_view language = "en";

// Wiring diagram
inline constexpr std::string_view diagram_title = "Wiring diagram";
inline constexpr std::string_view open = "open";
inline constexpr std::string_view off = "off";
inline constexpr std::string_view stopped = "stopped";
inline constexpr std::string_view run_title = "Run {}, {}, {} long: {} lost at {}, {} of heat";
inline constexpr std::string_view return_name = "{} (return)";
inline constexpr std::string_view idle_title = "{}: no current in this case";
inline constexpr std::string_view device_title = "{}: {} lost at {}, {} of heat";
inline constexpr std::string_view load_title = "Load {}: {} at {}, takes {}";
inline constexpr std::string_view supply_title = "Battery {}: {} at its posts, delivers {}";
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
inline constexpr std::string_view hot_list = "Hot spots, worst first";
inline constexpr std::string_view lost_and_back = "{} lost, {} back";

}  // namespace ohmtrail::render::text
