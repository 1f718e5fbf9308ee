#pragma once
#include <vector>

/// What the mathematics sees: points and branches with dense indices and plain SI doubles.
/// It knows no file, no name and no kind of element; only the law by which a branch passes current.
namespace ohmtrail::solve {

enum class Law {
  open,       ///< no current
  resistor,   ///< v = r i; r may depend on i through `heating`; 0 Ω merges its points
  source,     ///< v = size + r i (i from plus to minus inside): a battery
  regulator,  ///< holds `size` volts while it delivers at most `limit` amperes, else delivers `limit`; never
              ///< takes
  diode,      ///< passes current from → to with `size` volts lost and r in series; blocks otherwise
  current,    ///< takes `size` amperes
  power       ///< takes `size` watts; drops out below `stops_below`
};

/// T = ambient + rise i², r(T) = r20 (1 + alpha (T − 20)). Temperatures in °C.
struct Heating {
  double alpha = 0;     ///< 1/K at 20 °C
  double ambient = 25;  ///< °C
  double rise = 0;      ///< K/A²; 0: does not heat
};

/// Of a wire that is `kelvin` warmer than the air at `rated` amperes, which is above 0.
inline Heating heating_at(double alpha, double ambient, double kelvin, double rated) {
  return {alpha, ambient, kelvin / (rated * rated)};
}

struct Branch {
  int from = 0, to = 0;
  Law law = Law::open;
  double resistance = 0;   ///< Ω; resistor, source, diode
  double size = 0;         ///< V, A or W by law
  double limit = 0;        ///< regulator: A
  double stops_below = 0;  ///< V; any load (resistor, current or power) that is one; 0: never
  double nominal = 0;      ///< V; loads: what their voltage is held against; > 0 marks a load
  Heating heating;
  /// Converter output (regulator): index of its input (power), which takes delivered / efficiency + idle.
  int input = -1;
  double efficiency = 1;
  double idle = 0;  ///< W
};

struct Circuit {
  int points = 0;
  std::vector<Branch> branches;
  int reference = -1;  ///< the point at 0 V; −1: the first source's `to`
};

}  // namespace ohmtrail::solve
