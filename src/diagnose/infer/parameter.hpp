#pragma once
#include <optional>
#include <string>

/// The unknowns of an inference and what is believed of each before any reading.
namespace ohmtrail::diagnose::inference {

/// What an unknown stands for.
enum class Kind { element, battery_resistance, emf, load, set_point, isolator_drop, gain, zero, drift };

/// Logarithmic: value = centre · exp(x). Linear: value = centre + x. Priors are normal in x.
enum class Scale { logarithmic, linear };

struct Normal {
  double mean = 0;
  double sd = 1;

  friend bool operator==(const Normal&, const Normal&) = default;
};

/// What the unknown is like when it is faulty, and the odds of that before any reading.
struct Fault {
  Normal prior;
  double log_odds = 0;  ///< ln(chance faulty / chance sound)
};

struct Parameter {
  Kind kind = Kind::element;
  Scale scale = Scale::logarithmic;
  double centre = 1;  ///< SI unit of the value
  Normal sound;
  std::optional<Fault> fault;
  std::string id;    ///< element, battery or load; meter for gains and zeros
  int in_case = -1;  ///< loads: index into the model's cases
  int of = -1;       ///< drift: the open-circuit voltage that it adds to

  [[nodiscard]] double value(double x) const;
  /// d value / d x at x.
  [[nodiscard]] double slope(double x) const;
  /// x of a value; logarithmic values must be positive.
  [[nodiscard]] double x_of(double value) const;
};

}  // namespace ohmtrail::diagnose::inference
