#include "ohmtrail/trade/ampacity.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <span>
#include <string_view>
#include <vector>

#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "trade/tables/ampacities.hpp"

namespace ohmtrail::trade {
namespace {

using units::Current;
using units::Temperature;

/// One table as the lookup sees it.
struct Book {
  std::string_view source;
  std::span<const double> ratings, engine_space;
  std::span<const tables::BundleRow> bundle;
  std::string_view bundle_source;
};

struct Size {
  Gauge gauge;
  std::span<const double> amps;  ///< by column of the book's ratings
};

const Book cfr_book{tables::cfr_source, tables::cfr_ratings, tables::cfr_engine_space, tables::cfr_bundle,
                    tables::cfr_bundle_source};
const Book iso_book{tables::iso_source, tables::iso_ratings, tables::iso_engine_space, tables::iso_bundle,
                    tables::iso_bundle_source};

const std::vector<Size>& sizes(const Book& book) {
  static const std::vector<Size> by_awg = [] {
    std::vector<Size> result;
    result.reserve(tables::cfr_rows.size());
    for (const auto& row : tables::cfr_rows) result.push_back({awg(row.awg), row.amps});
    return result;
  }();
  static const std::vector<Size> by_mm2 = [] {
    std::vector<Size> result;
    result.reserve(tables::iso_rows.size());
    for (const auto& row : tables::iso_rows) result.push_back({metric(row.square_millimetres), row.amps});
    return result;
  }();
  return &book == &iso_book ? by_mm2 : by_awg;
}

struct Column {
  std::size_t index;
  double scale;  ///< 1 but for insulation rated below the first column
};

/// The column of the largest rating not above the insulation's.
Column column_for(const Book& book, Temperature insulation) {
  const double rating = insulation.celsius();
  const auto above = std::upper_bound(book.ratings.begin(), book.ratings.end(), rating);
  if (above != book.ratings.begin()) return {static_cast<std::size_t>(above - book.ratings.begin()) - 1, 1};
  const double rise = std::max(0.0, rating - tables::reference_ambient);
  return {0, std::sqrt(rise / (book.ratings.front() - tables::reference_ambient))};
}

struct FromTable {
  double amps;
  std::string words;
};

/// A power law in the area through the two nearest sizes, exact at both.
FromTable look_up(const Book& book, const Gauge& gauge, std::size_t column) {
  const auto& rows = sizes(book);
  const auto same = std::find_if(rows.begin(), rows.end(), [&](const Size& s) { return s.gauge == gauge; });
  if (same != rows.end()) return {same->amps[column], fmt::format("row {}", print(gauge))};
  auto above =
      std::find_if(rows.begin(), rows.end(), [&](const Size& s) { return s.gauge.area > gauge.area; });
  above = std::clamp(above, rows.begin() + 1, rows.end() - 1);
  const auto below = above - 1;
  const double share =
      std::log(ratio(gauge.area, below->gauge.area)) / std::log(ratio(above->gauge.area, below->gauge.area));
  const double amps = below->amps[column] * std::pow(above->amps[column] / below->amps[column], share);
  const std::string_view how = share < 0 || share > 1 ? "extrapolated" : "interpolated";
  return {amps, fmt::format("{} by area from {} and {}", how, print(below->gauge), print(above->gauge))};
}

double bundling_factor(const Book& book, int conductors) {
  double factor = 1;
  for (const auto& row : book.bundle)
    if (conductors >= row.conductors_from) factor = row.factor;
  return factor;
}

/// Equal heat in equal wires: the current falls with the root of the resistivity.
double metal_factor(ConductorKind kind) {
  const double copper = metal(ConductorKind::bare_copper).resistivity.si();
  return std::sqrt(copper / metal(kind).resistivity.si());
}

std::string describe(const Ampacity& rating, const WirePlace& place, const Book& book, Column column,
                     const std::string& row) {
  std::string text = fmt::format("{}, {:g} °C column, {}", book.source, book.ratings[column.index], row);
  if (column.scale < 1)
    text +=
        fmt::format("; scaled by {:.2f} for {:g} °C insulation", column.scale, place.insulation.celsius());
  if (metal_factor(place.conductor) < 1)
    text += fmt::format("; times {:.2f} for the metal at equal heat", metal_factor(place.conductor));
  if (place.engine_space)
    text += fmt::format("; times {:.2f} in the engine space", rating.engine_space_factor);
  if (rating.bundling_factor < 1) {
    text += fmt::format("; times {:.2f} for {} conductors together ({})", rating.bundling_factor,
                        place.bundle, book.bundle_source);
    if (!rating.bundling_binds) text += ", applied below 50 V as good practice";
  }
  return text;
}

}  // namespace

const std::vector<Gauge>& awg_with_ampacity() {
  static const std::vector<Gauge> gauges = [] {
    std::vector<Gauge> result;
    for (const auto& row : tables::cfr_rows) result.push_back(awg(row.awg));
    return result;
  }();
  return gauges;
}

Ampacity ampacity(const WirePlace& place) {
  const Book& book = place.gauge.system == GaugeSystem::metric ? iso_book : cfr_book;
  const Column column = column_for(book, place.insulation);
  const FromTable found = look_up(book, place.gauge, column.index);
  Ampacity rating;
  rating.table = Current{found.amps * column.scale * metal_factor(place.conductor)};
  rating.engine_space_factor = place.engine_space ? book.engine_space[column.index] : 1;
  rating.bundling_factor = bundling_factor(book, place.bundle);
  rating.bundling_binds = place.system && place.system->si() >= 50;
  rating.amps = rating.engine_space_factor * rating.bundling_factor * rating.table;
  rating.reference_ambient =
      Temperature{place.engine_space ? tables::engine_space_ambient : tables::reference_ambient};
  // The column's own rating, not the insulation's: amps of the 90 °C column heat a 100 °C wire to 90 °C.
  const Temperature rated{std::min(place.insulation.celsius(), book.ratings[column.index])};
  rating.rise_at_rated = rated - rating.reference_ambient;
  rating.basis = describe(rating, place, book, column, found.words);
  return rating;
}

Temperature wire_temperature(const Ampacity& rating, Temperature ambient, Current current) {
  const double share = ratio(current, rating.amps);
  return ambient + rating.rise_at_rated * (share * share);
}

units::Time thermal_time_constant(const WirePlace& place, const Ampacity& rating) {
  const units::Length metre{1};
  const auto cold = wire_resistance_at_20C(place.gauge, metre, place.conductor) *
                    resistance_factor(place.conductor, rating.reference_ambient);
  const auto stored = wire_heat_capacity(place.gauge, place.conductor) * metre * rating.rise_at_rated;
  return stored / (rating.amps * rating.amps * cold);
}

double duty_share(units::Time on, std::optional<units::Time> rest, units::Time time_constant) {
  if (time_constant.si() <= 0) return 1;
  // expm1 keeps the share right where a turn is short against the time constant.
  const double once = -std::expm1(-ratio(on, time_constant));
  return rest ? once / -std::expm1(-ratio(on + *rest, time_constant)) : once;
}

}  // namespace ohmtrail::trade
