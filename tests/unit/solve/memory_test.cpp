#include "bench/large_circuit.hpp"
#include "support/allocations.hpp"
#include "unit/solve/circuits.hpp"

/// What a solve asks of the heap, counted, not timed: a few arrays, whatever the circuit's size.
namespace ohmtrail::solve {
namespace {

test::Allocations solving(const bench::LargeCircuit& wanted) {
  Circuit circuit = bench::large_circuit(wanted);
  return test::allocations_of([&] { EXPECT_TRUE(Solver(std::move(circuit)).solve()); });
}

TEST(Memory, ASolveAsksForArraysOnly) {
  const test::Allocations small = solving({2000}), large = solving({20000});
  EXPECT_GT(small.calls, 0U);
  EXPECT_LE(large.calls, small.calls + 30);
}

TEST(Memory, IsInProportionToTheCircuit) {
  constexpr double bytes_an_element = 500;
  for (const bool warm : {false, true}) {
    bench::LargeCircuit wanted{20000};
    wanted.wires_warm = warm;
    EXPECT_LE(static_cast<double>(solving(wanted).bytes), 20000 * bytes_an_element) << warm;
  }
}

TEST(Memory, AllWhatIfsOfARadialSystemAskForArraysOnly) {
  const auto asking = [](int elements) {
    const Circuit circuit = bench::large_circuit({elements, 0});
    std::vector<int> loads;
    std::vector<Replacement> cures;
    for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
      if (circuit.branches[b].nominal > 0) loads.push_back(static_cast<int>(b));
      if (circuit.branches[b].law == Law::resistor)
        cures.push_back({static_cast<int>(b), circuit.branches[b]});
    }
    Solver solver(circuit);
    EXPECT_TRUE(solver.solve());
    return test::allocations_of([&] { EXPECT_FALSE(solver.estimate_best_gains(loads, cures).empty()); });
  };
  const test::Allocations small = asking(2000), large = asking(20000);
  EXPECT_LE(large.calls, small.calls + 20);
  EXPECT_LE(static_cast<double>(large.bytes), 11.0 * static_cast<double>(small.bytes));
}

}  // namespace
}  // namespace ohmtrail::solve
