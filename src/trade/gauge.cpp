#include "ohmtrail/trade/gauge.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <numbers>
#include <optional>
#include <stdexcept>

#include "trade/tables/gauges.hpp"

namespace ohmtrail::trade {
namespace {

using units::Area;
using units::Length;

constexpr double square_metres_per_circular_mil = std::numbers::pi / 4 * 25.4e-6 * 25.4e-6;

std::vector<Gauge> all_awg() {
  std::vector<Gauge> gauges;
  for (int n = tables::thinnest_awg; n >= tables::thickest_awg; --n)
    gauges.push_back({GaugeSystem::awg, n, awg_area(n)});
  return gauges;
}

std::vector<Gauge> all_sae() {
  std::vector<Gauge> gauges;
  gauges.reserve(tables::sae_rows.size());
  for (const tables::SaeRow& row : tables::sae_rows)
    gauges.push_back({GaugeSystem::sae, row.number, tables::sae_area(row)});
  return gauges;
}

std::vector<Gauge> all_metric() {
  std::vector<Gauge> gauges;
  gauges.reserve(tables::metric_sizes.size());
  for (const double mm2 : tables::metric_sizes) gauges.push_back({GaugeSystem::metric, 0, Area{mm2 * 1e-6}});
  return gauges;
}

const Gauge& known(GaugeSystem system, int number) {
  const auto& all = known_gauges(system);
  const auto found = std::find_if(all.begin(), all.end(), [=](const Gauge& g) { return g.number == number; });
  if (found == all.end())
    throw std::invalid_argument(fmt::format("gauge number {} is not tabulated", number));
  return *found;
}

/// The text in lower case without spaces and dots, "mm²" as "mm2".
std::string squeezed(std::string_view text) {
  std::string result;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == ' ' || c == '\t') continue;
    if (text.substr(i, 2) == "²") {
      result += '2';
      ++i;
    } else {
      result += static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
    }
  }
  return result;
}

bool take_suffix(std::string& text, std::string_view suffix) {
  if (!text.ends_with(suffix)) return false;
  text.erase(text.size() - suffix.size());
  return true;
}

std::optional<double> whole_number(std::string_view text) {
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

/// "2/0" and "00" are −1, "0" and "1/0" are 0, "12" is 12.
std::optional<double> gauge_number(std::string_view text) {
  if (text.size() > 1 && text.find_first_not_of('0') == std::string_view::npos)
    return 1.0 - static_cast<double>(text.size());
  const bool aught = text.ends_with("/0");
  const auto value = whole_number(text.substr(0, text.size() - (aught ? 2 : 0)));
  if (!value) return std::nullopt;
  return aught ? 1 - *value : *value;
}

struct Spelled {
  GaugeSystem system;
  double size;  ///< gauge number or mm²
};

std::optional<Spelled> spelled(std::string_view text) {
  std::string rest = squeezed(text);
  for (const std::string_view unit : {"mm2", "mm^2", "sqmm", "qmm"})
    if (take_suffix(rest, unit)) {
      const auto mm2 = whole_number(rest);
      return mm2 ? std::optional(Spelled{GaugeSystem::metric, *mm2}) : std::nullopt;
    }
  const bool sae = take_suffix(rest, "sae");
  if (!sae && !take_suffix(rest, "awg") && !take_suffix(rest, "ga")) take_suffix(rest, "gauge");
  const auto number = gauge_number(rest);
  return number ? std::optional(Spelled{sae ? GaugeSystem::sae : GaugeSystem::awg, *number}) : std::nullopt;
}

double size_of(const Gauge& gauge) {
  return gauge.system == GaugeSystem::metric ? gauge.area.si() * 1e6 : gauge.number;
}

/// How far two sizes are apart: in gauge numbers, or in the logarithm of the area.
double distance(const Gauge& gauge, const Spelled& wanted) {
  if (gauge.system != GaugeSystem::metric) return std::abs(gauge.number - wanted.size);
  return wanted.size > 0 ? std::abs(std::log(size_of(gauge) / wanted.size)) : size_of(gauge);
}

std::string_view range_of(GaugeSystem system) {
  if (system == GaugeSystem::awg) return "AWG from 22 to 4/0";
  return system == GaugeSystem::sae ? "SAE gauge from 22 to 4/0" : "mm2 sizes of IEC 60228 from 0.5 to 300";
}

}  // namespace

Length awg_diameter(int number) {
  return Length{0.127e-3 * std::pow(92.0, (36.0 - number) / 39.0)};
}

Area awg_area(int number) {
  const Length d = awg_diameter(number);
  return std::numbers::pi / 4 * (d * d);
}

double circular_mils(Area area) {
  return area.si() / square_metres_per_circular_mil;
}

Area area_from_circular_mils(double circular_mils) {
  return Area{circular_mils * square_metres_per_circular_mil};
}

Gauge awg(int number) {
  return known(GaugeSystem::awg, number);
}

Gauge sae(int number) {
  return known(GaugeSystem::sae, number);
}

Gauge metric(double square_millimetres) {
  for (const Gauge& gauge : known_gauges(GaugeSystem::metric))
    if (std::abs(size_of(gauge) / square_millimetres - 1) < 1e-9) return gauge;
  throw std::invalid_argument(fmt::format("{} mm2 is not a size of IEC 60228", square_millimetres));
}

const std::vector<Gauge>& known_gauges(GaugeSystem system) {
  static const std::vector<Gauge> awg_sizes = all_awg(), sae_sizes = all_sae(), metric_sizes = all_metric();
  if (system == GaugeSystem::awg) return awg_sizes;
  return system == GaugeSystem::sae ? sae_sizes : metric_sizes;
}

tl::expected<Gauge, std::string> parse_gauge(std::string_view text) {
  const auto wanted = spelled(text);
  if (!wanted)
    return tl::unexpected(fmt::format(
        "\"{}\" is not a conductor size, expected one like \"2/0 AWG\", \"2 SAE\" or \"35 mm2\"", text));
  const auto& all = known_gauges(wanted->system);
  const auto known =
      std::find_if(all.begin(), all.end(), [&](const Gauge& g) { return distance(g, *wanted) < 1e-9; });
  if (known != all.end()) return *known;
  const auto nearest = std::min_element(all.begin(), all.end(), [&](const Gauge& a, const Gauge& b) {
    return distance(a, *wanted) < distance(b, *wanted);
  });
  return tl::unexpected(fmt::format("\"{}\" is not a known size, expected {}; the nearest is \"{}\"", text,
                                    range_of(wanted->system), print(*nearest)));
}

std::string print(const Gauge& gauge) {
  if (gauge.system == GaugeSystem::metric) return fmt::format("{:.6g} mm2", size_of(gauge));
  const std::string_view system = gauge.system == GaugeSystem::sae ? "SAE" : "AWG";
  if (gauge.number > 0) return fmt::format("{} {}", gauge.number, system);
  return fmt::format("{}/0 {}", 1 - gauge.number, system);
}

}  // namespace ohmtrail::trade
