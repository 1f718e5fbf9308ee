// Prints the three worst places of a system: the library as another program uses it.
#include <cstddef>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <vector>

#include "ohmtrail/diagnose/rank.hpp"
#include "ohmtrail/netlist/read.hpp"
#include "ohmtrail/network/network.hpp"
#include "ohmtrail/solve/case_solution.hpp"

int main(int count, char** words) {
  if (count != 2) return std::fputs("usage: worst_places NETLIST\n", stderr), 2;
  std::ifstream file(words[1], std::ios::binary);
  const std::string text{std::istreambuf_iterator<char>(file), {}};

  const auto read = ohmtrail::netlist::read(text);
  if (!read) {
    for (const auto& problem : read.error()) std::cerr << format(problem, words[1]) << '\n';
    return 2;
  }

  std::vector<ohmtrail::solve::CaseSolution> solved;
  for (const auto& in_case : read->system.cases) {
    auto solution = ohmtrail::solve::solve_case(ohmtrail::network::build(read->system, in_case));
    if (!solution) return std::fputs("a case has no certified solution\n", stderr), 3;
    solved.push_back(std::move(*solution));
  }

  const auto hot_spots = ohmtrail::diagnose::rank(read->system, solved);
  if (hot_spots.empty()) return std::puts("Every connection is sound."), 0;
  for (std::size_t k = 0; k < hot_spots.size() && k < 3; ++k) std::printf("%s\n", hot_spots[k].id.c_str());
  return 0;
}
