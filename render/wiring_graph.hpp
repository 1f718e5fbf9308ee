#pragma once
#include <set>
#include <utility>
#include <vector>

#include "render/wiring.hpp"
#include "units/index.hpp"

namespace ohmtrail::render {

/// A run or a device in line, between two points of the netlist.
struct Edge {
  int from, to;
  bool is_run;
  std::vector<int> elements;
};

/// Where an item touches a point.
struct Pin {
  int item, point;
  bool top, outlet;
};

/// Edges from one point to another over points that merely join two.
struct Chain {
  std::vector<int> edges;
  int from, to;
};

/// The network as edges between points and items with pins, before it is laid out as bars and lanes.
class WiringGraph {
 public:
  explicit WiringGraph(const network::Network& network);

  [[nodiscard]] const network::Network& network() const { return network_; }
  [[nodiscard]] const network::Element& element(int i) const { return network_.elements[at(i)]; }
  [[nodiscard]] int far_end(int edge, int point) const;
  /// An edge as drawn by someone who comes from `start`.
  [[nodiscard]] Piece piece(int edge, int start) const;
  /// The plain chain that leaves `point` by `edge`, up to the next point that is not a mere joint of two.
  [[nodiscard]] Chain chain(int point, int edge) const;
  [[nodiscard]] std::vector<Piece> pieces(const Chain& chain) const;
  [[nodiscard]] bool passes(int point) const;
  [[nodiscard]] bool is_battery_pin(int pin) const;
  /// Takes edges out: they are drawn as part of an item.
  void set_aside(const std::vector<int>& edges);
  /// After pins or items have changed.
  void index_pins();

  std::vector<Edge> edges;
  std::vector<Pin> pins;
  std::vector<Item> items;
  std::vector<std::vector<int>> at_point, pins_at;  ///< edges and pins by point
  std::vector<bool> used;                           ///< per edge: drawn already
  std::set<int> forced;                             ///< points that do not pass although they could

 private:
  void collect_edges();
  void collect_items();

  const network::Network& network_;
};

}  // namespace ohmtrail::render
