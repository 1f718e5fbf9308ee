#include "cli/json/tables.hpp"

#include "cli/json/csv.hpp"
#include "cli/json/writer.hpp"

namespace ohmtrail::cli {
namespace {

/// "resistance (ohm/km)": a heading that says its unit.
std::string heading(const trade::Column& column) {
  return column.unit.empty() ? column.name : column.name + " (" + column.unit + ")";
}

Value value_of(const trade::Cell& cell) {
  if (const auto* value = std::get_if<double>(&cell)) return number(*value);
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  return {};
}

std::vector<Row> rows_of(const trade::Table& table, bool units_in_names) {
  std::vector<Row> rows;
  for (const auto& cells : table.rows) {
    Row row;
    for (std::size_t c = 0; c < table.columns.size(); ++c)
      row.push_back({units_in_names ? heading(table.columns[c]) : table.columns[c].name, value_of(cells[c])});
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<Row> listed(const std::vector<trade::Table>& tables) {
  std::vector<Row> rows;
  for (const trade::Table& table : tables)
    rows.push_back({{"name", table.name},
                    {"title", table.title},
                    {"rows", static_cast<std::int64_t>(table.rows.size())},
                    {"source", table.source}});
  return rows;
}

void open_tables(JsonWriter& json) {
  json.open_object();
  json.field("ohmtrail", std::int64_t{1});
  json.field("result", std::string("tables"));
}

}  // namespace

std::string table_json(const trade::Table& table) {
  JsonWriter json;
  open_tables(json);
  json.field("name", table.name);
  json.field("title", table.title);
  json.field("source", table.source);
  json.field("doubts", table.doubts);
  std::vector<Row> columns;
  for (const trade::Column& column : table.columns)
    columns.push_back({{"name", column.name}, {"unit", text_or_null(column.unit)}});
  json.rows("columns", columns);
  json.rows("rows", rows_of(table, false));
  json.close();
  return json.finish();
}

std::string table_csv(const trade::Table& table) {
  std::vector<std::string> names;
  for (const trade::Column& column : table.columns) names.push_back(heading(column));
  return csv(rows_of(table, true), names);
}

std::string tables_json(const std::vector<trade::Table>& tables) {
  JsonWriter json;
  open_tables(json);
  json.rows("tables", listed(tables));
  json.close();
  return json.finish();
}

std::string tables_csv(const std::vector<trade::Table>& tables) {
  return csv(listed(tables), {"name", "title", "rows", "source"});
}

}  // namespace ohmtrail::cli
