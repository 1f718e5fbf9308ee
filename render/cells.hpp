#pragma once
#include <optional>
#include <string>
#include <vector>

#include "render/arrange.hpp"
#include "render/teller.hpp"

/// How much room the parts of a diagram need for their symbols, numbers and discs, and where each lies on its
/// lane.
namespace ohmtrail::render {

namespace lettering {
inline constexpr double name = 7.2, value = 6.6, line = 8.6;
}

/// A piece's room on its lane.
struct Cell {
  std::string name, value;
  double name_width = 0, value_width = 0;
  double before = 0;  ///< room for the dots and discs of the left end
  double after = 0;   ///< and of the right end
  double inner = 0;   ///< between them
  [[nodiscard]] double width() const { return before + inner + after; }
};

/// Where a piece came to lie.
struct PlacedCell {
  double left = 0, right = 0;  ///< of the piece's line or symbol
  double text = 0;             ///< where its name and number begin (runs) or are centred (devices)
  bool lettered = true;        ///< false: an upright leaves no room; the title still tells
};

inline constexpr double lead = 5;  ///< plain line between a bar and the first piece
inline constexpr double disc_radius = 5.2;
inline constexpr double widest_device_name = 86;

struct ItemText {
  std::vector<std::string> name;   ///< broken into lines
  std::vector<std::string> lines;  ///< under it
  double width = 0;
  [[nodiscard]] double height() const {
    return lettering::line * static_cast<double>(name.size() + lines.size());
  }
};

/// A part of an item in its column, from top to bottom: a battery, a piece of a link, or a place for ties.
struct ColumnPart {
  double top = 0, bottom = 0;  ///< y from the axis
  int battery = -1;            ///< index into Item::elements
  const Piece* piece = nullptr;
  int tie_junction = -1;    ///< of the ties that meet the string here: a plain piece of conductor
  bool below_link = false;  ///< as in Tie
  ItemText text;
};

class Cells {
 public:
  Cells(const Wiring& wiring, const Teller& teller);

  std::vector<std::vector<Cell>> lanes;
  std::vector<std::vector<ColumnPart>> columns;  ///< per item; loads, chargers, converters: one part
  std::vector<std::vector<Cell>> ties;           ///< per tie
  std::vector<std::string> bar_names;            ///< empty: not written
  Sizes sizes;

  /// Lays the cells of `lane` between its bars, clear of the uprights at `crossed`. Empty: too little room.
  [[nodiscard]] std::optional<std::vector<PlacedCell>> lay(const Wiring& wiring, int lane, Span x,
                                                           const std::vector<double>& crossed) const;
  /// The same for a tie, between the middles of its two strings.
  [[nodiscard]] std::vector<PlacedCell> lay_tie(const Wiring& wiring, int tie, Span x) const;
  /// y of a tie, from the axis.
  [[nodiscard]] double tie_y(const Tie& tie) const;

 private:
  void measure_lane(const Wiring& wiring, const Teller& teller, int lane);
  void measure_item(const Wiring& wiring, const Teller& teller, int item);
  void measure_bar(const Wiring& wiring, const Teller& teller, int bar);
  void measure_ties(const Wiring& wiring, const Teller& teller);
  void align_bank(const std::vector<int>& bank);
  [[nodiscard]] static std::vector<ColumnPart> column(const Wiring& wiring, int item, const Teller& teller);
};

}  // namespace ohmtrail::render
