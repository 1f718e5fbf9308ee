#include <fmt/format.h>

#include "cli/commands/commands.hpp"
#include "cli/pipeline.hpp"
#include "cli/text/printable.hpp"

namespace ohmtrail::cli {
namespace {

constexpr Option volts{
    .name = "--volts", .value = "12|24|36|48", .sentence = "the system's nominal voltage (default: 12)"};

/// Every section that most boats need, each with a note on what to put there. `{0}` is the nominal voltage,
/// `{1}` the voltage at which an inverter cuts out.
constexpr std::string_view starter = R"({{
  "ohmtrail": 1,
  "note": "A start: put your own things in the place of these. Numbers may carry units: 6 ft, 35 mm2, 0.35 mohm. Any object may hold a note. ohmtrail check FILE tells every mistake at once.",
  "system": {{
    "name": "My system", "nominal": "{0} V", "kind": "vessel",
    "note": "kind: vessel, cart, vehicle or shore. ambient: the air around the wires.",
    "ambient": "25 C",
    "limits": {{"critical_drop": "3 %", "other_drop": "10 %"}},
    "job": {{"customer": "", "technician": "", "date": "", "complaint": "What the customer saw, in his own words."}}
  }},
  "batteries": [
    {{"id": "house bank", "plus": "battery +", "minus": "battery -", "nominal": "{0} V", "chemistry": "flooded", "capacity": "200 Ah",
     "note": "chemistry: flooded, agm, gel or lfp. Add cca, and under checks what you measured: rest volts, a load test, each cell's specific gravity."}}
  ],
  "runs": [
    {{"id": "battery plus", "from": "battery +", "to": "switch in", "gauge": "2/0 AWG", "length": "3 ft",
     "note": "A cable with a lug on each end. length is one way. Without return, the way back is a run of its own."}},
    {{"id": "battery minus", "from": "battery -", "to": "minus bus", "gauge": "2/0 AWG", "length": "4 ft"}},
    {{"id": "inverter cable", "from": "fuse out", "to": "inverter +", "gauge": "2/0 AWG", "length": "6 ft",
     "return": {{"from": "inverter -", "to": "minus bus"}},
     "note": "return: the second conductor beside it, of the same gauge and length."}},
    {{"id": "cabin lights", "from": "light fuse out", "to": "lights +", "gauge": "14 AWG", "length": "15 ft",
     "return": {{"from": "lights -", "to": "minus bus"}}}}
  ],
  "switches": [
    {{"id": "main switch", "from": "switch in", "to": "switch out", "kind": "battery-switch", "rating": "350 A",
     "note": "kind: battery-switch, breaker, contactor or toggle. resistance: as measured, with a four-wire meter."}}
  ],
  "fuses": [
    {{"id": "main fuse", "from": "switch out", "to": "fuse out", "rating": "225 A", "form": "bolt-down"}},
    {{"id": "light fuse", "from": "switch out", "to": "light fuse out", "rating": "10 A", "form": "blade"}}
  ],
  "loads": [
    {{"id": "inverter", "plus": "inverter +", "minus": "inverter -", "takes": "1000 W", "stops_below": "{1} V",
     "note": "takes: W (it draws more as volts fall), A (always the same) or ohm (like a lamp). stops_below: where it cuts out."}},
    {{"id": "lights", "plus": "lights +", "minus": "lights -", "takes": "30 W", "class": "critical",
     "note": "class: critical loads may lose 3 %, others 10 %."}}
  ],
  "cases": [
    {{"name": "evening", "on": ["inverter", "lights"], "note": "One for each way the system is used: what is on, what is open."}},
    {{"name": "lights only", "on": ["lights"]}}
  ],
  "points": {{
    "battery +": {{"place": "engine room, port side", "note": "reach: easy, tools or no"}}
  }},
  "meters": [
    {{"id": "hand meter", "volts": {{"percent": 0.5, "counts": 2, "digits_to": "1 mV"}},
     "note": "From the meter's own sheet: percent of reading + counts of the last digit."}}
  ],
  "readings": []
}}
)";

std::string netlist_for(double nominal) {
  return fmt::format(starter, nominal, 10.5 * nominal / 12);
}

/// Somebody's work is never written over.
bool is_there(const std::string& path, const Doors& doors) {
  if (!doors.files.read(path)) return false;
  doors.complain(fmt::format("{}: is there already; choose another name", path));
  return true;
}

Exit run(const Call& call, const Doors& doors) {
  const std::string text = netlist_for(call.number(volts).value_or(12));
  if (!call.has(options::output)) {
    doors.terminal.out(text);
    return Exit::done;
  }
  const std::string path = call.text(options::output);
  if (is_there(path, doors) || !write_output(path, text, doors)) return Exit::not_written;
  doors.terminal.out(printable_line(fmt::format("{}: a netlist to start from", path)));
  return Exit::done;
}

}  // namespace

const Command commands::starter{
    .name = "new",
    .summary = "a netlist to start from, with notes on what goes where",
    .description =
        "Writes a small complete system: battery, switch, fuses, cables, two loads, two cases. Its notes say "
        "what to put in their place. A file that is there already is left alone.",
    .options = {options::output, volts},
    .examples = {"ohmtrail new", "ohmtrail new --volts 24 -o launch.json"},
    .run = run};

}  // namespace ohmtrail::cli
