#pragma once
#include <string>
#include <vector>

#include "ohmtrail/network/network.hpp"

/// A network as a draughtsman sees it: upright bars (posts, studs, bus bars), level lanes between two bars
/// (runs and the devices in line with them), and items (batteries, chargers, converters, loads) that hang
/// between the positive bars above and the negative bars below.
namespace ohmtrail::render {

/// One run (its ends and its wire) or one device in line. `elements` in the order from left to right.
struct Piece {
  bool is_run = false;
  std::vector<int> elements;
  bool reversed = false;  ///< left is its `to`
};

/// As seen from the other end.
void turn(std::vector<Piece>& pieces);

/// A chain of pieces between two bars, left to right once the wiring is oriented. No pieces: bolted directly.
struct Lane {
  int left = -1, right = -1;  ///< bars
  std::vector<Piece> pieces;
};

struct Bar {
  int point = -1;       ///< of the network
  int item = -1;        ///< the item whose pin it is; −1: stands free
  bool top = true;      ///< the pin is at the item's top
  bool outlet = false;  ///< the pin is on the right side of a converter
  bool upper = true;    ///< drawn in the upper half
  std::string note;     ///< written after its name
  std::vector<int> lanes;
};

enum class ItemKind { supply, charger, converter, load };

/// A string of batteries in series (plus end first, with the links between), a charger, a converter or a
/// load.
struct Item {
  ItemKind kind = ItemKind::load;
  std::vector<int> elements;              ///< batteries; converter: in, out
  std::vector<std::vector<Piece>> links;  ///< supply: below battery k, from top to bottom
};

/// A cable between the middles of two strings that stand side by side.
struct Tie {
  int left = -1, right = -1;  ///< items
  int junction = 0;           ///< of both: below battery `junction`
  bool below_link = false;    ///< at the lower end of that junction's link, not at the upper
  std::vector<Piece> pieces;  ///< left to right
};

struct Wiring {
  std::vector<Bar> bars;
  std::vector<Lane> lanes;
  std::vector<Item> items;  ///< file order
  std::vector<Tie> ties;
  std::vector<std::vector<int>> banks;  ///< items that ties join, from left to right; all of one shape
};

/// Depends on the structure alone, not on what is switched on.
[[nodiscard]] Wiring make_wiring(const network::Network& network);

}  // namespace ohmtrail::render
