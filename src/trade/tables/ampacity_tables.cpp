#include <fmt/format.h>

#include <string>

#include "trade/tables/ampacities.hpp"
#include "trade/tables/cells.hpp"
#include "trade/tables/registry.hpp"

namespace ohmtrail::trade::tables {
namespace {

template <class Ratings>
std::vector<Column> columns(Column size, const Ratings& ratings) {
  std::vector<Column> result{std::move(size)};
  for (const double rating : ratings) {
    const std::string name = rating == 85 ? "85 to 90" : fmt::format("{:g}", rating);
    result.push_back({name + " °C insulation", "A"});
  }
  return result;
}

template <class Row>
void add_amps(std::vector<Cell>& cells, const Row& amps) {
  for (const double a : amps) cells.emplace_back(a);
}

Table cfr_table() {
  Table table{"ampacity-33cfr183",
              "Allowable current of single copper conductors in free air at 30 °C, boats",
              columns({"gauge", "AWG"}, cfr_ratings),
              {},
              std::string(cfr_source),
              {"the 80 and 90 °C columns are equal at 8, 6, 1 AWG and from 1/0 up: not a typing error",
               "the 30 °C ambient is what its engine-space factors imply"}};
  for (const CfrRow& row : cfr_rows) {
    std::vector<Cell> cells{gauge_cell(row.awg)};
    add_amps(cells, row.amps);
    table.rows.push_back(std::move(cells));
  }
  return table;
}

Table iso_table() {
  Table table{"ampacity-iso10133",
              "Allowable current by cross-section, small craft",
              columns({"area", "mm2"}, iso_ratings),
              {},
              std::string(iso_source),
              {"from memory: confirm against the standard before relying on it",
               "the 60 °C column is far below the 70 °C column"}};
  for (const IsoRow& row : iso_rows) {
    std::vector<Cell> cells{row.square_millimetres};
    add_amps(cells, row.amps);
    table.rows.push_back(std::move(cells));
  }
  return table;
}

template <class Ratings, class Factors>
void add_engine_space(Table& table, std::string_view sizes, const Ratings& ratings, const Factors& factors,
                      std::string_view source) {
  for (std::size_t i = 0; i < ratings.size(); ++i)
    table.rows.push_back({words(sizes), words("engine space"),
                          words(fmt::format("{:g} °C insulation", ratings[i])), factors[i], words(source)});
}

template <class Rows>
void add_bundle(Table& table, std::string_view sizes, const Rows& rows, std::string_view source) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const bool last = i + 1 == rows.size();
    const int from = rows[i].conductors_from, to = last ? 0 : rows[i + 1].conductors_from - 1;
    const std::string range = last         ? fmt::format("{} and more together", from)
                              : from == to ? fmt::format("{} together", from)
                                           : fmt::format("{} to {} together", from, to);
    table.rows.push_back({words(sizes), words("bundle"), words(range), rows[i].factor, words(source)});
  }
}

Table factors_table() {
  Table table{"ampacity-factors",
              "Factors on allowable current: engine spaces and bundles",
              {{"sizes", ""}, {"factor for", ""}, {"condition", ""}, {"multiply by", ""}, {"source", ""}},
              {},
              "each row its own",
              {"bundling by 33 CFR binds at 50 V and up; below it is applied here as good practice",
               "ISO 10133 speaks of 60 °C engine spaces, yet its factors fit 50 °C, which is used"}};
  add_engine_space(table, "AWG, SAE", cfr_ratings, cfr_engine_space, cfr_engine_space_source);
  add_engine_space(table, "mm2", iso_ratings, iso_engine_space, iso_engine_space_source);
  add_bundle(table, "AWG, SAE", cfr_bundle, cfr_bundle_source);
  add_bundle(table, "mm2", iso_bundle, iso_bundle_source);
  return table;
}

}  // namespace

std::vector<Table> ampacity_tables() {
  return {cfr_table(), iso_table(), factors_table()};
}

}  // namespace ohmtrail::trade::tables
