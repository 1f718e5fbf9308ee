#include "cli/json/size.hpp"

#include <algorithm>

#include "cli/json/check.hpp"
#include "cli/json/common.hpp"
#include "cli/json/csv.hpp"
#include "cli/json/solve.hpp"
#include "ohmtrail/plan/protection.hpp"

namespace ohmtrail::cli {
namespace {

Row run_row(const plan::RunChoice& run) {
  return {{"id", run.id},
          {"gauge", run.gauge},
          {"was", run.was},
          {"area", number(run.area)},
          {"mass", number(run.mass)},
          {"cost", number(run.cost)},
          {"fuse", number(run.fuse)},
          {"ampacity", number(run.ampacity)},
          {"current", number(run.current)},
          {"steady", number(run.steady)},
          {"fuse_id", text_or_null(run.fuse_id)},
          {"chosen", run.chosen},
          {"renewed", run.renewed},
          {"reason", reason_word(run.reason)}};
}

Row fuse_row(const plan::FuseChoice& fuse) {
  return {{"id", fuse.id},
          {"was", number(fuse.was)},
          {"rating", number(fuse.rating)},
          {"inrush", number(fuse.inrush)},
          {"opens_after", number(fuse.opens_after)}};
}

Row shortfall_row(const plan::Shortfall& shortfall) {
  return {{"id", shortfall.subject},
          {"case", text_or_null(shortfall.in_case)},
          {"text", shortfall.text},
          {"remedy", shortfall.remedy}};
}

Value volts_before(const plan::SizeResult& sized, const std::string& in_case, const std::string& id) {
  for (const plan::LoadChange& load : sized.loads)
    if (load.in_case == in_case && load.id == id) return number(load.volts_before);
  return {};
}

/// The loads as `solve` lists them, with their case and what they got before.
std::vector<Row> loads_of(const plan::SizeResult& sized) {
  std::vector<Row> rows;
  for (const solve::CaseSolution& one : sized.solved)
    for (Row& load : load_rows(one)) {
      Row row{{"case", one.network.case_name}};
      row.insert(row.end(), load.begin(), load.end());
      row.push_back({"volts_before",
                     volts_before(sized, one.network.case_name, std::get<std::string>(load.front().value))});
      rows.push_back(std::move(row));
    }
  return rows;
}

template <class Item>
std::vector<Row> rows_of(const std::vector<Item>& items, Row (*row)(const Item&)) {
  std::vector<Row> rows;
  for (const Item& item : items) rows.push_back(row(item));
  return rows;
}

}  // namespace

std::string reason_word(plan::Reason reason) {
  using enum plan::Reason;
  switch (reason) {
    case kept:
      return "kept";
    case cheapest:
      return "cheapest";
    case drop:
      return "drop";
    case ampacity:
      return "ampacity";
    case fuse:
      return "fuse";
  }
  return "";
}

std::string size_json(const netlist::System& system, const plan::SizeResult& sized,
                      const std::vector<diagnose::Finding>& raised) {
  JsonWriter json;
  open_result(json, "size", system, sized.assumptions);
  json.rows("runs", rows_of(sized.runs, run_row));
  json.rows("loads", loads_of(sized));
  json.field("cost", sized.found ? number(sized.cost) : Value());
  json.field("bound", number(sized.bound));
  json.field("proved", sized.proved);
  json.field("cost_is", std::string(sized.priced ? "price" : "mass"));
  json.field("method", sized.method);
  json.rows("fuses", rows_of(sized.fuses, fuse_row));
  json.rows("shortfalls", rows_of(sized.shortfalls, shortfall_row));
  json.rows("findings", finding_rows(raised));
  json.field("advice", std::string(plan::advice_line));
  json.close();
  return json.finish();
}

std::string size_csv(const plan::SizeResult& sized) {
  return csv(rows_of(sized.runs, run_row), {"id", "gauge", "was", "area", "mass", "cost", "fuse", "ampacity",
                                            "current", "steady", "fuse_id", "chosen", "renewed", "reason"});
}

}  // namespace ohmtrail::cli
