#include "plan/box_bounds.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmtrail::plan {

namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

/// Room for rounding: a box is refused only when it breaks a limit by more than this share.
constexpr double kRounding = 1e-9;

Interval load_current(const RadialLoad& load, const Interval& volts) {
  switch (load.draw) {
    case Draw::current:
      return {load.size, load.size};
    case Draw::power:
      return {load.size / volts.high, load.size / volts.low};
    case Draw::resistance:
      return {volts.low / load.size, volts.high / load.size};
  }
  return {};
}

class Iteration {
 public:
  Iteration(const RadialCase& in_case, const DesignSpace& space, const Box& box)
      : case_(in_case), space_(space), box_(box) {
    // The upper branch alone is of use: a supply pulled below half of its open-circuit voltage has collapsed.
    result_.terminal = {case_.emf / 2, case_.emf};
    for (const RadialLoad& load : case_.loads)
      result_.load_volts.push_back(
          {std::max(result_.terminal.low - load.limit, 1e-3 * case_.emf), case_.emf});
    result_.load_amperes.resize(case_.loads.size());
    arm_amperes_.resize(case_.arms.size());
    for (const Arm& arm : case_.arms) curves_.push_back(hull(arm));
  }

  Bounds run() {
    for (int round = 0; round < 60; ++round) {
      const double before = spread();
      update_currents();
      update_arms();
      update_volts();
      if (!result_.possible) return std::move(result_);
      // On one design the intervals close, and each round takes most of what is left.
      if (before - spread() <= 1e-12 * case_.emf + 1e-3 * spread()) break;
    }
    check_ampacity();
    check_devices();
    result_.certain = result_.certain && result_.possible;
    return std::move(result_);
  }

 private:
  [[nodiscard]] double spread() const {
    double sum = result_.terminal.high - result_.terminal.low;
    for (const Interval& volts : result_.load_volts) sum += volts.high - volts.low;
    return sum;
  }

  /// Curves below and above those of an arm's candidates in the box.
  struct Hull {
    Curve low, high;
  };
  [[nodiscard]] Hull hull(const Arm& arm) const {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    Hull found{{infinity, infinity, 0}, {0, 0, 0}};
    for (std::size_t c = 0; c < arm.choices.size(); ++c) {
      if (arm.run >= 0 && !box_[at(arm.run)][c]) continue;
      found.low.cold = std::min(found.low.cold, arm.choices[c].cold);
      found.low.least = std::min(found.low.least, arm.choices[c].least);
      found.high.cold = std::max(found.high.cold, arm.choices[c].cold);
      found.high.most = std::max(found.high.most, arm.choices[c].most);
    }
    return found;
  }

  void update_currents() {
    Interval total;
    for (std::size_t l = 0; l < case_.loads.size(); ++l) {
      result_.load_amperes[l] = load_current(case_.loads[l], result_.load_volts[l]);
      total.low += result_.load_amperes[l].low;
      total.high += result_.load_amperes[l].high;
    }
    Interval& terminal = result_.terminal;
    terminal.low = std::max(terminal.low, case_.emf - case_.battery * total.high);
    terminal.high = std::min(terminal.high, case_.emf - case_.battery * total.low);
  }

  [[nodiscard]] Interval through(const std::vector<int>& loads) const {
    Interval sum;
    for (const int l : loads) {
      sum.low += result_.load_amperes[at(l)].low;
      sum.high += result_.load_amperes[at(l)].high;
    }
    return sum;
  }

  void update_arms() {
    result_.arm_volts.assign(case_.arms.size(), {});
    for (std::size_t a = 0; a < case_.arms.size(); ++a) {
      const Interval amperes = arm_amperes_[a] = through(case_.arms[a].loads);
      result_.arm_volts[a] = {curves_[a].low.least_ohms(amperes.low) * amperes.low,
                              curves_[a].high.most_ohms(amperes.high) * amperes.high};
    }
  }

