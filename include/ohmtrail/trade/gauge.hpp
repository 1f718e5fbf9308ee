#pragma once
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "ohmtrail/trade/words.hpp"
#include "ohmtrail/units/quantity.hpp"

/// Conductor sizes: American wire gauge, SAE gauge and square millimetres.
namespace ohmtrail::trade {

/// Diameter of a solid wire of AWG number n (0 for 1/0 … −3 for 4/0): 0.127 mm · 92^((36 − n)/39), ASTM B258.
[[nodiscard]] units::Length awg_diameter(int number);
/// Its area.
[[nodiscard]] units::Area awg_area(int number);

/// Area in circular mils, the square of a diameter in thousandths of an inch.
[[nodiscard]] double circular_mils(units::Area area);
[[nodiscard]] units::Area area_from_circular_mils(double circular_mils);

/// A known gauge: AWG 22 to 4/0; SAE 22 to 4/0 as tabulated; 0.5 to 300 mm² of IEC 60228.
/// The precondition is that it is known.
[[nodiscard]] Gauge awg(int number);
[[nodiscard]] Gauge sae(int number);
[[nodiscard]] Gauge metric(double square_millimetres);

/// All known gauges of one system, thinnest first.
[[nodiscard]] const std::vector<Gauge>& known_gauges(GaugeSystem system);

/// Reads "2/0 AWG", "4/0", "2 SAE", "35 mm2"; a size without a system word is AWG. The error names what was
/// met, what was expected and the nearest known size.
[[nodiscard]] tl::expected<Gauge, std::string> parse_gauge(std::string_view text);

/// "2/0 AWG", "2 SAE", "35 mm2"; reads back to the same gauge.
[[nodiscard]] std::string print(const Gauge& gauge);

}  // namespace ohmtrail::trade
