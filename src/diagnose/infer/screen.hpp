#pragma once
#include <Eigen/Core>
#include <map>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "diagnose/infer/optimum.hpp"
#include "diagnose/infer/parallel_sets.hpp"
#include "diagnose/infer/site.hpp"
#include "diagnose/infer/tilted.hpp"

/// Cheap evidence for the neighbours of one hypothesis.
///
/// Around an optimum the readings are linear in the values, and everything but one coordinate (an unknown or
/// the error of a reading) can be integrated out in closed form: what is left is its cavity. Making that one
/// coordinate faulty, sound, wrong or right is then a one-dimensional integral, done exactly; the others
/// follow through their covariance with it (a rank-one change). Chains of such moves reach any hypothesis;
/// only the best are later optimised themselves.
namespace ohmtrail::diagnose::inference {

/// A hypothesis with the Gaussian that goes with it, as changes to the Gaussian at the optimum.
struct Belief {
  Hypothesis hypothesis;
  double log_weight = 0;     ///< ln of prior odds × evidence, up to a constant of the whole inference
  double log_base = 0;       ///< the same by the factors kept: what further moves are counted from
  Eigen::VectorXd mean;      ///< m + c
  Eigen::VectorXd variance;  ///< m + c
  std::vector<std::pair<double, Eigen::VectorXd>> updates;  ///< covariance = that of the optimum + Σ a u uᵀ
  std::map<int, Site> sites;  ///< coordinates whose own factor is no longer the optimum's
  /// A fault that the readings cry for was taken away: until another takes over, only the Gaussian can be
  /// trusted.
  bool strained = false;
};

/// One coordinate put into its other state.
struct Move {
  int coordinate = 0;
  bool other_state = false;  ///< it is faulty or wrong now
  bool strains = false;      ///< it takes a fault away that the readings cry for
  double log_ratio = 0;      ///< ln of the odds of the changed hypothesis against the present one
  Cavity cavity;             ///< of the coordinate's value
  Tilted present, changed;
  std::optional<Tilted> kept{};  ///< where it strains: by the factor that is kept from there on
};

class Screen {
 public:
  /// Both must outlive it.
  Screen(const Model& model, const Optimum& optimum);

  [[nodiscard]] Belief root() const;
  /// Every coordinate that has another state. `alike`, the moves of another belief of this screen, is copied
  /// from where the readings say the same of a coordinate in the same state.
  [[nodiscard]] std::vector<Move> moves(const Belief& belief, const std::vector<Move>* alike = nullptr) const;
  [[nodiscard]] Belief after(const Belief& belief, const Move& move) const;
  [[nodiscard]] Hypothesis hypothesis_after(const Hypothesis& hypothesis, int coordinate) const;
  /// A start for an optimisation: x of all unknowns.
  [[nodiscard]] Eigen::VectorXd start(const Belief& belief) const;

  [[nodiscard]] int observations() const { return static_cast<int>(optimum_.residual.size()); }
  [[nodiscard]] bool is_error(int coordinate) const { return coordinate < observations(); }
  /// The unknown behind a coordinate that is not an error.
  [[nodiscard]] int parameter(int coordinate) const {
    return optimum_.columns[static_cast<std::size_t>(coordinate - observations())];
  }
  [[nodiscard]] const Optimum& optimum() const { return optimum_; }
  /// The coordinate of an unknown; −1: no reading informs it.
  [[nodiscard]] int coordinate_of(int parameter) const;

  /// The coordinate's own factor taken out.
  [[nodiscard]] Cavity cavity(const Belief& belief, int coordinate) const;
  /// What all but their own factors say of the sum of length · value over a set of unknowns.
  [[nodiscard]] Cavity cavity_of_sum(const Belief& belief, const ParallelSet& set) const;
  /// Covariance of one coordinate with all.
  [[nodiscard]] Eigen::VectorXd covariance(const Belief& belief, int coordinate) const;

  /// What the coordinate looks like under the hypothesis: prior × cavity.
  [[nodiscard]] Tilted tilt_as(const Hypothesis& hypothesis, int coordinate, const Cavity& cavity) const;

 private:
  [[nodiscard]] double evidence() const;
  [[nodiscard]] Site site(const Belief& belief, int coordinate) const;
  [[nodiscard]] double log_integral_of_site(const Belief& belief, int coordinate, const Cavity& cavity) const;
  [[nodiscard]] Move move_at(const Belief& belief, int coordinate, const Cavity& cavity) const;
  [[nodiscard]] bool can_change(int coordinate) const;
  [[nodiscard]] bool in_its_other_state(const Hypothesis& hypothesis, int coordinate) const;
  [[nodiscard]] Tilted tilt_sound_anyway(int coordinate, const Cavity& cavity) const;
  void replace_factor(Belief& belief, int k, const Cavity& cavity, const Tilted& moments) const;
  [[nodiscard]] int most_negative(const Belief& belief, const std::set<int>& settled) const;
  void settle(Belief& belief) const;
  [[nodiscard]] double correction(const Belief& belief, int coordinate) const;
  [[nodiscard]] double log_prior_change(const Hypothesis& hypothesis, int coordinate) const;

  const Model& model_;
  const Optimum& optimum_;
  Eigen::MatrixXd loading_;  ///< (m + c) × m: rows q of the covariance I − q qᵀ
  Eigen::MatrixXd wrong_;    ///< wrong × c: sensitivities of the wrong observations, which the fit left out
  std::vector<int> wrong_row_;      ///< m: row of wrong_, −1: right
  Eigen::VectorXd offset_, scale_;  ///< m + c: value = offset + scale · coordinate
  Eigen::VectorXd mean_, variance_;
  double log_weight_ = 0;  ///< of the optimum
};

}  // namespace ohmtrail::diagnose::inference
