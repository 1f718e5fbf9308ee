#include "render/boards.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "render/text.hpp"
#include "render/words.hpp"
#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

/// A circuit and what it takes with it.
struct Found {
  Circuit circuit;
  int plus_bar = -1;
  std::vector<int> lanes, bars;
  int item = -1;
};

class Splitter {
 public:
  Splitter(const Wiring& wiring, std::size_t least) : wiring_(wiring), least_(least) {}

  SplitWiring split() {
    for (int i = 0; i < static_cast<int>(wiring_.items.size()); ++i)
      if (auto found = circuit_of(i)) by_bar_[found->plus_bar].push_back(std::move(*found));
    SplitWiring result{wiring_, {}};
    for (auto& [bar, circuits] : by_bar_) {
      const std::size_t others = wiring_.bars[at(bar)].lanes.size() - circuits.size();
      if (circuits.size() >= least_ && others > 0) add_board(bar, circuits, result);
    }
    drop(result.trunk);
    return result;
  }

 private:
  /// The bar of an item's pin; −1: it has none of its own.
  [[nodiscard]] int pin_of(int item, bool top) const {
    for (int b = 0; b < static_cast<int>(wiring_.bars.size()); ++b) {
      const Bar& bar = wiring_.bars[at(b)];
      if (bar.item == item && bar.top == top) return b;
    }
    return -1;
  }

  [[nodiscard]] int other_end(int lane, int bar) const {
    const Lane& l = wiring_.lanes[at(lane)];
    return l.left == bar ? l.right : l.left;
  }

  /// The pieces as met by who leaves `bar`.
  [[nodiscard]] std::vector<Piece> from(int bar, int lane) const {
    const Lane& l = wiring_.lanes[at(lane)];
    std::vector<Piece> pieces = l.pieces;
    if (l.left != bar) turn(pieces);
    return pieces;
  }

  [[nodiscard]] std::optional<Found> circuit_of(int item) const {
    if (wiring_.items[at(item)].kind != ItemKind::load) return std::nullopt;
    const int top = pin_of(item, true), bottom = pin_of(item, false);
    if (top < 0 || bottom < 0) return std::nullopt;
    const Bar &plus_pin = wiring_.bars[at(top)], &minus_pin = wiring_.bars[at(bottom)];
    if (plus_pin.lanes.size() != 1 || minus_pin.lanes.size() != 1) return std::nullopt;
    const int feed = plus_pin.lanes[0], back = minus_pin.lanes[0];
    const int plus = other_end(feed, top), minus = other_end(back, bottom);
    if (wiring_.bars[at(plus)].item >= 0 || wiring_.bars[at(minus)].item >= 0) return std::nullopt;
    return Found{
        {wiring_.items[at(item)], from(plus, feed), from(bottom, back), wiring_.bars[at(minus)].point},
        plus,
        {feed, back},
        {top, bottom},
        item};
  }

  void add_board(int bar, std::vector<Found>& circuits, SplitWiring& result) {
    std::stable_sort(circuits.begin(), circuits.end(),
                     [](const Found& a, const Found& b) { return a.circuit.minus < b.circuit.minus; });
    Board board{sign_of(result.boards.size()), wiring_.bars[at(bar)].point, {}};
    for (Found& found : circuits) {
      board.circuits.push_back(std::move(found.circuit));
      lanes_.insert(found.lanes.begin(), found.lanes.end());
      bars_.insert(found.bars.begin(), found.bars.end());
      items_.insert(found.item);
    }
    result.trunk.bars[at(bar)].note = filled(text::on_sheet, board.sign);
    result.boards.push_back(std::move(board));
  }

  /// A … Z, AA …
  static std::string sign_of(std::size_t number) {
    std::string sign(1, static_cast<char>('A' + number % 26));
    return number < 26 ? sign : sign_of(number / 26 - 1) + sign;
  }

  /// Old to new places; −1: gone.
  static std::vector<int> renumbered(std::size_t size, const std::set<int>& gone) {
    std::vector<int> place(size, -1);
    int next = 0;
    for (std::size_t k = 0; k < size; ++k)
      if (!gone.contains(static_cast<int>(k))) place[k] = next++;
    return place;
  }

  template <class T>
  static void erase(std::vector<T>& things, const std::set<int>& gone) {
    int k = 0;
    std::erase_if(things, [&](const T&) { return gone.contains(k++); });
  }

  void drop(Wiring& trunk) const {
    const auto lane = renumbered(trunk.lanes.size(), lanes_), bar = renumbered(trunk.bars.size(), bars_),
               item = renumbered(trunk.items.size(), items_);
    erase(trunk.lanes, lanes_);
    erase(trunk.bars, bars_);
    erase(trunk.items, items_);
    for (Lane& l : trunk.lanes) l.left = bar[at(l.left)], l.right = bar[at(l.right)];
    for (Bar& b : trunk.bars) {
      if (b.item >= 0) b.item = item[at(b.item)];
      std::erase_if(b.lanes, [&](int l) { return lane[at(l)] < 0; });
      for (int& l : b.lanes) l = lane[at(l)];
    }
    for (Tie& tie : trunk.ties) tie.left = item[at(tie.left)], tie.right = item[at(tie.right)];
    for (auto& bank : trunk.banks)
      for (int& member : bank) member = item[at(member)];
  }

  const Wiring& wiring_;
  std::size_t least_;
  std::map<int, std::vector<Found>> by_bar_;
  std::set<int> lanes_, bars_, items_;
};

}  // namespace

SplitWiring split_circuits(const Wiring& wiring, std::size_t least) {
  return Splitter(wiring, least).split();
}

}  // namespace ohmtrail::render
