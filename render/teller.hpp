#pragma once
#include <map>
#include <string>
#include <vector>

#include "render/diagram.hpp"
#include "render/shade.hpp"
#include "render/wiring.hpp"

namespace ohmtrail::render {

/// What a diagram says about each of its parts.
class Teller {
 public:
  Teller(const netlist::System& system, const solve::CaseSolution& solved,
         const std::vector<diagnose::HotSpot>& hot_spots, Show show);

  [[nodiscard]] std::string name(const Piece& piece) const;
  [[nodiscard]] std::string value(const Piece& piece) const;
  [[nodiscard]] std::string title(const Piece& piece) const;

  [[nodiscard]] std::string name(const Item& item, std::size_t part) const;
  /// Lines under the name of an item's part: rating, then what stands or flows there.
  [[nodiscard]] std::vector<std::string> values(const Item& item, std::size_t part) const;
  [[nodiscard]] std::string title(const Item& item, std::size_t part) const;

  [[nodiscard]] std::string name(const Bar& bar) const;
  [[nodiscard]] std::string value(const Bar& bar) const;
  [[nodiscard]] std::string title(const Bar& bar) const;

  /// The element of a run that is its wire; a device's only element.
  [[nodiscard]] int main_element(const Piece& piece) const;
  /// m²; 0 for a device.
  [[nodiscard]] double copper(const Piece& piece) const;
  [[nodiscard]] bool open(const Piece& piece) const;
  /// The hot spot of an element; nullptr: none.
  [[nodiscard]] const diagnose::HotSpot* hot_spot(int element) const;
  [[nodiscard]] double current(const Piece& piece) const;  ///< left to right
  [[nodiscard]] double drop(const Piece& piece) const;     ///< V, without sign
  [[nodiscard]] double heat(const Piece& piece) const;

  [[nodiscard]] const network::Element& element(int i) const;
  [[nodiscard]] const netlist::System& system() const { return system_; }
  [[nodiscard]] const solve::CaseSolution& solved() const { return solved_; }
  [[nodiscard]] Show show() const { return show_; }

 private:
  [[nodiscard]] double hottest(const Piece& piece) const;
  [[nodiscard]] std::string rating(const Piece& piece) const;
  [[nodiscard]] std::string rating(const Item& item, std::size_t part) const;
  [[nodiscard]] std::string state(const Item& item, int element) const;

  const netlist::System& system_;
  const solve::CaseSolution& solved_;
  Show show_;
  std::map<int, const diagnose::HotSpot*> hot_;
};

/// "2/0 AWG", "35 mm²"
[[nodiscard]] std::string gauge_name(const trade::Gauge& gauge);

}  // namespace ohmtrail::render
