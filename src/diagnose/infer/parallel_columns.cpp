#include "diagnose/infer/parallel_columns.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace ohmtrail::diagnose::inference {
namespace {

// Directions closer than this are one: far below what could move a result, far above the solver's rounding.
constexpr double same_direction = 1e-10;

// Unit columns, turned so that parallel ones have one sign, beside a number that parallel ones share.
struct UnitColumns {
  Eigen::MatrixXd unit;
  Eigen::VectorXd length;  // with the sign that was turned
  Eigen::VectorXd key;
};

UnitColumns unit_columns(const Eigen::MatrixXd& matrix) {
  // Any fixed vector without symmetry tells directions apart.
  const Eigen::VectorXd probe = Eigen::VectorXd::NullaryExpr(matrix.rows(), [](Eigen::Index i) {
    return std::sin(1.0 + 1.618033988749895 * static_cast<double>(i));
  });
  UnitColumns out{matrix, matrix.colwise().norm(), Eigen::VectorXd::Zero(matrix.cols())};
  for (Eigen::Index j = 0; j < matrix.cols(); ++j) {
    if (out.length[j] > 0) {
      out.unit.col(j) /= out.length[j];
    }
    out.key[j] = probe.dot(out.unit.col(j));
    if (out.key[j] < 0) {
      out.key[j] = -out.key[j];
      out.length[j] = -out.length[j];
      out.unit.col(j) = -out.unit.col(j);
    }
  }
  return out;
}

// Groups of columns; the first column of each stands for its direction.
std::vector<std::vector<int>> groups_of(const UnitColumns& columns) {
  std::vector<int> order(static_cast<std::size_t>(columns.key.size()));
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return columns.key[a] < columns.key[b]; });
  std::vector<std::vector<int>> out;
  for (const int j : order) {
    const bool joins = !out.empty() &&
                       std::abs(columns.key[j] - columns.key[out.back().front()]) < same_direction &&
                       (columns.unit.col(j) - columns.unit.col(out.back().front())).norm() < same_direction;
    joins ? out.back().push_back(j) : out.push_back({j});
  }
  return out;
}

}  // namespace

ColumnDirections directions_of(const Eigen::MatrixXd& matrix) {
  UnitColumns columns = unit_columns(matrix);
  const std::vector<std::vector<int>> groups = groups_of(columns);
  ColumnDirections out{Eigen::MatrixXd(matrix.rows(), static_cast<Eigen::Index>(groups.size())),
                       std::vector<int>(static_cast<std::size_t>(matrix.cols())), std::move(columns.length)};
  for (std::size_t g = 0; g < groups.size(); ++g) {
    out.unit.col(static_cast<Eigen::Index>(g)) = columns.unit.col(groups[g].front());
    for (const int j : groups[g]) {
      out.group[static_cast<std::size_t>(j)] = static_cast<int>(g);
    }
  }
  return out;
}

ParallelColumns merge_scaled(const ColumnDirections& directions, const Eigen::VectorXd& scale) {
  const Eigen::Index n = scale.size();
  Eigen::VectorXd square = Eigen::VectorXd::Zero(directions.unit.cols());
  ParallelColumns out{{}, directions.group, directions.length.cwiseProduct(scale)};
  for (Eigen::Index j = 0; j < n; ++j) {
    square[out.group[static_cast<std::size_t>(j)]] += out.share[j] * out.share[j];
  }
  const Eigen::VectorXd length = square.cwiseSqrt();
  out.merged = directions.unit * length.asDiagonal();
  for (Eigen::Index j = 0; j < n; ++j) {
    const double whole = length[out.group[static_cast<std::size_t>(j)]];
    out.share[j] = whole > 0 ? out.share[j] / whole : 0;
  }
  return out;
}

ParallelColumns merge_parallel(const Eigen::MatrixXd& matrix) {
  return merge_scaled(directions_of(matrix), Eigen::VectorXd::Ones(matrix.cols()));
}

}  // namespace ohmtrail::diagnose::inference
