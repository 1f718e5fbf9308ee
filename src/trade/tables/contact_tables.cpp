#include <string>

#include "ohmtrail/trade/gauge.hpp"
#include "ohmtrail/trade/sound.hpp"
#include "trade/tables/cells.hpp"
#include "trade/tables/contacts.hpp"
#include "trade/tables/registry.hpp"

namespace ohmtrail::trade::tables {
namespace {

double micro_ohm(const Sound& sound) {
  return figures(sound.value.si() * 1e6, 4);
}

Table terminations_table() {
  Table table{
      "terminations",
      "Sound crimped terminations: half the crimp limit and the bolted contact",
      {{"gauge", "AWG"},
       {"crimp limit: test current", "A"},
       {"crimp limit: greatest drop", "mV"},
       {"half the crimp limit", "uohm"},
       {"usual stud", "M"},
       {"bolted contact", "uohm"},
       {"sound termination", "uohm"},
       {"limit's source", ""}},
      {},
      std::string(crimp_source) + "; studs and bolted contacts: " + std::string(stud_source),
      {"other sizes by area between the rows", "bare strands under a bolt: no crimp, twice the contact"}};
  for (const CrimpRow& row : crimp_rows) {
    const Gauge gauge = awg(row.awg);
    table.rows.push_back({gauge_cell(row.awg), row.test_amps, row.millivolts,
                          micro_ohm(sound_crimp(TerminationKind::crimped, gauge)),
                          static_cast<double>(usual_stud(gauge)),
                          micro_ohm(sound_contact(TerminationKind::crimped, gauge)),
                          micro_ohm(sound_termination(TerminationKind::crimped, gauge)),
                          words(row.from_memory ? "from memory" : "read in a reprint")});
  }
  return table;
}

template <class Rows>
Table kinds_table(std::string name, std::string title, const Rows& rows) {
  Table table{std::move(name),
              std::move(title),
              {{"kind", ""},
               {"sound, without a rating", "mohm"},
               {"sound drop at rated current", "mV"},
               {"basis", ""}},
              {},
              "each row its own",
              {"where a rating and a drop are given, the resistance is drop over rating"}};
  for (const KindRow& row : rows)
    table.rows.push_back(
        {words(row.kind), row.milliohm, number_or_none(row.millivolts_at_rated), words(row.basis)});
  return table;
}

Table fuses_table() {
  Table table{"fuses",
              "Fuses, cold, without their holder",
              {{"form", ""},
               {"rating", "A"},
               {"cold resistance", "mohm"},
               {"drop at rated current, hot", "mV"},
               {"how known", ""}},
              {},
              "blade up to 40 A: " + std::string(blade_source) + "; all others: " + std::string(fuse_source),
              {"a fuse near its rating is 1.3 to 1.7 times its cold resistance"}};
  for (const BladeRow& row : blade_rows)
    table.rows.push_back(
        {words("blade"), row.rating, row.milliohm, row.millivolts_at_rated, words("from memory")});
  for (const double rating : {50.0, 60.0, 80.0, 100.0, 150.0, 200.0, 250.0, 300.0, 400.0, 500.0})
    table.rows.push_back({words("every other"), rating, figures(fuse_cold_millivolts / rating, 3),
                          fuse_hot_millivolts, words("estimate, ±40 %")});
  return table;
}

}  // namespace

std::vector<Table> contact_tables() {
  return {terminations_table(), kinds_table("joints", "Sound joints", joint_rows),
          kinds_table("switches", "Sound switches and breakers, closed", switch_rows), fuses_table()};
}

}  // namespace ohmtrail::trade::tables
