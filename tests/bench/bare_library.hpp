#pragma once
#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>
#include <vector>

#include "ohmtrail/solve/circuit.hpp"

/// The bare library on the matrix of a circuit: what no solver built on it can beat.
namespace ohmtrail::bench {

struct BareSystem {
  Eigen::SparseMatrix<double> matrix;  ///< lower triangle of the conductance matrix, point 0 left out
  Eigen::VectorXd right;               ///< A that sources and loads bring into each point
};

/// Of resistors, sources with resistance and loads at 12 V.
inline BareSystem bare_system(const solve::Circuit& circuit) {
  BareSystem bare;
  const int unknowns = circuit.points - 1;
  std::vector<Eigen::Triplet<double>> entries;
  bare.right = Eigen::VectorXd::Zero(unknowns);
  const auto inject = [&](int point, double amperes) {
    if (point > 0) bare.right[point - 1] += amperes;
  };
  for (const solve::Branch& branch : circuit.branches) {
    const int a = branch.from - 1, b = branch.to - 1;
    const bool takes = branch.law == solve::Law::current || branch.law == solve::Law::power;
    double amperes = branch.size;
    double conductance = takes ? 0 : 1 / branch.resistance;
    if (branch.law == solve::Law::power) {
      amperes = branch.size / 12;
      conductance = -amperes / 12;
    }
    if (branch.law == solve::Law::source) amperes = -branch.size * conductance;
    if (branch.law != solve::Law::resistor) inject(branch.from, -amperes), inject(branch.to, amperes);
    if (branch.law == solve::Law::current) continue;
    if (a >= 0) entries.emplace_back(a, a, conductance);
    if (b >= 0) entries.emplace_back(b, b, conductance);
    if (a >= 0 && b >= 0) entries.emplace_back(std::max(a, b), std::min(a, b), -conductance);
  }
  bare.matrix.resize(unknowns, unknowns);
  bare.matrix.setFromTriplets(entries.begin(), entries.end());
  return bare;
}

class BareLibrary {
 public:
  explicit BareLibrary(const BareSystem& system) : system_(system) {}

  void order() { ldlt_.analyzePattern(system_.matrix); }
  void factor() { ldlt_.factorize(system_.matrix); }
  void solve() { answer_ = ldlt_.solve(system_.right); }
  [[nodiscard]] const Eigen::VectorXd& answer() const { return answer_; }

 private:
  const BareSystem& system_;
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>, Eigen::Lower> ldlt_;
  Eigen::VectorXd answer_;
};

}  // namespace ohmtrail::bench
