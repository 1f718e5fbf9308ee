#include "diagnose/infer/parallel_sets.hpp"

#include <algorithm>
#include <map>

#include "diagnose/infer/parallel_columns.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

std::vector<int> resistances_with_a_fault(const Model& model, const Optimum& optimum) {
  std::vector<int> out;
  for (const int p : optimum.columns) {
    const Parameter& unknown = model.parameters[static_cast<std::size_t>(p)];
    if (unknown.fault && unknown.scale == Scale::logarithmic) {
      out.push_back(p);
    }
  }
  return out;
}

}  // namespace

Hypothesis ParallelSets::key(const Hypothesis& hypothesis) const {
  Hypothesis out{{}, hypothesis.wrong};
  for (const int p : hypothesis.faulty) {
    const int set = set_of(p);
    const int stands = set < 0 ? p : sets[static_cast<std::size_t>(set)].member.front();
    if (!out.is_faulty(stands)) {
      out = out.with_toggled_parameter(stands);
    }
  }
  return out;
}

std::vector<int> ParallelSets::faulty_in(int set, const Hypothesis& hypothesis) const {
  std::vector<int> out;
  std::copy_if(hypothesis.faulty.begin(), hypothesis.faulty.end(), std::back_inserter(out),
               [&](int p) { return set_of(p) == set; });
  return out;
}

std::vector<int> ParallelSets::touched(const Hypothesis& hypothesis) const {
  std::vector<int> out;
  for (const int p : hypothesis.faulty) {
    if (set_of(p) >= 0) {
      out.push_back(set_of(p));
    }
  }
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

ParallelSets parallel_sets(const Model& model, const Optimum& optimum) {
  const std::vector<int> candidates = resistances_with_a_fault(model, optimum);
  Eigen::MatrixXd weighted = optimum.near.by_value(Eigen::all, candidates);
  for (Eigen::Index i = 0; i < weighted.rows(); ++i) {
    weighted.row(i) /= model.observations[static_cast<std::size_t>(i)].sigma;
  }
  const ColumnDirections directions = directions_of(weighted);
  // Two that pull opposite ways are no series.
  std::map<std::pair<int, bool>, ParallelSet> found;
  for (std::size_t k = 0; k < candidates.size(); ++k) {
    const double length = directions.length[static_cast<Eigen::Index>(k)];
    if (length != 0) {
      ParallelSet& set = found[{directions.group[k], length > 0}];
      set.member.push_back(candidates[k]);
      set.length.push_back(std::abs(length));
    }
  }
  ParallelSets out;
  out.of.assign(model.parameters.size(), -1);
  for (auto& [direction, set] : found) {
    if (set.member.size() < 2) {
      continue;
    }
    for (std::size_t k = set.length.size(); k-- > 0;) {
      set.length[k] /= set.length.front();
      out.of[static_cast<std::size_t>(set.member[k])] = static_cast<int>(out.sets.size());
    }
    out.sets.push_back(std::move(set));
  }
  return out;
}

}  // namespace ohmtrail::diagnose::inference
