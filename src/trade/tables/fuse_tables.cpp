#include <span>
#include <string>

#include "trade/tables/cells.hpp"
#include "trade/tables/fuses.hpp"
#include "trade/tables/registry.hpp"

namespace ohmtrail::trade::tables {
namespace {

void add_ladder(Table& table, std::string_view form, std::span<const double> ratings,
                std::string_view source) {
  for (const double rating : ratings) table.rows.push_back({words(form), rating, words(source)});
}

Table ladder_table() {
  Table table{"fuse-ladder",
              "Fuse ratings by form",
              {{"form", ""}, {"rating", "A"}, {"source", ""}},
              {},
              "each row its own",
              {"the ends of the bolt-down range are in doubt"}};
  add_ladder(table, "blade", blade_ladder, blade_ladder_source);
  add_ladder(table, "bolt-down", bolt_down_ladder, bolt_down_ladder_source);
  add_ladder(table, "cartridge", cartridge_ladder, cartridge_ladder_source);
  add_ladder(table, "in-line", in_line_ladder, in_line_ladder_source);
  return table;
}

Table time_table() {
  Table table{"fuse-time",
              "Opening time of blade fuses",
              {{"share of rating", "%"}, {"opens no sooner", "s"}, {"opens no later", "s"}},
              {},
              std::string(blade_gates_source),
              {"low confidence"}};
  for (const GateRow& row : blade_gates)
    table.rows.push_back({row.percent, row.min_seconds, number_or_none(row.max_seconds)});
  return table;
}

Table limits_table() {
  Table table{"fuse-limits",
              "What a fuse of each form breaks, where its body does not say",
              {{"form", ""}, {"breaks", "A"}, {"made for", "V"}, {"source", ""}},
              {},
              "each row its own",
              {"the body of the fuse counts, not this table"}};
  for (const FormLimits& row : form_limits)
    table.rows.push_back({words(row.form), row.breaks_amps, row.volts, words(row.source)});
  return table;
}

}  // namespace

std::vector<Table> fuse_tables() {
  return {ladder_table(), time_table(), limits_table()};
}

}  // namespace ohmtrail::trade::tables
