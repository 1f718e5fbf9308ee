#pragma once
#include "ohmtrail/trade/words.hpp"
#include "render/scene.hpp"

/// Symbols after IEC 60617 (series 02, 03, 04, 05, 06 and 07), drawn by ourselves. Each is laid along a line
/// that passes through its middle.
namespace ohmtrail::render {

/// Where and how a symbol is drawn.
struct Spot {
  Point middle;
  bool upright = false;    ///< its line runs from top to bottom instead of from left to right
  bool backwards = false;  ///< its `from` end lies right or below
  Colour colour = palette::ink;
  int group = -1;
};

/// Length along the line that a symbol takes; its line stops short on both sides.
inline constexpr double symbol_length = 18;
/// Half of its height across the line.
inline constexpr double symbol_half = 6.5;

void draw_fuse(Scene& scene, const Spot& spot);
void draw_switch(Scene& scene, const Spot& spot, trade::SwitchKind kind, bool closed);
void draw_shunt(Scene& scene, const Spot& spot);
void draw_isolator(Scene& scene, const Spot& spot);
void draw_joint(Scene& scene, const Spot& spot, trade::JointKind kind);

/// Plus on top, along an upright line; takes `symbol_length`.
void draw_battery(Scene& scene, const Spot& spot);
/// `half` of its length.
void draw_load(Scene& scene, const Spot& spot, double half);
/// Along an upright line; `half` of its height.
void draw_charger(Scene& scene, const Spot& spot, double half);
/// In on the left, out on the right.
void draw_converter(Scene& scene, const Spot& spot, double half_width, double half);

}  // namespace ohmtrail::render
