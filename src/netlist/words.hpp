#pragma once
#include <span>
#include <string_view>
#include <utility>

#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::netlist {

/// The words of a fixed choice as a file spells them, in the order of the format's description.
template <class E>
using WordList = std::span<const std::pair<std::string_view, E>>;

template <class E>
[[nodiscard]] WordList<E> words();

template <>
WordList<SystemKind> words();
template <>
WordList<Terminations> words();
template <>
WordList<trade::Chemistry> words();
template <>
WordList<ElectrolyteLevel> words();
template <>
WordList<trade::ConductorKind> words();
template <>
WordList<trade::TerminationKind> words();
template <>
WordList<trade::JointKind> words();
template <>
WordList<trade::SwitchKind> words();
template <>
WordList<trade::FuseForm> words();
template <>
WordList<trade::Observation> words();
template <>
WordList<LoadClass> words();
template <>
WordList<Reach> words();

/// How a file spells a value.
template <class E>
[[nodiscard]] std::string_view word(E value) {
  for (const auto& [text, meaning] : words<E>()) {
    if (meaning == value) return text;
  }
  return {};
}

}  // namespace ohmtrail::netlist
