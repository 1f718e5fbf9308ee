#include <algorithm>
#include <optional>

#include "solve/factor.hpp"

// J = L D L'. Of Z = (L D L')⁻¹ the entries at the places of L follow column by column from the last
// (Takahashi, Fagan, Chin 1973; Erisman and Tinney, Communications of the ACM 18, 1975, equations 4 and 5):
//   Z(i, j) = − Σk Z(i, k) L(k, j)  for i > j in column j,   Z(j, j) = 1/D(j) − Σk Z(k, j) L(k, j),
// k over the rows of column j below the diagonal. Every Z(i, k) asked for is at a place of L as well. A
// leaf's column has one row.

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

std::vector<double> Factor::resistance_seen(const BranchEnds& ends,
                                            const std::vector<char>& has_entry) const {
  std::vector<double> diagonal(pivot_.size());
  std::optional<SelectedInverse> core;
  if (core_.cols() > 0) core.emplace(ldlt_.matrixL().nestedExpression(), ldlt_.vectorD());
  const int leaves = static_cast<int>(leaves_);
  for (std::size_t u = pivot_.size(); u-- > 0;) {
    const int place = static_cast<int>(u) - leaves;
    diagonal[u] = place >= 0 ? (*core)(place, place) : 1 / pivot_[u];
    if (place < 0 && inner_[u] >= 0) diagonal[u] += ratio_[u] * ratio_[u] * diagonal[at(inner_[u])];
  }
  std::vector<double> seen(ends.size(), 0.0);
  for (std::size_t b = 0; b < seen.size(); ++b) {
    if (!has_entry[b]) continue;
    const auto [first, last] = std::minmax(ends[b].first, ends[b].second);
    if (last >= 0) seen[b] += diagonal[at(last)];
    if (first < 0) continue;
    const double both =
        first < leaves ? ratio_[at(first)] * diagonal[at(last)] : (*core)(first - leaves, last - leaves);
    seen[b] += diagonal[at(first)] - 2 * both;
  }
  return seen;
}

}  // namespace ohmtrail::solve
