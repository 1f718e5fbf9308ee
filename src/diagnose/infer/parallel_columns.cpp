#include "diagnose/infer/parallel_columns.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace ohmtrail::diagnose::inference {
namespace {

// Directions closer than this are one: far below what could move a result, far above the solver's rounding.
constexpr double same_direction = 1e-10;

// Unit columns, turned so that parallel ones have one sign, beside a number that parallel ones share.
struct Directions {
  Eigen::MatrixXd unit;
  Eigen::VectorXd length;  // with the sign that was turned
  Eigen::VectorXd key;
};

Directions directions_of(const Eigen::MatrixXd& matrix) {
  // Any fixed vector without symmetry tells directions apart.
  const Eigen::VectorXd probe = Eigen::VectorXd::NullaryExpr(matrix.rows(), [](Eigen::Index i) {
    return std::sin(1.0 + 1.618033988749895 * static_cast<double>(i));
  });
  Directions out{matrix, matrix.colwise().norm(), Eigen::VectorXd::Zero(matrix.cols())};
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
std::vector<std::vector<int>> groups_of(const Directions& directions) {
  std::vector<int> order(static_cast<std::size_t>(directions.key.size()));
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(),
                   [&](int a, int b) { return directions.key[a] < directions.key[b]; });
  std::vector<std::vector<int>> out;
  for (const int j : order) {
    const bool joins =
        !out.empty() && std::abs(directions.key[j] - directions.key[out.back().front()]) < same_direction &&
        (directions.unit.col(j) - directions.unit.col(out.back().front())).norm() < same_direction;
    joins ? out.back().push_back(j) : out.push_back({j});
  }
  return out;
}

}  // namespace

ParallelColumns merge_parallel(const Eigen::MatrixXd& matrix) {
  const Directions directions = directions_of(matrix);
  const std::vector<std::vector<int>> groups = groups_of(directions);
  ParallelColumns out{Eigen::MatrixXd(matrix.rows(), static_cast<Eigen::Index>(groups.size())),
                      std::vector<int>(static_cast<std::size_t>(matrix.cols())),
                      Eigen::VectorXd(matrix.cols())};
  for (std::size_t g = 0; g < groups.size(); ++g) {
    double square = 0;
    for (const int j : groups[g]) {
      square += directions.length[j] * directions.length[j];
    }
    const double length = std::sqrt(square);
    out.merged.col(static_cast<Eigen::Index>(g)) = length * directions.unit.col(groups[g].front());
    for (const int j : groups[g]) {
      out.group[static_cast<std::size_t>(j)] = static_cast<int>(g);
      out.share[j] = length > 0 ? directions.length[j] / length : 0;
    }
  }
  return out;
}

}  // namespace ohmtrail::diagnose::inference
