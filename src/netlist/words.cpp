#include "netlist/words.hpp"

#include <array>

namespace ohmtrail::netlist {

namespace {

template <class E>
using Entry = std::pair<std::string_view, E>;

using trade::Chemistry;
using trade::ConductorKind;
using trade::FuseForm;
using trade::JointKind;
using trade::Observation;
using trade::SwitchKind;
using trade::TerminationKind;

constexpr std::array system_kinds = {
    Entry<SystemKind>{"vessel", SystemKind::vessel}, Entry<SystemKind>{"cart", SystemKind::cart},
    Entry<SystemKind>{"vehicle", SystemKind::vehicle}, Entry<SystemKind>{"shore", SystemKind::shore}};

constexpr std::array terminations = {
    Entry<Terminations>{"whole", Terminations::whole},
    Entry<Terminations>{"contact-and-crimp", Terminations::contact_and_crimp}};

constexpr std::array chemistries = {
    Entry<Chemistry>{"flooded", Chemistry::flooded}, Entry<Chemistry>{"agm", Chemistry::agm},
    Entry<Chemistry>{"gel", Chemistry::gel}, Entry<Chemistry>{"lfp", Chemistry::lfp}};

constexpr std::array levels = {Entry<ElectrolyteLevel>{"above", ElectrolyteLevel::above},
                               Entry<ElectrolyteLevel>{"at", ElectrolyteLevel::at},
                               Entry<ElectrolyteLevel>{"below", ElectrolyteLevel::below},
                               Entry<ElectrolyteLevel>{"dry", ElectrolyteLevel::dry}};

constexpr std::array conductors = {
    Entry<ConductorKind>{"bare-copper", ConductorKind::bare_copper},
    Entry<ConductorKind>{"tinned-copper", ConductorKind::tinned_copper},
    Entry<ConductorKind>{"aluminium", ConductorKind::aluminium},
    Entry<ConductorKind>{"copper-clad-aluminium", ConductorKind::copper_clad_aluminium}};

constexpr std::array termination_kinds = {Entry<TerminationKind>{"crimped", TerminationKind::crimped},
                                          Entry<TerminationKind>{"soldered", TerminationKind::soldered},
                                          Entry<TerminationKind>{"bolted-bare", TerminationKind::bolted_bare},
                                          Entry<TerminationKind>{"ferrule", TerminationKind::ferrule}};

constexpr std::array joint_kinds = {Entry<JointKind>{"post-clamp", JointKind::post_clamp},
                                    Entry<JointKind>{"stud", JointKind::stud},
                                    Entry<JointKind>{"splice", JointKind::splice},
                                    Entry<JointKind>{"plug", JointKind::plug},
                                    Entry<JointKind>{"terminal-strip", JointKind::terminal_strip},
                                    Entry<JointKind>{"fuse-clip", JointKind::fuse_clip},
                                    Entry<JointKind>{"bus-bar", JointKind::bus_bar},
                                    Entry<JointKind>{"chassis", JointKind::chassis}};

constexpr std::array switch_kinds = {Entry<SwitchKind>{"battery-switch", SwitchKind::battery_switch},
                                     Entry<SwitchKind>{"breaker", SwitchKind::breaker},
                                     Entry<SwitchKind>{"contactor", SwitchKind::contactor},
                                     Entry<SwitchKind>{"toggle", SwitchKind::toggle}};

constexpr std::array fuse_forms = {
    Entry<FuseForm>{"blade", FuseForm::blade}, Entry<FuseForm>{"bolt-down", FuseForm::bolt_down},
    Entry<FuseForm>{"cartridge", FuseForm::cartridge}, Entry<FuseForm>{"in-line", FuseForm::in_line}};

constexpr std::array observations = {Entry<Observation>{"looks-sound", Observation::looks_sound},
                                     Entry<Observation>{"not-reached", Observation::not_reached},
                                     Entry<Observation>{"moves-reading", Observation::moves_reading},
                                     Entry<Observation>{"turns-by-hand", Observation::turns_by_hand},
                                     Entry<Observation>{"loose-nut", Observation::loose_nut},
                                     Entry<Observation>{"wing-nut", Observation::wing_nut},
                                     Entry<Observation>{"washer-under-lug", Observation::washer_under_lug},
                                     Entry<Observation>{"green-corrosion", Observation::green_corrosion},
                                     Entry<Observation>{"white-corrosion", Observation::white_corrosion},
                                     Entry<Observation>{"bulging-jacket", Observation::bulging_jacket},
                                     Entry<Observation>{"shrunken-jacket", Observation::shrunken_jacket},
                                     Entry<Observation>{"broken-strands", Observation::broken_strands},
                                     Entry<Observation>{"darkened", Observation::darkened},
                                     Entry<Observation>{"warm", Observation::warm},
                                     Entry<Observation>{"melted", Observation::melted},
                                     Entry<Observation>{"pitted", Observation::pitted},
                                     Entry<Observation>{"bulged-case", Observation::bulged_case},
                                     Entry<Observation>{"frozen", Observation::frozen}};

constexpr std::array load_classes = {Entry<LoadClass>{"critical", LoadClass::critical},
                                     Entry<LoadClass>{"other", LoadClass::other},
                                     Entry<LoadClass>{"test", LoadClass::test}};

constexpr std::array reaches = {Entry<Reach>{"easy", Reach::easy}, Entry<Reach>{"tools", Reach::tools},
                                Entry<Reach>{"no", Reach::no}};

}  // namespace

template <>
WordList<SystemKind> words() {
  return system_kinds;
}
template <>
WordList<Terminations> words() {
  return terminations;
}
template <>
WordList<Chemistry> words() {
  return chemistries;
}
template <>
WordList<ElectrolyteLevel> words() {
  return levels;
}
template <>
WordList<ConductorKind> words() {
  return conductors;
}
template <>
WordList<TerminationKind> words() {
  return termination_kinds;
}
template <>
WordList<JointKind> words() {
  return joint_kinds;
}
template <>
WordList<SwitchKind> words() {
  return switch_kinds;
}
template <>
WordList<FuseForm> words() {
  return fuse_forms;
}
template <>
WordList<Observation> words() {
  return observations;
}
template <>
WordList<LoadClass> words() {
  return load_classes;
}
template <>
WordList<Reach> words() {
  return reaches;
}

}  // namespace ohmtrail::netlist