  void update_volts() {
    result_.certain = true;
    for (std::size_t l = 0; l < case_.loads.size(); ++l) {
      const double limit = case_.loads[l].limit;
      Interval drop;
      for (const int a : case_.loads[l].path) {
        drop.low += result_.arm_volts[at(a)].low;
        drop.high += result_.arm_volts[at(a)].high;
      }
      Interval& volts = result_.load_volts[l];
      volts.low = std::max({volts.low, result_.terminal.low - std::min(drop.high, limit)});
      volts.high = std::min(volts.high, result_.terminal.high - drop.low);
      if (drop.high > limit * (1 + kRounding)) result_.certain = false;
      if (drop.low > limit * (1 + kRounding) || volts.high < volts.low - kRounding * case_.emf)
        refuse_load(static_cast<int>(l));
      volts.low = std::min(volts.low, volts.high);
    }
  }

  void refuse_load(int load) {
    result_.possible = false;
    if (result_.broken_load < 0) result_.broken_load = load;
  }

  /// Best and worst over the candidates in the box.
  [[nodiscard]] Interval ampacity(int run) const {
    Interval range{std::numeric_limits<double>::infinity(), 0};
    for (std::size_t c = 0; c < box_[at(run)].size(); ++c) {
      if (!box_[at(run)][c]) continue;
      const double ampacity = space_.runs[at(run)].candidates[c].ampacity;
      range.low = std::min(range.low, ampacity);
      range.high = std::max(range.high, ampacity);
    }
    return range;
  }

  void check_ampacity() {
    for (std::size_t a = 0; a < case_.arms.size(); ++a) {
      const Arm& arm = case_.arms[a];
      if (arm.run < 0) continue;
      double most = 0;
      for (std::size_t c = 0; c < arm.choices.size(); ++c)
        if (box_[at(arm.run)][c]) most = std::max(most, arm.most_amperes[c]);
      if (arm_amperes_[a].low > most * (1 + kRounding)) refuse_run(arm.run, false);
      if (arm_amperes_[a].high > ampacity(arm.run).low * (1 + kRounding)) result_.certain = false;
    }
  }

  /// A device is rated for 1.25 times its current (common practice) and not above the ampacity of what it
  /// guards.
  void check_devices() {
    for (const Device& device : case_.devices) {
      const Interval amperes = through(device.loads);
      const auto rated = [&](double amps) {
        const auto next =
            std::lower_bound(device.ladder.begin(), device.ladder.end(), 1.25 * amps * (1 - kRounding));
        return next == device.ladder.end() ? std::numeric_limits<double>::infinity() : *next;
      };
      for (const int run : device.runs) {
        if (rated(amperes.low) > ampacity(run).high * (1 + kRounding)) refuse_run(run, true);
        if (rated(amperes.high) > ampacity(run).low * (1 + kRounding)) result_.certain = false;
      }
    }
  }

  void refuse_run(int run, bool by_fuse) {
    result_.possible = false;
    if (result_.broken_run >= 0) return;
    result_.broken_run = run;
    result_.by_fuse = by_fuse;
  }

  const RadialCase& case_;
  const DesignSpace& space_;
  const Box& box_;
  std::vector<Interval> arm_amperes_;
  std::vector<Hull> curves_;  ///< per arm
  Bounds result_;
};

}  // namespace

Bounds bounds(const RadialCase& in_case, const DesignSpace& space, const Box& box) {
  return Iteration(in_case, space, box).run();
}

Box full_box(const DesignSpace& space) {
  Box box;
  for (const RunSpace& run : space.runs) box.emplace_back(run.candidates.size(), true);
  return box;
}

Box point_box(const DesignSpace& space, const Design& design) {
  Box box;
  for (std::size_t k = 0; k < space.runs.size(); ++k) {
    box.emplace_back(space.runs[k].candidates.size(), false);
    box.back()[at(design[k])] = true;
  }
  return box;
}

}  // namespace ohmtrail::plan
