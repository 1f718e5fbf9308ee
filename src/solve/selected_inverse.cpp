#include <algorithm>

#include "solve/jacobian.hpp"

// J = L D L'. Of Z = (L D L')⁻¹ the entries at the places of L follow column by column from the last
// (Takahashi, Fagan, Chin 1973; Erisman and Tinney, Communications of the ACM 18, 1975, equations 4 and 5):
//   Z(i, j) = − Σk Z(i, k) L(k, j)  for i > j in column j,   Z(j, j) = 1/D(j) − Σk Z(k, j) L(k, j),
// k over the rows of column j below the diagonal. Every Z(i, k) asked for is at a place of L as well.

namespace ohmtrail::solve {

namespace {

std::size_t at(Eigen::Index index) {
  return static_cast<std::size_t>(index);
}

class SelectedInverse {
 public:
  template <class Lower, class Pivots>
  SelectedInverse(const Lower& lower, const Pivots& pivots)
      : start_(lower.outerIndexPtr()),
        row_(lower.innerIndexPtr()),
        below_(at(lower.nonZeros())),
        diagonal_(at(lower.cols())) {
    for (int j = static_cast<int>(lower.cols()) - 1; j >= 0; --j) fill_column(j, lower.valuePtr(), pivots[j]);
  }

  [[nodiscard]] double operator()(int i, int j) const {
    return i == j ? diagonal_[at(i)] : below_[place(i, j)];
  }

 private:
  [[nodiscard]] std::size_t place(int i, int j) const {
    const int column = std::min(i, j);
    const int* first = row_ + start_[column];
    const int* last = row_ + start_[column + 1];
    return at(std::lower_bound(first, last, std::max(i, j)) - row_);
  }

  void fill_column(int j, const double* factor, double pivot) {
    for (int a = start_[j]; a < start_[j + 1]; ++a) {
      double sum = 0;
      for (int k = start_[j]; k < start_[j + 1]; ++k) sum += (*this)(row_[a], row_[k]) * factor[k];
      below_[at(a)] = -sum;
    }
    double sum = 0;
    for (int k = start_[j]; k < start_[j + 1]; ++k) sum += below_[at(k)] * factor[k];
    diagonal_[at(j)] = 1 / pivot - sum;
  }

  const int *start_, *row_;
  std::vector<double> below_;  ///< at the places of L
  std::vector<double> diagonal_;
};

}  // namespace

std::vector<double> Jacobian::resistance_seen() const {
  std::vector<double> seen(ends_.size(), 0.0);
  if (unknowns_ == 0) return seen;
  const SelectedInverse inverse(ldlt_.matrixL().nestedExpression(), ldlt_.vectorD());
  for (std::size_t b = 0; b < seen.size(); ++b) {
    if (!has_entry_[b]) continue;
    const auto [from, to] = ends_[b];
    if (from >= 0) seen[b] += inverse(from, from);
    if (to >= 0) seen[b] += inverse(to, to);
    if (from >= 0 && to >= 0) seen[b] -= 2 * inverse(from, to);
  }
  return seen;
}

}  // namespace ohmtrail::solve
