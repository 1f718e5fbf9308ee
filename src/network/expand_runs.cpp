#include "network/builder.hpp"
#include "ohmtrail/trade/sound.hpp"

/// Run M from A to B:  A —[M/from]— M@from —[M/wire]— M@to —[M/to]— B, and the like for its return. An end
/// that is opened into contact and crimp has two elements:  A —[M/from]— M@from-metal —[M/from-crimp]—
/// M@from.
namespace ohmtrail::network {

namespace {

void add_words(std::set<std::string>& names, const netlist::Reading& reading) {
  if (const auto* volts = std::get_if<netlist::VoltsReading>(&reading.what)) {
    names.insert({volts->red, volts->black});
  } else if (const auto* amps = std::get_if<netlist::AmpsReading>(&reading.what)) {
    names.insert(amps->in);
  } else if (const auto* ohms = std::get_if<netlist::OhmsReading>(&reading.what)) {
    names.insert(ohms->across);
  } else if (const auto* warm = std::get_if<netlist::TemperatureReading>(&reading.what)) {
    names.insert(warm->at);
  }
}

}  // namespace

std::set<std::string> names_in_use(const netlist::System& system) {
  std::set<std::string> names(system.stubs.begin(), system.stubs.end());
  names.insert(system.reference);
  for (const netlist::Reading& reading : system.readings) add_words(names, reading);
  for (const auto& [name, place] : system.points) names.insert(name);
  for (const netlist::Case& one : system.cases) names.insert(one.open.begin(), one.open.end());
  return names;
}

bool Builder::opened(const std::string& run, const std::string& end) const {
  return system_.info.terminations == netlist::Terminations::contact_and_crimp ||
         named_.contains(run + "@" + end + "-metal") || named_.contains(run + "/" + end + "-crimp");
}

void Builder::add_end(const netlist::Run& run, std::size_t index, const End& end) {
  const trade::Sound sound = trade::sound_termination(end.as_given.kind, run.gauge);
  const TableValue table{sound.value, sound.basis};
  const std::string barrel = run.id + "@" + end.name;
  const std::string metal = barrel + "-metal";
  const bool two = end.as_given.crimp.has_value() || opened(run.id, end.name);
  const netlist::Halves halves = netlist::halves(end.as_given);
  const TableValue half{sound.value * 0.5, sound.basis};
  const auto add_part = [&](const std::string& id, const std::string& a, const std::string& b, Part part) {
    Element& element = end.at_start ? add(id, Role::termination, a, b, {Section::runs, index, part})
                                    : add(id, Role::termination, b, a, {Section::runs, index, part});
    const netlist::Resistances& given = !two                ? end.as_given.resistances
                                        : part == end.crimp ? halves.crimp
                                                            : halves.contact;
    fill_resistances(element, given, two ? half : table, 1, network_.assumptions);
  };
  const std::string contact_id = run.id + "/" + end.name;
  if (!two) {
    add_part(contact_id, end.outer, barrel, end.contact);
  } else if (end.at_start) {
    add_part(contact_id, end.outer, metal, end.contact);
    add_part(contact_id + "-crimp", metal, barrel, end.crimp);
  } else {
    add_part(contact_id + "-crimp", metal, barrel, end.crimp);
    add_part(contact_id, end.outer, metal, end.contact);
  }
}

void Builder::add_conductor(const netlist::Run& run, std::size_t index, const Conductor& conductor) {
  const std::string start = conductor.prefix + "from";
  const std::string finish = conductor.prefix + "to";
  add_end(run, index,
          {start, conductor.from, conductor.end_from, conductor.part_from, conductor.part_from_crimp, true});
  Element& wire = add(run.id + "/" + conductor.prefix + "wire", Role::wire, run.id + "@" + start,
                      run.id + "@" + finish, {Section::runs, index, conductor.part_wire});
  wire.active = wire.active && !is_open(run.id);
  fill_wire(wire, run, conductor.wire, around_, network_.assumptions);
  add_end(run, index,
          {finish, conductor.to, conductor.end_to, conductor.part_to, conductor.part_to_crimp, false});
}

void Builder::add_runs() {
  for (std::size_t k = 0; k < system_.runs.size(); ++k) {
    const netlist::Run& run = system_.runs[k];
    add_conductor(run, k,
                  {"", run.from, run.to, run.end_from, run.end_to, run.wire, Part::from, Part::from_crimp,
                   Part::wire, Part::to_crimp, Part::to});
    if (!run.return_conductor) continue;
    const netlist::ReturnConductor& back = *run.return_conductor;
    add_conductor(run, k,
                  {"return-", back.from, back.to, back.end_from, back.end_to, back.wire, Part::return_from,
                   Part::return_from_crimp, Part::return_wire, Part::return_to_crimp, Part::return_to});
  }
}

}  // namespace ohmtrail::network
