#pragma once
#include <string>
#include <vector>

#include "render/wiring.hpp"

/// A large system on several sheets: the trunk, and the circuits of each distribution bar in rows.
namespace ohmtrail::render {

/// A load with the way to it from one bar and the way back to another.
struct Circuit {
  Item load;
  std::vector<Piece> feed, back;  ///< in the order from plus to minus
  int minus = -1;                 ///< point where the way back ends
};

/// The circuits that one bar feeds, those to one minus bar together.
struct Board {
  std::string sign;  ///< "A", "B" … as the trunk refers to it
  int plus = -1;     ///< point
  std::vector<Circuit> circuits;
};

struct SplitWiring {
  Wiring trunk;  ///< without the circuits; their bars bear the boards' signs
  std::vector<Board> boards;
};

/// Takes out every circuit of one load between two bars that feed nothing else on its way, where a bar feeds
/// at least `least` of them.
[[nodiscard]] SplitWiring split_circuits(const Wiring& wiring, std::size_t least = 3);

}  // namespace ohmtrail::render
