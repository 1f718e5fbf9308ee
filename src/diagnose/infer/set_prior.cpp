#include "diagnose/infer/set_prior.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmtrail::diagnose::inference {
namespace {

constexpr std::size_t paired = 8, most_paired = 24;  // members whose pairs are weighed; with their like
constexpr std::size_t nobody = static_cast<std::size_t>(-1);

// What is left of a cavity of a sum when an independent part with this variance is integrated out.
double widened(double precision, double variance) {
  return precision / (1 + precision * variance);
}

double log_lost(double precision, double variance) {
  return -0.5 * std::log1p(precision * variance);
}

// The integral of prior × cavity. Where the cavity is so narrow that the prior hardly bends across it, that
// is the prior's density there; where it asks for far less than nothing, hardly anything.
double log_evidence(const Parameter& unknown, const Normal& prior, const Cavity& cavity) {
  constexpr double narrow = 0.1, far = 6;
  const double reach = cavity.at * std::sqrt(cavity.precision);
  if (reach < -far) {
    return -0.5 * reach * reach;
  }
  if (reach * prior.sd * narrow > 1) {
    const double z = (unknown.x_of(cavity.at) - prior.mean) / prior.sd;
    return -0.5 * z * z - std::log(prior.sd * reach);
  }
  return tilt(unknown, prior, cavity).log_integral;
}

double log_sum(double a, double b) {
  const double top = std::max(a, b);
  return top + std::log(std::exp(a - top) + std::exp(b - top));
}

}  // namespace

std::vector<std::size_t> SetPrior::places(const std::vector<int>& faulty) const {
  std::vector<std::size_t> out;
  for (std::size_t k = 0; k < set_.member.size(); ++k) {
    if (std::binary_search(faulty.begin(), faulty.end(), set_.member[k])) {
      out.push_back(k);
    }
  }
  return out;
}

SetPrior::SetPrior(const Model& model, const ParallelSet& set) : model_(model), set_(set) {
  const auto of = [&](std::size_t k, const Normal& prior) -> Moments {
    const double mean = set_.length[k] * unknown(k).centre * std::exp(prior.mean + 0.5 * prior.sd * prior.sd);
    return {mean, mean * mean * std::expm1(prior.sd * prior.sd)};
  };
  for (std::size_t k = 0; k < set_.member.size(); ++k) {
    sound_.push_back(of(k, unknown(k).sound));
    faulty_.push_back(of(k, unknown(k).fault->prior));
  }
}

// Of all members but one; independent, so variances add.
SetPrior::Moments SetPrior::sum_of(const std::vector<std::size_t>& faulty, std::size_t except) const {
  Moments out;
  for (std::size_t k = 0; k < set_.member.size(); ++k) {
    if (k != except) {
      const Moments one = moments(k, std::count(faulty.begin(), faulty.end(), k) > 0);
      out.mean += one.mean;
      out.variance += one.variance;
    }
  }
  return out;
}

Cavity SetPrior::cavity_of(std::size_t k, const Cavity& sum, const Moments& others) const {
  const double length = set_.length[k];
  return {(sum.at - others.mean) / length, length * length * widened(sum.precision, others.variance)};
}

double SetPrior::log_one(const Cavity& sum, std::size_t k) const {
  const Moments rest = sum_of({}, k);
  return log_lost(sum.precision, rest.variance) +
         tilt(unknown(k), unknown(k).fault->prior, cavity_of(k, sum, rest)).log_integral;
}

// Over x of the first by the trapezoidal rule, as far up as the sum leaves room; over the second exactly.
double SetPrior::log_two(const Cavity& sum, std::size_t a, std::size_t b) const {
  constexpr int nodes = 21;
  constexpr double reach = 4, log_two_pi = 1.8378770664093453, no_room = -80;
  const Moments all = sum_of({}, a), own = moments(b, false);
  const Moments rest{all.mean - own.mean, std::max(0.0, all.variance - own.variance)};
  const Normal& prior = unknown(a).fault->prior;
  double highest = reach;
  if (sum.precision > 0) {
    const double room = sum.at - rest.mean + reach * std::sqrt(1 / sum.precision + rest.variance);
    const double x = room > 0 ? unknown(a).x_of(room / set_.length[a]) : prior.mean - 2 * reach * prior.sd;
    highest = std::min(reach, (x - prior.mean) / prior.sd);
  }
  if (highest <= -reach) {
    return no_room;
  }
  const double step = (highest + reach) / (nodes - 1);
  double total = no_room;
  for (int n = 0; n < nodes; ++n) {
    const double z = -reach + step * n;
    const double taken = set_.length[a] * unknown(a).value(prior.mean + prior.sd * z);
    const Cavity left = cavity_of(b, sum, {rest.mean + taken, rest.variance});
    const double inner = log_evidence(unknown(b), unknown(b).fault->prior, left);
    total = log_sum(total, inner - 0.5 * z * z);
  }
  return log_lost(sum.precision, rest.variance) + total + std::log(step) - 0.5 * log_two_pi;
}

