#include "cli/json/solve.hpp"

#include "cli/json/common.hpp"
#include "cli/json/csv.hpp"
#include "ohmtrail/diagnose/feeding.hpp"

namespace ohmtrail::cli {
namespace {

using solve::CaseSolution;

Value id_or_null(const network::Network& network, int element) {
  if (element < 0) return {};
  return network.elements[static_cast<std::size_t>(element)].id;
}

Row element_row(const CaseSolution& solved, std::size_t k) {
  const network::Element& element = solved.network.elements[k];
  const solve::Solution& solution = solved.solution;
  const auto& points = solved.network.points;
  return {{"id", element.id},
          {"role", role_word(element.role)},
          {"from", points[static_cast<std::size_t>(element.from)]},
          {"to", points[static_cast<std::size_t>(element.to)]},
          {"current", number(solution.current[k])},
          {"drop", number(solution.drop[k])},
          {"heat", number(solution.heat[k])},
          {"resistance", number(solution.resistance[k])},
          {"temperature", number(solution.temperature[k])}};
}

Value collapse_value(const CaseSolution& solved) {
  const auto& collapse = solved.solution.collapse;
  if (!collapse) return {};
  return Row{{"load", id_or_null(solved.network, collapse->branch)},
             {"most_power", number(collapse->most_power)},
             {"at_volts", number(collapse->at_volts)},
             {"share", number(collapse->share)}};
}

void write_points(JsonWriter& json, const CaseSolution& solved) {
  json.key("points");
  json.open_object();
  for (std::size_t p = 0; p < solved.network.points.size(); ++p)
    json.field(solved.network.points[p], number(solved.solution.voltage[p]));
  json.close();
}

/// `feeds` and `circulating`: whose current goes where.
void write_feeding(JsonWriter& json, const CaseSolution& solved) {
  const auto feeding = diagnose::feeding(solved);
  json.key("feeds");
  json.open_array();
  for (const diagnose::Fed& fed : feeding) {
    json.open_object();
    json.field("to", fed.taker);
    json.field("role", role_word(fed.role));
    json.field("current", number(fed.current));
    std::vector<Row> from;
    for (const diagnose::FedFrom& one : fed.from)
      from.push_back(
          {{"source", one.source}, {"current", number(one.current)}, {"share", number(one.share)}});
    json.rows("from", from);
    json.close();
  }
  json.close();
  std::vector<Row> circulating;
  for (const auto& one : diagnose::circulating(solved, feeding))
    circulating.push_back({{"from", one.from}, {"to", one.to}, {"current", number(one.current)}});
  json.rows("circulating", circulating);
}

void write_case(JsonWriter& json, const CaseSolution& solved) {
  json.open_object();
  json.field("case", solved.network.case_name);
  json.field("status", std::string(solved.solution.collapse ? "collapsed" : "solved"));
  write_points(json, solved);
  json.key("elements");
  json.open_array();
  for (std::size_t k = 0; k < solved.network.elements.size(); ++k) json.value(element_row(solved, k));
  json.close();
  json.rows("loads", load_rows(solved));
  json.field("check", Row{{"current_residual", number(solved.solution.current_residual)},
                          {"power_residual", number(solved.solution.power_residual)}});
  json.field("collapse", collapse_value(solved));
  write_feeding(json, solved);
  json.close();
}

}  // namespace

std::vector<Row> load_rows(const CaseSolution& solved) {
  std::vector<Row> rows;
  for (const solve::LoadResult& load : solved.loads)
    rows.push_back({{"id", id_or_null(solved.network, load.element)},
                    {"volts", number(load.volts)},
                    {"current", number(load.current)},
                    {"power", number(load.power)},
                    {"supply", id_or_null(solved.network, load.supply)},
                    {"drop", number(load.drop)},
                    {"drop_percent", number(load.drop_fraction * 100)},
                    {"limit_percent", number(load.limit_fraction * 100)},
                    {"within", load.within},
                    {"sag", number(load.sag)},
                    {"running", load.running}});
  return rows;
}

std::string solve_json(const netlist::System& system, const std::vector<CaseSolution>& solved) {
  JsonWriter json;
  open_result(json, "solve", system, assumptions_of(solved));
  json.key("cases");
  json.open_array();
  for (const CaseSolution& one : solved) write_case(json, one);
  json.close();
  json.close();
  return json.finish();
}

std::string solve_csv(const std::vector<CaseSolution>& solved) {
  std::vector<Row> rows;
  for (const CaseSolution& one : solved)
    for (std::size_t k = 0; k < one.network.elements.size(); ++k) {
      Row row{{"case", one.network.case_name}};
      for (Field& field : element_row(one, k)) row.push_back(std::move(field));
      rows.push_back(std::move(row));
    }
  return csv(rows,
             {"case", "id", "role", "from", "to", "current", "drop", "heat", "resistance", "temperature"});
}

}  // namespace ohmtrail::cli
