#include "plan/box_bounds.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

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
      : case_(in_case), space_(space), box_(box), emf_(in_case.highest_emf()) {
    // The upper branch alone is of use: a supply pulled below half of its open-circuit voltage has collapsed.
    result_.terminal = bank_volts_ = {emf_ / 2, emf_};
    for (const RadialLoad& load : case_.loads)
      result_.load_volts.push_back({std::max(result_.terminal.low - load.limit, 1e-3 * emf_), emf_});
    result_.load_amperes.resize(case_.loads.size());
    result_.arm_amperes.resize(case_.arms.size());
    for (const Arm& arm : case_.arms) result_.arm_curves.push_back(hull(arm));
    for (const BankString& string : case_.strings) string_amperes_.push_back(possible(string));
  }

  Bounds run() {
    for (int round = 0; round < 60 && result_.possible; ++round) {
      const double before = spread();
      update_currents();
      update_bank();
      update_arms();
      update_volts();
      // On one design the intervals close, and each round takes most of what is left.
      if (before - spread() <= 1e-12 * emf_ + 1e-3 * spread()) break;
    }
    if (result_.possible) check_ampacity();
    if (result_.possible) check_devices();
    result_.certain = result_.certain && result_.possible;
    return std::move(result_);
  }

 private:
  [[nodiscard]] double spread() const {
    double sum = result_.terminal.high - result_.terminal.low;
    for (const Interval& volts : result_.load_volts) sum += volts.high - volts.low;
    return sum;
  }

  [[nodiscard]] Hull hull(const Arm& arm) const {
    if (arm.device >= 0) return device_hull(case_.devices[at(arm.device)]);
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

  [[nodiscard]] Hull device_hull(const Device& device) const {
    Interval least{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
    for (const int run : device.runs) {
      least.low = std::min(least.low, fuse_limit(run).low);
      least.high = std::min(least.high, fuse_limit(run).high);
    }
    const Interval ohms = device.resistance(least);
    return {{ohms.low, 0, 0}, {ohms.high, 0, 0}};
  }

  [[nodiscard]] double most_amperes(const Arm& arm) const {
    double most = arm.run < 0 ? std::numeric_limits<double>::infinity() : 0;
    for (std::size_t c = 0; arm.run >= 0 && c < arm.choices.size(); ++c)
      if (box_[at(arm.run)][c]) most = std::max(most, arm.most_amperes[c]);
    return most;
  }

  /// What a string may carry either way before anything is known of the loads: the whole voltage across it,
  /// and the ampacity of its own arms.
  [[nodiscard]] Interval possible(const BankString& string) const {
    double most = string.ohms > 0 ? emf_ / string.ohms : std::numeric_limits<double>::infinity();
    for (const int a : string.arms) most = std::min(most, most_amperes(case_.arms[at(a)]) * (1 + kRounding));
    return {-most, most};
  }

  void update_currents() {
    total_ = {};
    for (std::size_t l = 0; l < case_.loads.size(); ++l) {
      result_.load_amperes[l] = load_current(case_.loads[l], result_.load_volts[l]);
      total_.low += result_.load_amperes[l].low;
      total_.high += result_.load_amperes[l].high;
    }
  }

  /// A current whichever way.
  static Interval magnitude(const Interval& amperes) {
    if (amperes.low >= 0) return amperes;
    if (amperes.high <= 0) return {-amperes.high, -amperes.low};
    return {0, std::max(-amperes.low, amperes.high)};
  }

  void update_bank() {
    std::vector<Interval> own_ohms;
    for (std::size_t s = 0; s < case_.strings.size(); ++s) {
      own_ohms.emplace_back();
      const Interval amperes = magnitude(string_amperes_[s]);
      for (const int a : case_.strings[s].arms) {
        own_ohms.back().low += result_.arm_curves[at(a)].low.least_ohms(amperes.low);
        own_ohms.back().high += result_.arm_curves[at(a)].high.most_ohms(amperes.high);
      }
    }
    const BankState state = bank_state(case_.strings, total_, own_ohms);
    bool left = result_.terminal.narrow(state.posts);
    left = bank_volts_.narrow(state.volts) && left;
    result_.lead_volts = state.own;
    for (std::size_t s = 0; s < case_.strings.size() && case_.strings.size() > 1; ++s)
      left = string_amperes_[s].narrow(state.amperes[s]) && left;
    // Rounding may part intervals that have closed.
    if (!left) widen_or_refuse();
  }

  /// Intervals that miss each other by no more than rounding meet in their middle; others leave no design.
  void widen_or_refuse() {
    const auto mend = [&](Interval& interval, double scale) {
      if (interval.low <= interval.high) return;
      if (interval.low - interval.high > 1e-9 * scale) result_.possible = false;
      interval.low = interval.high = (interval.low + interval.high) / 2;
    };
    mend(result_.terminal, emf_);
    mend(bank_volts_, emf_);
    for (Interval& amperes : string_amperes_) mend(amperes, std::max(1.0, total_.high));
    if (!result_.possible) refuse_bank();
  }

  /// A string that cannot carry what falls to it: told of its first run, if it has one.
  void refuse_bank() {
    for (const BankString& string : case_.strings)
      for (const int a : string.arms)
        if (case_.arms[at(a)].run >= 0) return refuse_run(case_.arms[at(a)].run, false);
    result_.possible = false;
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
      const Arm& arm = case_.arms[a];
      const Interval amperes = result_.arm_amperes[a] =
          arm.string < 0 ? through(arm.loads) : magnitude(string_amperes_[at(arm.string)]);
      result_.arm_volts[a] = {result_.arm_curves[a].low.least_ohms(amperes.low) * amperes.low,
                              result_.arm_curves[a].high.most_ohms(amperes.high) * amperes.high};
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
      const Interval whole{drop.low + result_.lead_volts.low, drop.high + result_.lead_volts.high};
      Interval& volts = result_.load_volts[l];
      volts.low = std::max({volts.low, bank_volts_.low - drop.high, result_.terminal.low - limit});
      volts.high = std::min({volts.high, bank_volts_.high - drop.low, result_.terminal.high - whole.low});
      if (whole.high > limit * (1 + kRounding)) result_.certain = false;
      if (whole.low > limit * (1 + kRounding) || volts.high < volts.low - kRounding * emf_)
        refuse_load(static_cast<int>(l));
      volts.low = std::min(volts.low, volts.high);
    }
  }

  void refuse_load(int load) {
    result_.possible = false;
    if (result_.broken_load < 0) result_.broken_load = load;
  }

  /// Best and worst over the candidates in the box.
  [[nodiscard]] Interval ampacity(int run) const { return range_of(run, &Candidate::ampacity); }
  [[nodiscard]] Interval fuse_limit(int run) const { return range_of(run, &Candidate::fuse_limit); }

  [[nodiscard]] Interval range_of(int run, double Candidate::*figure) const {
    Interval range{std::numeric_limits<double>::infinity(), 0};
    for (std::size_t c = 0; c < box_[at(run)].size(); ++c) {
      if (!box_[at(run)][c]) continue;
      const double value = space_.runs[at(run)].candidates[c].*figure;
      range.low = std::min(range.low, value);
      range.high = std::max(range.high, value);
    }
    return range;
  }

  void check_ampacity() {
    for (std::size_t a = 0; a < case_.arms.size(); ++a) {
      const Arm& arm = case_.arms[a];
      if (arm.run < 0) continue;
      if (result_.arm_amperes[a].low > most_amperes(arm) * (1 + kRounding)) refuse_run(arm.run, false);
      if (result_.arm_amperes[a].high > ampacity(arm.run).low * (1 + kRounding)) result_.certain = false;
    }
  }

  /// A device is rated for 1.25 times its current (common practice) and not above what may stand over what it
  /// guards.
  void check_devices() {
    for (const Device& device : case_.devices) {
      const Interval amperes = result_.arm_amperes[at(device.arm)];
      const auto rated = [&](double amps) {
        const auto next =
            std::lower_bound(device.ladder.begin(), device.ladder.end(), 1.25 * amps * (1 - kRounding));
        return next == device.ladder.end() ? std::numeric_limits<double>::infinity() : *next;
      };
      for (const int run : device.runs) {
        if (rated(amperes.low) > fuse_limit(run).high * (1 + kRounding)) refuse_run(run, true);
        if (rated(amperes.high) > fuse_limit(run).low * (1 + kRounding)) result_.certain = false;
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
  double emf_;  ///< V, highest
  Interval total_, bank_volts_;
  std::vector<Interval> string_amperes_;  ///< per string
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
