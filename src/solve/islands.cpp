#include "solve/islands.hpp"

#include <optional>

#include "solve/modes.hpp"
#include "units/index.hpp"

namespace ohmtrail::solve {

namespace {

void number_islands(Islands& islands, Partition& sets, int points) {
  std::vector<int> of_root(static_cast<std::size_t>(points), -1);
  islands.of_point.resize(static_cast<std::size_t>(points));
  for (int p = 0; p < points; ++p) {
    int& number = of_root[static_cast<std::size_t>(sets.find(p))];
    if (number < 0) number = islands.count++;
    islands.of_point[static_cast<std::size_t>(p)] = number;
  }
}

void choose_references(Islands& islands, const Circuit& circuit) {
  islands.reference.assign(static_cast<std::size_t>(islands.count), -1);
  const auto island_of = [&](int point) {
    return static_cast<std::size_t>(islands.of_point[static_cast<std::size_t>(point)]);
  };
  for (const Branch& branch : circuit.branches) {
    if (branch.law != Law::source && branch.law != Law::regulator) continue;
    int& reference = islands.reference[island_of(branch.to)];
    if (reference < 0) reference = branch.to;
  }
  if (circuit.reference < 0) return;
  int& reference = islands.reference[island_of(circuit.reference)];
  if (reference >= 0) reference = circuit.reference;
}

}  // namespace

Partition fed_parts(const Circuit& circuit) {
  Partition parts(circuit.points);
  for (const Branch& branch : circuit.branches) {
    if (branch.law != Law::open && !is_takes(branch.law)) parts.join(branch.from, branch.to);
  }
  return parts;
}

std::vector<char> find_unfed(const Circuit& circuit, Partition& fed) {
  std::vector<char> unfed(circuit.branches.size(), 0);
  for (std::size_t b = 0; b < unfed.size(); ++b) {
    const Branch& branch = circuit.branches[b];
    unfed[b] = is_takes(branch.law) && fed.find(branch.from) != fed.find(branch.to);
  }
  return unfed;
}

Islands find_islands(const Circuit& circuit) {
  Partition fed = fed_parts(circuit);
  return find_islands(circuit, fed, find_unfed(circuit, fed));
}

Islands find_islands(const Circuit& circuit, Partition& fed, const std::vector<char>& unfed) {
  std::optional<Partition> joined;  // by unfed loads too, where there are any
  for (std::size_t b = 0; b < unfed.size(); ++b) {
    if (!unfed[b]) continue;
    if (!joined) joined = fed;
    joined->join(circuit.branches[b].from, circuit.branches[b].to);
  }
  Islands islands;
  number_islands(islands, joined ? *joined : fed, circuit.points);
  choose_references(islands, circuit);
  return islands;
}

}  // namespace ohmtrail::solve
