#include "ohmtrail/netlist/schema.hpp"

#include "cli/commands/commands.hpp"

namespace ohmtrail::cli {
namespace {

Exit run(const Call&, const Doors& doors) {
  std::string schema = netlist::json_schema();
  if (!schema.ends_with('\n')) schema += '\n';
  doors.terminal.out(schema);
  return Exit::done;
}

}  // namespace

const Command commands::schema{
    .name = "schema",
    .summary = "JSON Schema of the netlist, for editors",
    .description =
        "An editor that is given this schema (JSON Schema 2020-12) offers the keys of a netlist and marks "
        "mistakes while it is written. What keys say of each other only check tells.",
    .options = {},
    .examples = {"ohmtrail schema"},
    .run = run};

}  // namespace ohmtrail::cli
