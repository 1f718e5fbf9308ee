#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "ohmtrail/trade/gauge.hpp"
#include "ohmtrail/units/print.hpp"
#include "plan/protection_rules.hpp"
#include "units/index.hpp"

/// Wing nuts and crowded studs.
namespace ohmtrail::plan::protection {
namespace {

using diagnose::Finding;
using diagnose::Severity;

// From memory: ABYC E-10: no wing nuts on battery cables of 6 AWG and thicker.
constexpr int thickest_under_wing_nut = 8;
constexpr std::size_t most_lugs = 4;

bool wing_nut(const netlist::Seen& seen) {
  return std::find(seen.begin(), seen.end(), trade::Observation::wing_nut) != seen.end();
}

Finding wing_nut_at(const std::string& subject, bool heavy) {
  Finding finding;
  finding.rule = "wing-nut";
  finding.source = "from memory: ABYC E-10: no wing nuts on battery cables of 6 AWG and thicker";
  finding.severity = heavy ? Severity::soon : Severity::improvement;
  finding.subject = subject;
  finding.text = heavy ? "is held by a wing nut, which cannot be tightened enough and works loose"
                       : "is held by a wing nut, which works loose";
  finding.remedy =
      "Fit a hexagon nut with a lock washer and tighten it to the maker's torque. Disconnect the battery "
      "first.";
  return finding;
}

bool is_heavy(const trade::Gauge& gauge) {
  return gauge.area > trade::awg_area(thickest_under_wing_nut);
}

template <class Items>
void wing_nuts_of(const Items& items, Findings& findings) {
  for (const auto& item : items)
    if (wing_nut(item.resistances.seen)) findings.push_back(wing_nut_at(item.id, true));
}

/// A lug's elements at a point: the outer half of every termination.
bool is_lug_at(const network::Network& network, const network::Element& element, int point) {
  if (element.role != network::Role::termination) return false;
  return network.points[at(point)].find('@') == std::string::npos;
}

bool on_a_bar(const netlist::System& system, const network::Element& element) {
  if (element.origin.section != network::Section::joints) return false;
  const auto kind = system.joints[element.origin.index].kind;
  return kind == trade::JointKind::bus_bar || kind == trade::JointKind::terminal_strip ||
         kind == trade::JointKind::chassis;
}

}  // namespace

void wing_nuts(const Context& context, Findings& findings) {
  for (const auto& battery : context.system.batteries)
    if (wing_nut(battery.seen)) findings.push_back(wing_nut_at(battery.id, true));
  for (const auto& run : context.system.runs) {
    const auto end = [&](const netlist::RunEnd& one, const char* name) {
      if (wing_nut(one.resistances.seen)) findings.push_back(wing_nut_at(run.id + name, is_heavy(run.gauge)));
    };
    if (wing_nut(run.wire.seen)) findings.push_back(wing_nut_at(run.id, is_heavy(run.gauge)));
    end(run.end_from, "/from");
    end(run.end_to, "/to");
    if (!run.return_conductor) continue;
    if (wing_nut(run.return_conductor->wire.seen))
      findings.push_back(wing_nut_at(run.id, is_heavy(run.gauge)));
    end(run.return_conductor->end_from, "/return-from");
    end(run.return_conductor->end_to, "/return-to");
  }
  wing_nuts_of(context.system.joints, findings);
  wing_nuts_of(context.system.switches, findings);
  wing_nuts_of(context.system.fuses, findings);
}

void crowded_studs(const Context& context, Findings& findings) {
  const auto& network = context.network;
  std::vector<std::size_t> lugs(network.points.size(), 0);
  std::vector<bool> bar(network.points.size(), false);
  for (const auto& element : network.elements)
    for (const int point : {element.from, element.to}) {
      if (is_lug_at(network, element, point)) ++lugs[at(point)];
      if (on_a_bar(context.system, element)) bar[at(point)] = true;
    }
  for (std::size_t p = 0; p < lugs.size(); ++p) {
    if (lugs[p] <= most_lugs || bar[p]) continue;
    Finding finding;
    finding.rule = "crowded-stud";
    finding.source = "from memory: ABYC E-11: no more than four conductors on one terminal stud";
    finding.severity = Severity::improvement;
    finding.subject = network.points[p];
    finding.text = fmt::format("{} lugs meet here; one stud holds no more than {}", lugs[p], most_lugs);
    finding.remedy = "Move some to a bus bar. If it is one, with a stud for every lug, nothing is wrong.";
    findings.push_back(std::move(finding));
  }
}

}  // namespace ohmtrail::plan::protection
