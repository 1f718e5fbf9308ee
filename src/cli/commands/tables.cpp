#include <fmt/format.h>

#include "cli/commands/commands.hpp"
#include "cli/json/tables.hpp"
#include "cli/nearest.hpp"
#include "cli/text/tables.hpp"
#include "ohmtrail/trade/table.hpp"

namespace ohmtrail::cli {
namespace {

constexpr Option name{.name = "NAME", .sentence = "the table to print (default: a list of them)"};

Exit unknown(const std::string& asked, const Doors& doors) {
  std::vector<std::string> names;
  for (const trade::Table& table : trade::all_tables()) names.push_back(table.name);
  const std::string near = nearest(asked, names);
  doors.complain(fmt::format("ohmtrail tables: no table is named \"{}\"; {}", asked,
                             near.empty() ? "ohmtrail tables lists them" : "did you mean " + near + "?"));
  return Exit::mistake;
}

Exit run(const Call& call, const Doors& doors) {
  const bool one = call.has(name);
  const trade::Table* table = one ? trade::find_table(call.text(name)) : nullptr;
  if (one && table == nullptr) return unknown(call.text(name), doors);

  Sheet sheet(doors.terminal.colour());
  if (call.has(options::json))
    doors.terminal.out(one ? table_json(*table) : tables_json(trade::all_tables()));
  else if (call.has(options::csv))
    doors.terminal.out(one ? table_csv(*table) : tables_csv(trade::all_tables()));
  else if (one)
    show_table(sheet, *table);
  else
    show_tables(sheet, trade::all_tables());
  doors.terminal.out(sheet.text());
  return Exit::done;
}

}  // namespace

const Command commands::tables{
    .name = "tables",
    .summary = "the built-in tables with their sources",
    .description =
        "Wire resistances, ampacities, sound contacts, battery voltages: every number that a result may "
        "rest on, with where it was published. Without NAME it lists the tables.",
    .options = {name, options::json, options::csv},
    .examples = {"ohmtrail tables", "ohmtrail tables awg --csv"},
    .run = run};

}  // namespace ohmtrail::cli
