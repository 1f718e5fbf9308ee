#include "diagnose/infer/screen.hpp"

#include <algorithm>
#include <cmath>

namespace ohmtrail::diagnose::inference {
namespace {

constexpr double log_two_pi = 1.8378770664093453;

// An error in units of its standard deviation, when the reading is right.
const Parameter& unit_error() {
  static const Parameter parameter{Kind::zero, Scale::linear, 0, {0, 1}, {}, {}, -1, -1};
  return parameter;
}

}  // namespace

Screen::Screen(const Model& model, const Optimum& optimum)
    : model_(model), optimum_(optimum), loading_(optimum.fit.basis), wrong_row_(optimum.residual.size(), -1) {
  const Eigen::Index m = optimum.residual.size(), c = static_cast<Eigen::Index>(optimum.columns.size());
  mean_ = optimum.fit.mean;
  offset_ = Eigen::VectorXd::Zero(m + c);
  scale_ = Eigen::VectorXd::Ones(m + c);
  for (Eigen::Index k = 0; k < c; ++k) {
    const int p = parameter(static_cast<int>(m + k));
    const Parameter& unknown = model.parameters[static_cast<std::size_t>(p)];
    const Normal& prior = prior_of(model, optimum.hypothesis, p);
    scale_[m + k] = unknown.slope(optimum.x[p]) * prior.sd;
    offset_[m + k] = unknown.value(optimum.x[p]) - scale_[m + k] * (optimum.x[p] - prior.mean) / prior.sd;
  }
  variance_ = Eigen::VectorXd::Ones(m + c) - loading_.rowwise().squaredNorm();
  wrong_.resize(static_cast<Eigen::Index>(optimum.hypothesis.wrong.size()), c);
  for (std::size_t w = 0; w < optimum.hypothesis.wrong.size(); ++w) {
    const Eigen::Index i = optimum.hypothesis.wrong[w], row = static_cast<Eigen::Index>(w);
    const double sigma = model.observations[static_cast<std::size_t>(i)].sigma;
    for (Eigen::Index k = 0; k < c; ++k) {
      wrong_(row, k) = optimum.near.by_value(i, parameter(static_cast<int>(m + k))) * scale_[m + k] / sigma;
    }
    wrong_row_[static_cast<std::size_t>(i)] = static_cast<int>(w);
    loading_.row(i) = -wrong_.row(row) * optimum.fit.basis.bottomRows(c);
    mean_[i] = optimum.residual[i];
    variance_[i] = wrong_.row(row).squaredNorm() - loading_.row(i).squaredNorm();
  }
  variance_ = variance_.cwiseMax(least_variance);
  log_weight_ = evidence();
}

Eigen::VectorXd Screen::covariance(const Belief& belief, int coordinate) const {
  const Eigen::Index m = observations(), c = variance_.size() - m;
  Eigen::VectorXd out = -(loading_ * loading_.row(coordinate).transpose());
  const int own = is_error(coordinate) ? wrong_row_[static_cast<std::size_t>(coordinate)] : -1;
  if (own < 0) {
    out[coordinate] += 1;
  } else {
    out.tail(c) -= wrong_.row(own).transpose();
  }
  for (std::size_t w = 0; w < optimum_.hypothesis.wrong.size(); ++w) {
    const Eigen::Index i = optimum_.hypothesis.wrong[w], row = static_cast<Eigen::Index>(w);
    if (own >= 0) {
      out[i] += wrong_.row(row).dot(wrong_.row(own));
    } else if (!is_error(coordinate)) {
      out[i] -= wrong_(row, coordinate - m);
    }
  }
  out[coordinate] = std::max(out[coordinate], least_variance);
  for (const auto& [factor, direction] : belief.updates) {
    out += factor * direction[coordinate] * direction;
  }
  return out;
}

// The coordinate's own factor in units of its prior at the optimum.
Site Screen::site(const Belief& belief, int coordinate) const {
  const auto changed = belief.sites.find(coordinate);
  if (changed != belief.sites.end()) {
    return changed->second;
  }
  const bool left_out = is_error(coordinate) && wrong_row_[static_cast<std::size_t>(coordinate)] >= 0;
  return {0, left_out ? 0.0 : 1.0, -0.5 * log_two_pi};
}

double Screen::log_integral_of_site(const Belief& belief, int coordinate, const Cavity& cavity) const {
  const Site own = site(belief, coordinate);
  const double scale = scale_[coordinate], precision = cavity.precision * scale * scale;
  if (precision <= 0 || own.precision + precision <= 0) {
    return 0;
  }
  return log_integral(own, (cavity.at - offset_[coordinate]) / scale, precision);
}

Cavity Screen::cavity(const Belief& belief, int coordinate) const {
  const Site site = this->site(belief, coordinate);
  const double variance = belief.variance[coordinate];
  const double precision = 1 / variance - site.precision;
  // Below a millionth of the whole the difference may be rounding: nothing but its own prior is known of it.
  if (precision * variance < 1e-6) {
    return {};
  }
  const double z = (belief.mean[coordinate] / variance - site.precision * site.at) / precision;
  const double scale = scale_[coordinate];
  return {offset_[coordinate] + scale * z, precision / (scale * scale)};
}

int Screen::coordinate_of(int parameter) const {
  const std::vector<int>& columns = optimum_.columns;
  const auto place = std::lower_bound(columns.begin(), columns.end(), parameter);
  return place != columns.end() && *place == parameter
             ? observations() + static_cast<int>(place - columns.begin())
             : -1;
}

Cavity Screen::cavity_of_sum(const Belief& belief, const ParallelSet& set) const {
  Eigen::VectorXd along = Eigen::VectorXd::Zero(belief.mean.size());
  double mean = 0, own_mean = 0, own_variance = 0;
  for (std::size_t k = 0; k < set.member.size(); ++k) {
    const int at = coordinate_of(set.member[k]);
    if (at < 0) {
      return {};
    }
    const Site site = this->site(belief, at);
    along[at] = set.length[k] * scale_[at];
    mean += set.length[k] * offset_[at] + along[at] * belief.mean[at];
    own_mean += set.length[k] * offset_[at] + along[at] * site.at;
    own_variance += along[at] * along[at] / std::max(site.precision, 1e-12);
  }
  double variance = along.squaredNorm() - (loading_.transpose() * along).squaredNorm();
  for (const auto& [factor, direction] : belief.updates) {
    variance += factor * std::pow(direction.dot(along), 2);
  }
  variance = std::max(variance, least_variance * along.squaredNorm());
  const double precision = 1 / variance - 1 / own_variance;
  if (precision * variance < 1e-6) {
    return {};
  }
  return {(mean / variance - own_mean / own_variance) / precision, precision};
}

Tilted Screen::tilt_as(const Hypothesis& hypothesis, int coordinate, const Cavity& cavity) const {
  if (is_error(coordinate)) {
    return hypothesis.is_wrong(coordinate) ? tilt_wrong(cavity)
                                           : tilt(unit_error(), unit_error().sound, cavity);
  }
  const int p = parameter(coordinate);
  return tilt(model_.parameters[static_cast<std::size_t>(p)], prior_of(model_, hypothesis, p), cavity);
}

// How much the exact one-dimensional integral exceeds the Gaussian one that the optimum took.
double Screen::correction(const Belief& belief, int coordinate) const {
  const Cavity cavity = this->cavity(belief, coordinate);
  if (is_error(coordinate)) {
    const double log_sigma = std::log(model_.observations[static_cast<std::size_t>(coordinate)].sigma);
    return tilt_wrong(cavity).log_integral + 0.5 * std::log(std::max(cavity.precision, 1e-16)) -
           0.5 * log_two_pi - log_sigma;
  }
  const double scale = scale_[coordinate], precision = cavity.precision * scale * scale;
  const double z = (cavity.at - offset_[coordinate]) / scale;
  const double gaussian = -0.5 * std::log1p(precision) - 0.5 * precision * z * z / (1 + precision);
  // About an optimum the two differ by a little curvature; more is a sign that a hopeless fit has not
  // settled.
  constexpr double most = 2;
  return cavity.precision > 0
             ? std::clamp(tilt_as(belief.hypothesis, coordinate, cavity).log_integral - gaussian, -most, most)
             : 0;
}

double Screen::evidence() const {
  Belief here;
  here.hypothesis = optimum_.hypothesis;
  here.mean = mean_;
  here.variance = variance_;
  double sum = optimum_.log_density + log_prior_odds(model_, optimum_.hypothesis);
  for (const int i : optimum_.hypothesis.wrong) {
    sum += correction(here, i);
  }
  for (int k = observations(); k < static_cast<int>(mean_.size()); ++k) {
    if (model_.parameters[static_cast<std::size_t>(parameter(k))].fault) {
      sum += correction(here, k);
    }
  }
  return sum;
}

Belief Screen::root() const {
  return {optimum_.hypothesis, log_weight_, log_weight_, mean_, variance_, {}, {}, false};
}

Hypothesis Screen::hypothesis_after(const Hypothesis& hypothesis, int coordinate) const {
  return is_error(coordinate) ? hypothesis.with_toggled_observation(coordinate)
                              : hypothesis.with_toggled_parameter(parameter(coordinate));
}

double Screen::log_prior_change(const Hypothesis& hypothesis, int coordinate) const {
  if (is_error(coordinate)) {
    const double odds = model_.observations[static_cast<std::size_t>(coordinate)].wrong_log_odds;
    return hypothesis.is_wrong(coordinate) ? -odds : odds;
  }
  const int p = parameter(coordinate);
  const double odds = model_.parameters[static_cast<std::size_t>(p)].fault->log_odds;
  return hypothesis.is_faulty(p) ? -odds : odds;
}

// A fault taken away although the readings cry for it: where prior and readings meet is far out on the tail
// of either, and a factor fitted there would be useless as soon as another fault takes over. The prior's own
// Gaussian is kept, which is far too narrow there: it says nothing of how probable that hypothesis is itself.
Tilted Screen::tilt_sound_anyway(int coordinate, const Cavity& cavity) const {
  const Parameter& unknown = model_.parameters[static_cast<std::size_t>(parameter(coordinate))];
  const Tilted alone = tilt(unknown, unknown.sound, {});
  const double spread = 1 + alone.variance * cavity.precision, shift = cavity.at - alone.mean;
  Tilted out = alone;
  out.log_integral = -0.5 * std::log(spread) - 0.5 * cavity.precision * shift * shift / spread;
  out.variance = alone.variance / spread;
  out.mean = alone.mean + out.variance * cavity.precision * shift;
  return out;
}

bool Screen::can_change(int coordinate) const {
  return is_error(coordinate) ||
         model_.parameters[static_cast<std::size_t>(parameter(coordinate))].fault.has_value();
}

bool Screen::in_its_other_state(const Hypothesis& hypothesis, int coordinate) const {
  return is_error(coordinate) ? hypothesis.is_wrong(coordinate) : hypothesis.is_faulty(parameter(coordinate));
}

Move Screen::move_at(const Belief& belief, int coordinate, const Cavity& cavity) const {
  Move move;
  move.coordinate = coordinate;
  move.cavity = cavity;
  move.other_state = in_its_other_state(belief.hypothesis, coordinate);
  move.present = tilt_as(belief.hypothesis, coordinate, cavity);
  move.changed = tilt_as(hypothesis_after(belief.hypothesis, coordinate), coordinate, cavity);
  constexpr double cries = -8;
  move.strains = move.other_state && move.changed.log_integral < cries;
  if (move.strains && !is_error(coordinate)) {
    move.kept = tilt_sound_anyway(coordinate, cavity);
  }
  if (belief.strained && !is_error(coordinate)) {
    move.present.log_integral = log_integral_of_site(belief, coordinate, cavity);
  }
  move.log_ratio =
      log_prior_change(belief.hypothesis, coordinate) + move.changed.log_integral - move.present.log_integral;
  return move;
}

std::vector<Move> Screen::moves(const Belief& belief, const std::vector<Move>* alike) const {
  std::vector<Move> out;
  out.reserve(static_cast<std::size_t>(belief.mean.size()));
  for (int k = 0; k < static_cast<int>(belief.mean.size()); ++k) {
    if (!can_change(k)) {
      continue;
    }
    const Cavity here = cavity(belief, k);
    const Move* other = alike != nullptr ? &(*alike)[out.size()] : nullptr;
    const bool same = other != nullptr && !belief.strained &&
                      other->other_state == in_its_other_state(belief.hypothesis, k) &&
                      nearly_equal(other->cavity, here);
    out.push_back(same ? *other : move_at(belief, k, here));
  }
  return out;
}

}  // namespace ohmtrail::diagnose::inference
