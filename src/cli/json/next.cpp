#include "cli/json/next.hpp"

#include "cli/json/common.hpp"
#include "cli/json/csv.hpp"

namespace ohmtrail::cli {
namespace {

using diagnose::NextOption;
using diagnose::NextResult;
using diagnose::Purpose;
using diagnose::Verdict;

std::string word(Purpose purpose) {
  if (purpose == Purpose::opening) return "opening";
  return purpose == Purpose::confirm ? "confirm" : "separate";
}

std::string word(Verdict verdict) {
  switch (verdict) {
    case Verdict::found:
      return "found";
    case Verdict::sound:
      return "sound";
    case Verdict::cannot_separate:
      return "cannot-separate";
    case Verdict::go_on:
      break;
  }
  return "go-on";
}

// The contract's keys first: red and black of a voltage, or `in` of a clamp.
Row option_row(const NextOption& option) {
  Row row{{"case", option.in_case}};
  if (option.in.empty()) {
    row.push_back({"red", option.red});
    row.push_back({"black", option.black});
  } else {
    row.push_back({"in", option.in});
  }
  const Row rest{{"gain_bits", number(option.gain_bits)},
                 {"expect_sound", number(option.expect_sound)},
                 {"expect_faulty", number(option.expect_faulty)},
                 {"purpose", word(option.purpose)},
                 {"where", option.where},
                 {"why", option.why},
                 {"if_bad", option.bad},
                 {"if_good", option.good},
                 {"tools", option.tools},
                 {"switching", option.switching},
                 {"leads", number(option.leads)},
                 {"score", number(option.score)}};
  row.insert(row.end(), rest.begin(), rest.end());
  return row;
}

Row repair_row(const diagnose::RepairChance& repair) {
  return {{"id", repair.id},
          {"probability", number(repair.probability)},
          {"read_across", repair.read_across},
          {"ids", repair.ids}};
}

}  // namespace

std::string next_json(const netlist::System& system, const NextResult& result,
                      const network::Network& network) {
  JsonWriter json;
  open_result(json, "next", system, network.assumptions);
  std::vector<Row> options, repairs;
  for (const NextOption& option : result.options) options.push_back(option_row(option));
  for (const diagnose::RepairChance& repair : result.repairs) repairs.push_back(repair_row(repair));
  json.rows("options", options);
  json.field("verdict", word(result.verdict));
  json.field("verdict_text", text_or_null(result.verdict_text));
  json.field("nothing_faulty", number(result.nothing_faulty));
  json.rows("repairs", repairs);
  json.field("coarse", result.coarse);
  json.close();
  return json.finish();
}

std::string next_csv(const NextResult& result) {
  std::vector<Row> rows;
  for (const NextOption& option : result.options) rows.push_back(option_row(option));
  return csv(rows, {"case", "red", "black", "in", "gain_bits", "expect_sound", "expect_faulty", "purpose",
                    "where", "why", "tools", "switching", "leads", "score"});
}

}  // namespace ohmtrail::cli
