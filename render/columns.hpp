#pragma once
#include <vector>

#include "render/arrange.hpp"

namespace ohmtrail::render {

/// The order of things from left to right, and the x that follows from it. Supplies and chargers stand left
/// in the order `left`; converters and loads right in the order `right`; free bars between, as far left as
/// their lanes let them.
class Columns {
 public:
  Columns(Wiring& wiring, const Sizes& sizes);

  /// Inner to outer is right to left for `left`, left to right for `right`.
  std::vector<int> left, right;

  /// Puts `right` into the nearest order in which nothing stands before what feeds it.
  void respect_feeds();
  /// Turns every lane from left to right and finds x. `bar_shift`: how far a bar must move right of where its
  /// lanes would let it stand.
  void solve(const std::vector<double>& bar_shift);

  std::vector<double> bar_x, item_x;
  [[nodiscard]] Span range(int lane) const;

 private:
  struct Arrow {
    int to;
    double length;
  };
  [[nodiscard]] int node(int bar) const;
  [[nodiscard]] double offset(int bar) const;
  [[nodiscard]] int rank(int bar) const;
  [[nodiscard]] bool leads_to(int from, int to) const;
  void orient(int lane, const std::vector<int>& place);
  void orient_feeds();
  void order_by_axis(int lane, const std::vector<int>& position);
  void add_axis_arrows();
  void keep_banks_together();
  void relax();
  void draw_in_sources_of_nothing();

  Wiring& wiring_;
  const Sizes& sizes_;
  std::vector<std::vector<Arrow>> feeds_;   ///< between free bars and converters, without cycles
  std::vector<std::vector<Arrow>> arrows_;  ///< x[to] ≥ x[from] + length
  std::vector<double> x_, shift_;
};

}  // namespace ohmtrail::render