// The whole sum as one log-normal with its mean and variance.
double SetPrior::log_all(const Cavity& sum, const std::vector<std::size_t>& faulty) const {
  const Moments all = sum_of(faulty, nobody);
  const double variance = std::log1p(all.variance / (all.mean * all.mean));
  Parameter whole;
  whole.centre = all.mean * std::exp(-0.5 * variance);
  whole.sound = {0, std::sqrt(variance)};
  return tilt(whole, whole.sound, sum).log_integral;
}

double SetPrior::log_odds(const std::vector<std::size_t>& faulty) const {
  double out = 0;
  for (const std::size_t k : faulty) {
    out += unknown(k).fault->log_odds;
  }
  return out;
}

double SetPrior::log_weight(const Cavity& sum, const std::vector<int>& faulty) const {
  const std::vector<std::size_t> at = places(faulty);
  const double odds = log_odds(at);
  switch (at.size()) {
    case 1:
      return odds + log_one(sum, at[0]);
    case 2:
      return odds + log_two(sum, at[0], at[1]);
    default:
      return odds + log_all(sum, at);
  }
}

std::size_t SetPrior::kind(std::size_t k) const {
  constexpr double rounding = 1e-6;  // of the linearisation that the lengths come from
  const auto alike = [&](std::size_t other) {
    const Parameter &a = unknown(k), &b = unknown(other);
    return std::abs(set_.length[k] / set_.length[other] - 1) < rounding && a.centre == b.centre &&
           a.sound == b.sound && a.fault->prior == b.fault->prior;
  };
  std::size_t first = 0;
  while (!alike(first)) {
    ++first;
  }
  return first;
}

std::vector<SetState> SetPrior::pairs(const Cavity& sum, const std::vector<SetState>& single) const {
  constexpr double rounding = 1e-6;
  std::vector<SetState> order = single;
  std::stable_sort(order.begin(), order.end(),
                   [](const SetState& x, const SetState& y) { return x.log_weight > y.log_weight; });
  std::size_t count = std::min(order.size(), paired);
  while (count < std::min(order.size(), most_paired) &&
         order[count].log_weight > order[count - 1].log_weight - rounding) {
    ++count;
  }
  std::map<std::pair<std::size_t, std::size_t>, double> of_kinds;
  std::vector<SetState> out;
  for (std::size_t a = 0; a < count; ++a) {
    for (std::size_t b = 0; b < a; ++b) {
      std::vector<int> faulty{order[a].faulty.front(), order[b].faulty.front()};
      std::sort(faulty.begin(), faulty.end());
      const std::vector<std::size_t> at = places(faulty);
      const std::pair<std::size_t, std::size_t> kinds = std::minmax(kind(at[0]), kind(at[1]));
      const auto [known, fresh] = of_kinds.try_emplace(kinds, 0);
      if (fresh) {
        known->second = log_two(sum, at[0], at[1]);
      }
      out.push_back({std::move(faulty), log_odds(at) + known->second});
    }
  }
  return out;
}

SetSplit SetPrior::split(const Cavity& sum) const {
  std::vector<SetState> single;
  for (const int p : set_.member) {
    single.push_back({{p}, log_weight(sum, {p})});
  }
  SetSplit out{sum, {{{}, log_weight(sum, {})}}, -std::numeric_limits<double>::infinity()};
  for (const std::vector<SetState>& more : {single, pairs(sum, single)}) {
    out.states.insert(out.states.end(), more.begin(), more.end());
  }
  for (std::size_t k = 1; k < out.states.size(); ++k) {
    out.log_any = log_sum(out.log_any, out.states[k].log_weight);
  }
  return out;
}

// What the faulty member's own prior says there, once the readings have shown about where it is.
SetPrior::Moments SetPrior::culprit(const Cavity& sum, std::size_t k) const {
  constexpr double nothing = 1e12;
  const Cavity cavity = cavity_of(k, sum, sum_of({}, k));
  const Tilted here = tilt(unknown(k), unknown(k).fault->prior, cavity);
  const double precision = 1 / here.variance - cavity.precision;
  if (precision * here.variance < 1e-6) {
    return {0, nothing};
  }
  const double mean = (here.mean / here.variance - cavity.precision * cavity.at) / precision;
  return {set_.length[k] * mean, set_.length[k] * set_.length[k] / precision};
}

// A faulty member alone is known by the sum less the others, and what it leaves tells of the sound ones.
std::vector<MemberView> SetPrior::members(const Cavity& sum, const SetState& state) const {
  const std::vector<std::size_t> faulty = places(state.faulty);
  const std::size_t lone = faulty.size() == 1 ? faulty[0] : nobody;
  const Moments taken = lone != nobody ? culprit(sum, lone) : Moments{};
  std::vector<MemberView> out;
  for (std::size_t k = 0; k < set_.member.size(); ++k) {
    const bool bad = std::count(faulty.begin(), faulty.end(), k) > 0;
    Moments others = sum_of(faulty, k);
    if (lone != nobody && !bad) {
      const Moments usual = moments(lone, true);
      others = {others.mean - usual.mean + taken.mean,
                std::max(0.0, others.variance - usual.variance) + taken.variance};
    }
    const Normal& prior = bad ? unknown(k).fault->prior : unknown(k).sound;
    const Tilted here = tilt(unknown(k), prior, cavity_of(k, sum, others));
    out.push_back({here.mean_x, here.variance_x});
  }
  return out;
}

}  // namespace ohmtrail::diagnose::inference
