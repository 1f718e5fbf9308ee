#pragma once
#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <boost/math/distributions/binomial.hpp>
#include <cmath>
#include <string>

#include "ohmtrail/diagnose/infer.hpp"
#include "support/simulated_survey.hpp"

namespace ohmtrail::test {

/// Counts how well inferences meet the truth of simulated surveys.
class Score {
 public:
  void add(const SimulatedSurvey& survey, const diagnose::InferResult& result) {
    const std::set<std::string> planted(survey.truth.planted.begin(), survey.truth.planted.end());
    ++systems_;
    add_ranking(planted, result);
    for (const auto& e : result.elements)
      add_thing(survey, planted, e.id, e.low, e.high, e.fault_probability);
    for (const auto& b : result.batteries)
      add_thing(survey, planted, b.id, b.low, b.high, b.fault_probability);
    for (const auto& r : result.readings) add_reading(survey, r);
  }

  /// The planted set is the top of the suspects.
  [[nodiscard]] double top_share() const { return share(top_, systems_); }
  /// Of all planted faults, those among as many first suspects as there are faults.
  [[nodiscard]] double found_share() const { return share(found_, planted_); }
  /// The planted elements are in the smallest group that carries 95 % of the probability.
  [[nodiscard]] double group_share() const { return share(in_group_, systems_); }
  [[nodiscard]] double coverage() const { return share(inside_, things_); }
  [[nodiscard]] double brier() const { return brier_ / static_cast<double>(things_); }
  [[nodiscard]] double named_share() const { return share(named_, checked_); }
  [[nodiscard]] long checked_blunders() const { return checked_; }
  [[nodiscard]] double false_alarm_share() const { return share(false_alarms_, readings_); }

  /// How many standard deviations more (or less) often things were faulty than was said, among those of one
  /// tenth of the scale of probability.
  [[nodiscard]] double surprise(std::size_t bin) const {
    const double expected = expected_[bin], variance = variance_[bin];
    return variance > 0 ? (static_cast<double>(happened_[bin]) - expected) / std::sqrt(variance) : 0;
  }

  /// How probable it is, where what is said is right, that things of that tenth are faulty as much more (or
  /// less) often than was said: the binomial tail at the mean of what was said, both sides.
  [[nodiscard]] double chance_of_surprise(std::size_t bin) const {
    const double n = static_cast<double>(said_[bin]), k = static_cast<double>(happened_[bin]);
    if (said_[bin] == 0) return 1;
    const boost::math::binomial_distribution<> binomial(n, expected_[bin] / n);
    const double at_most = cdf(binomial, k), at_least = k > 0 ? cdf(complement(binomial, k - 1)) : 1;
    return std::min(1.0, 2 * std::min(at_most, at_least));
  }

  /// In words, with the reliability table: said so often, happened so often.
  [[nodiscard]] std::string summary() const {
    std::string out = fmt::format(
        "{} systems: planted set on top {:.3f}, planted found {:.3f}, in the smallest 95 % group {:.3f} "
        "(mean size {:.1f}); "
        "90 % intervals hold {:.3f}; Brier {:.5f}\n  blunders checked by others {}, named {:.3f}; false "
        "alarms {:.4f}\n",
        systems_, top_share(), found_share(), group_share(),
        group_size_ / std::max(1.0, static_cast<double>(systems_)), coverage(), brier(), checked_,
        named_share(), false_alarm_share());
    for (std::size_t k = 0; k < said_.size(); ++k)
      out +=
          fmt::format("  said {:2}–{:3} %: {:6} times, mean {:.3f}, happened {:.3f} ({:+.1f} sd)\n", 10 * k,
                      10 * (k + 1), said_[k], expected_[k] / std::max(1.0, static_cast<double>(said_[k])),
                      share(happened_[k], said_[k]), surprise(k));
    return out;
  }

 private:
  static double share(long part, long whole) {
    return whole > 0 ? static_cast<double>(part) / static_cast<double>(whole) : 1;
  }

  void add_ranking(const std::set<std::string>& planted, const diagnose::InferResult& result) {
    const auto n = static_cast<std::ptrdiff_t>(planted.size());
    const std::set<std::string> first(result.suspects.begin(), result.suspects.begin() + n);
    top_ += first == planted ? 1 : 0;
    for (const auto& id : planted) {
      ++planted_;
      found_ += first.contains(id) ? 1 : 0;
    }
    const std::set<std::string> group = smallest_group(result);
    group_size_ += static_cast<double>(group.size());
    in_group_ += std::includes(group.begin(), group.end(), planted.begin(), planted.end()) ? 1 : 0;
  }

  static std::set<std::string> smallest_group(const diagnose::InferResult& result) {
    std::map<std::string, double> probability;
    double total = 0, carried = 0;
    for (const auto& e : result.elements) total += probability[e.id] = e.fault_probability;
    for (const auto& b : result.batteries) total += probability[b.id] = b.fault_probability;
    std::set<std::string> group;
    for (const auto& id : result.suspects) {
      if (carried >= 0.95 * total) break;
      carried += probability[id];
      group.insert(id);
    }
    return group;
  }

  void add_thing(const SimulatedSurvey& survey, const std::set<std::string>& planted, const std::string& id,
                 double low, double high, double probability) {
    const double truth = survey.truth.resistance.at(id);
    const bool faulty = planted.contains(id);
    ++things_;
    inside_ += truth >= low && truth <= high ? 1 : 0;
    brier_ += (probability - (faulty ? 1 : 0)) * (probability - (faulty ? 1 : 0));
    const auto bin = static_cast<std::size_t>(std::min(9, static_cast<int>(probability * 10)));
    ++said_[bin];
    happened_[bin] += faulty ? 1 : 0;
    expected_[bin] += probability;
    variance_[bin] += probability * (1 - probability);
  }

  void add_reading(const SimulatedSurvey& survey, const diagnose::InferredReading& reading) {
    ++readings_;
    if (!survey.truth.blunders.contains(reading.index)) {
      false_alarms_ += reading.suspect ? 1 : 0;
      return;
    }
    if (reading.redundancy >= 0.3) {
      ++checked_;
      named_ += reading.suspect ? 1 : 0;
    }
  }

  long systems_ = 0, top_ = 0, found_ = 0, planted_ = 0, in_group_ = 0, things_ = 0, inside_ = 0;
  long readings_ = 0, false_alarms_ = 0, checked_ = 0, named_ = 0;
  double brier_ = 0, group_size_ = 0;
  std::array<long, 10> said_{}, happened_{};
  std::array<double, 10> expected_{}, variance_{};
};

}  // namespace ohmtrail::test
