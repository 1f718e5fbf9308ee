#include "diagnose/infer/groups.hpp"

#include <Eigen/SVD>
#include <algorithm>
#include <cmath>
#include <limits>

#include "diagnose/infer/together.hpp"
#include "solve/partition.hpp"
#include "units/index.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

// Singular values of unit columns below this share of the largest: what is left of them is rounding of the
// solver.
constexpr double rank_tolerance = 1e-7;
// Entries of the null space's projector below this do not tie two columns together.
constexpr double tie_tolerance = 1e-5;

struct UnitColumns {
  Eigen::MatrixXd matrix;
  std::vector<int> column;  // of the matrix given
};

UnitColumns unit_columns(const Eigen::MatrixXd& jacobian) {
  UnitColumns out;
  const double largest = jacobian.size() > 0 ? jacobian.colwise().norm().maxCoeff() : 0;
  for (Eigen::Index j = 0; j < jacobian.cols(); ++j) {
    if (jacobian.col(j).norm() > 1e-9 * largest) {
      out.column.push_back(static_cast<int>(j));
    }
  }
  out.matrix.resize(jacobian.rows(), static_cast<Eigen::Index>(out.column.size()));
  for (std::size_t k = 0; k < out.column.size(); ++k) {
    out.matrix.col(static_cast<Eigen::Index>(k)) = jacobian.col(out.column[k]).normalized();
  }
  return out;
}

// I − V Vᵀ over the right singular vectors that the readings determine.
Eigen::MatrixXd null_projector(const Eigen::MatrixXd& matrix) {
  const Eigen::BDCSVD<Eigen::MatrixXd> svd(matrix, Eigen::ComputeThinV);
  const Eigen::VectorXd& values = svd.singularValues();
  const Eigen::Index rank = (values.array() > rank_tolerance * values[0]).count();
  const auto determined = svd.matrixV().leftCols(rank);
  return Eigen::MatrixXd::Identity(matrix.cols(), matrix.cols()) - determined * determined.transpose();
}

std::vector<std::vector<int>> connected(const Eigen::MatrixXd& projector) {
  const auto count = static_cast<int>(projector.cols());
  solve::Partition partition(count);
  for (int i = 0; i < count; ++i) {
    for (int j = i + 1; j < count; ++j) {
      if (std::abs(projector(i, j)) > tie_tolerance) {
        partition.join(i, j);
      }
    }
  }
  std::vector<std::vector<int>> out(static_cast<std::size_t>(count));
  for (int k = 0; k < count; ++k) {
    out[at(partition.find(k))].push_back(k);
  }
  std::erase_if(out, [](const auto& set) { return set.size() < 2; });
  return out;
}

// The unknowns that a reading could tell apart: resistances of elements and batteries, open-circuit voltages.
std::vector<int> candidates(const Model& model) {
  std::vector<int> out;
  for (std::size_t p = 0; p < model.parameters.size(); ++p) {
    const Kind kind = model.parameters[p].kind;
    if (kind == Kind::element || kind == Kind::battery_resistance || kind == Kind::emf) {
      out.push_back(static_cast<int>(p));
    }
  }
  return out;
}

Eigen::MatrixXd weighted_jacobian(const Posterior& posterior, const std::vector<int>& columns) {
  const Optimum& best = posterior.components.front().optimum;
  Eigen::MatrixXd out(best.near.by_value.rows(), static_cast<Eigen::Index>(columns.size()));
  for (std::size_t k = 0; k < columns.size(); ++k) {
    // Ohm for ohm as they are at work: a warm wire has more than its unknown says.
    out.col(static_cast<Eigen::Index>(k)) =
        best.near.by_value.col(columns[k]) /
        posterior.survey.display_factor[static_cast<std::size_t>(columns[k])];
  }
  for (Eigen::Index i = 0; i < out.rows(); ++i) {
    out.row(i) /= posterior.model().observations[static_cast<std::size_t>(i)].sigma;
  }
  return out;
}

// Elements in series have the same effect on every reading, ohm for ohm.
bool in_series(const Eigen::MatrixXd& jacobian, const std::vector<int>& set) {
  const Eigen::VectorXd first = jacobian.col(set.front());
  return std::all_of(set.begin(), set.end(), [&](int k) {
    const Eigen::VectorXd other = jacobian.col(k);
    return std::min((other - first).norm(), (other + first).norm()) < 1e-5 * first.norm();
  });
}

// Inner points of the group: where one member ends and the next begins.
void describe_separation(const Posterior& posterior, const std::vector<int>& members,
                         UnresolvedGroup& group) {
  const network::Network& network = posterior.survey.networks.front();
  for (const int p : members) {
    const auto element = network.element(posterior.model().parameters[static_cast<std::size_t>(p)].id);
    if (element && group.separate_at.size() + 1 < members.size()) {
      const network::Element& e = network.elements[static_cast<std::size_t>(*element)];
      group.separate_at.emplace_back(network.points[static_cast<std::size_t>(e.from)],
                                     network.points[static_cast<std::size_t>(e.to)]);
    }
  }
}

}  // namespace

std::vector<std::vector<int>> unresolved_sets(const Eigen::MatrixXd& jacobian) {
  const UnitColumns unit = unit_columns(jacobian);
  if (unit.column.size() < 2) {
    return {};
  }
  std::vector<std::vector<int>> out = connected(null_projector(unit.matrix));
  for (std::vector<int>& set : out) {
    for (int& k : set) {
      k = unit.column[static_cast<std::size_t>(k)];
    }
  }
  return out;
}

std::vector<UnresolvedGroup> describe_groups(const Posterior& posterior) {
  const std::vector<int> columns = candidates(posterior.model());
  const Eigen::MatrixXd jacobian = weighted_jacobian(posterior, columns);
  const Together together(posterior);
  std::vector<UnresolvedGroup> out;
  for (const std::vector<int>& set : unresolved_sets(jacobian)) {
    std::vector<int> members;
    bool resistances = true;
    UnresolvedGroup group;
    group.sum = group.low = group.high = std::numeric_limits<double>::quiet_NaN();
    for (const int k : set) {
      members.push_back(columns[static_cast<std::size_t>(k)]);
      const Parameter& unknown = posterior.model().parameters[static_cast<std::size_t>(members.back())];
      resistances = resistances && unknown.kind != Kind::emf;
      if (group.ids.empty() || group.ids.back() != unknown.id) {
        group.ids.push_back(unknown.id);
      }
    }
    if (group.ids.size() < 2) {
      continue;
    }
    if (resistances && in_series(jacobian, set)) {
      const Spread ohms = together.sum(members);
      group.sum = ohms.median;
      group.low = ohms.low;
      group.high = ohms.high;
    }
    group.fault_probability = together.any_faulty(members);
    describe_separation(posterior, members, group);
    out.push_back(std::move(group));
  }
  return out;
}

}  // namespace ohmtrail::diagnose::inference
