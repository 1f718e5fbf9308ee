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
    terminal_ = {case_.emf / 2, case_.emf};
    for (const RadialLoad& load : case_.loads)
      result_.load_volts.push_back({std::max(terminal_.low - load.limit, 1e-3 * case_.emf), case_.emf});
    result_.load_amperes.resize(case_.loads.size());
  }

  Bounds run() {
    for (int round = 0; round < 60; ++round) {
      const double before = spread();
      update_currents();
      update_arms();
      update_volts();
      if (!result_.possible) return result_;
      if (before - spread() <= 1e-12 * case_.emf) break;
    }
    check_ampacity();
    check_devices();
    return result_;
  }

 private:
  [[nodiscard]] double spread() const {
    double sum = terminal_.high - terminal_.low;
    for (const Interval& volts : result_.load_volts) sum += volts.high - volts.low;
    return sum;
  }

  void update_currents() {
    total_ = {};
    for (std::size_t l = 0; l < case_.loads.size(); ++l) {
      result_.load_amperes[l] = load_current(case_.loads[l], result_.load_volts[l]);
      total_.low += result_.load_amperes[l].low;
      total_.high += result_.load_amperes[l].high;
    }
    terminal_.low = std::max(terminal_.low, case_.emf - case_.battery * total_.high);
    terminal_.high = std::min(terminal_.high, case_.emf - case_.battery * total_.low);
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
    drop_.assign(case_.arms.size(), {});
    for (std::size_t a = 0; a < case_.arms.size(); ++a) {
      const Arm& arm = case_.arms[a];
      const Interval amperes = through(arm.loads);
      Interval ohms{std::numeric_limits<double>::infinity(), 0};
      for (std::size_t c = 0; c < arm.choices.size(); ++c) {
        if (arm.run >= 0 && !box_[at(arm.run)][c]) continue;
        ohms.low = std::min(ohms.low, arm.resistance(c, amperes.low));
        ohms.high = std::max(ohms.high, arm.resistance(c, amperes.high));
      }
      drop_[a] = {ohms.low * amperes.low, ohms.high * amperes.high};
    }
  }

  void update_volts() {
    for (std::size_t l = 0; l < case_.loads.size(); ++l) {
      Interval drop;
      for (const int a : case_.loads[l].path) {
        drop.low += drop_[at(a)].low;
        drop.high += drop_[at(a)].high;
      }
      Interval& volts = result_.load_volts[l];
      volts.low = std::max({volts.low, terminal_.low - std::min(drop.high, case_.loads[l].limit)});
      volts.high = std::min(volts.high, terminal_.high - drop.low);
      if (drop.low > case_.loads[l].limit * (1 + kRounding) || volts.high < volts.low - kRounding * case_.emf)
        refuse_load(static_cast<int>(l));
      volts.low = std::min(volts.low, volts.high);
    }
  }

  void refuse_load(int load) {
    result_.possible = false;
    if (result_.broken_load < 0) result_.broken_load = load;
  }

  [[nodiscard]] double most_ampacity(int run) const {
    double most = 0;
    for (std::size_t c = 0; c < box_[at(run)].size(); ++c)
      if (box_[at(run)][c]) most = std::max(most, space_.runs[at(run)].candidates[c].ampacity);
    return most;
  }

  void check_ampacity() {
    for (const Arm& arm : case_.arms)
      if (arm.run >= 0 && through(arm.loads).low > most_ampacity(arm.run) * (1 + kRounding))
        refuse_run(arm.run, false);
  }

  /// A device is rated for 1.25 times its current (common practice) and not above the ampacity of what it
  /// guards.
  void check_devices() {
    for (const Device& device : case_.devices) {
      const double least = 1.25 * through(device.loads).low * (1 - kRounding);
      const auto rating = std::lower_bound(device.ladder.begin(), device.ladder.end(), least);
      for (const int run : device.runs)
        if (rating == device.ladder.end() || *rating > most_ampacity(run) * (1 + kRounding))
          refuse_run(run, true);
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
  Interval terminal_, total_;
  std::vector<Interval> drop_;  ///< per arm
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
