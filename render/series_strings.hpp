#pragma once
#include "render/wiring_graph.hpp"

namespace ohmtrail::render {

/// Stacks batteries in series into one item each: the pins between them and the links go into it.
void stack_series_strings(WiringGraph& graph);

/// Finds the chains between the middles of strings and takes them out, so that the strings stack.
[[nodiscard]] std::vector<Chain> set_ties_aside(WiringGraph& graph);

/// The ties as they meet the stacked strings; false where one does not join like places of two strings.
[[nodiscard]] bool attach_ties(const WiringGraph& graph, const std::vector<Chain>& chains,
                               std::vector<Tie>& ties);

}  // namespace ohmtrail::render
