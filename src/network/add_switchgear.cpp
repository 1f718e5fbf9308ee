#include "network/builder.hpp"
#include "ohmtrail/trade/sound.hpp"

/// Joints, switches and fuses: one element each, sound by the tables of the trade.
namespace ohmtrail::network {

namespace {

TableValue table(const trade::Sound& sound) {
  return {sound.value, sound.basis};
}

}  // namespace

void Builder::add_joints() {
  for (std::size_t k = 0; k < system_.joints.size(); ++k) {
    const netlist::Joint& joint = system_.joints[k];
    Element& element = add(joint.id, Role::joint, joint.from, joint.to, {Section::joints, k});
    fill_resistances(element, joint.resistances, table(trade::sound_joint(joint.kind, joint.rating)), 1,
                     network_.assumptions);
  }
}

void Builder::add_switches() {
  for (std::size_t k = 0; k < system_.switches.size(); ++k) {
    const netlist::Switch& item = system_.switches[k];
    Element& element = add(item.id, Role::switchgear, item.from, item.to, {Section::switches, k});
    element.active = element.active && (item.closed || closed_.contains(item.id));
    fill_resistances(element, item.resistances, table(trade::sound_switch(item.kind, item.rating)), 1,
                     network_.assumptions);
  }
}

void Builder::add_fuses() {
  for (std::size_t k = 0; k < system_.fuses.size(); ++k) {
    const netlist::Fuse& fuse = system_.fuses[k];
    Element& element = add(fuse.id, Role::fuse, fuse.from, fuse.to, {Section::fuses, k});
    fill_resistances(element, fuse.resistances, table(trade::sound_fuse(fuse.form, fuse.rating)), 1,
                     network_.assumptions);
  }
}

}  // namespace ohmtrail::network
