#include "cli/json/common.hpp"

#include <set>
#include <tuple>

namespace ohmtrail::cli {

std::string role_word(network::Role role) {
  using enum network::Role;
  switch (role) {
    case battery:
      return "battery";
    case charger:
      return "charger";
    case wire:
      return "wire";
    case termination:
      return "termination";
    case joint:
      return "joint";
    case switchgear:
      return "switch";
    case fuse:
      return "fuse";
    case shunt:
      return "shunt";
    case isolator:
      return "isolator";
    case load:
      return "load";
  }
  return "";
}

std::vector<network::Assumption> assumptions_of(const std::vector<solve::CaseSolution>& solved) {
  std::vector<network::Assumption> all;
  std::set<std::tuple<std::string, std::string, std::optional<double>>> seen;
  for (const solve::CaseSolution& one : solved)
    for (const network::Assumption& assumption : one.network.assumptions)
      if (seen.emplace(assumption.id, assumption.text, assumption.value).second) all.push_back(assumption);
  return all;
}

void open_result(JsonWriter& json, std::string_view result, const netlist::System& system,
                 const std::vector<network::Assumption>& assumptions) {
  json.open_object();
  json.field("ohmtrail", std::int64_t{1});
  json.field("result", std::string(result));
  json.field("system", system.info.name);
  std::vector<Row> rows;
  for (const network::Assumption& assumption : assumptions)
    rows.push_back({{"id", assumption.id}, {"text", assumption.text}, {"value", number(assumption.value)}});
  json.rows("assumptions", rows);
}

}  // namespace ohmtrail::cli
