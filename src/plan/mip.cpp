#include "plan/mip.hpp"

#include <algorithm>
#include <cmath>
#include <coin/CbcModel.hpp>
#include <coin/CbcSolver.hpp>
#include <coin/CoinPackedMatrix.hpp>
#include <coin/OsiClpSolverInterface.hpp>
#include <string>

namespace ohmtrail::plan {

/// Columns and rows as they were added; the library's model is made from them at each solve, since cuts come
/// between solves and its own incremental interface does not keep presolved models.
struct Mip::Model {
  std::vector<double> lowest, highest, cost;
  std::vector<bool> integer;
  std::vector<std::vector<Term>> rows;
  std::vector<double> row_lowest, row_highest;

  int add_column(double low, double high, double price, bool is_integer) {
    lowest.push_back(low);
    highest.push_back(high);
    cost.push_back(price);
    integer.push_back(is_integer);
    return static_cast<int>(cost.size()) - 1;
  }

  void load(OsiClpSolverInterface& solver) const {
    solver.messageHandler()->setLogLevel(0);
    solver.setHintParam(OsiDoReducePrint, true);
    CoinPackedMatrix matrix(false, 0, 0);
    matrix.setDimensions(0, static_cast<int>(cost.size()));
    for (const auto& row : rows) {
      CoinPackedVector packed;
      for (const Term& term : row) packed.insert(term.column, term.factor);
      matrix.appendRow(packed);
    }
    solver.loadProblem(matrix, lowest.data(), highest.data(), cost.data(), row_lowest.data(),
                       row_highest.data());
  }
};

Mip::Mip() : model_(std::make_unique<Model>()) {}
Mip::~Mip() = default;
Mip::Mip(Mip&&) noexcept = default;
Mip& Mip::operator=(Mip&&) noexcept = default;

int Mip::add_binary(double cost) {
  return model_->add_column(0, 1, cost, true);
}

int Mip::add_continuous(double lowest, double highest, double cost) {
  return model_->add_column(lowest, highest, cost, false);
}

void Mip::fix(int column, double value) {
  model_->lowest[static_cast<std::size_t>(column)] = value;
  model_->highest[static_cast<std::size_t>(column)] = value;
}

void Mip::add_row(const std::vector<Term>& terms, double lowest, double highest) {
  model_->rows.push_back(terms);
  model_->row_lowest.push_back(std::max(lowest, -COIN_DBL_MAX));
  model_->row_highest.push_back(std::min(highest, COIN_DBL_MAX));
}

MipSolution Mip::solve(double seconds, std::optional<double> cutoff) const {
  OsiClpSolverInterface solver;
  model_->load(solver);
  for (std::size_t j = 0; j < model_->integer.size(); ++j)
    if (model_->integer[j]) solver.setInteger(static_cast<int>(j));

  CbcModel search(solver);
  CbcMain0(search);
  search.setLogLevel(0);
  if (cutoff) search.setCutoff(*cutoff);
  // A gap of zero: a proof is wanted, not a good guess.
  const std::string time = std::to_string(std::max(seconds, 0.01));
  const char* words[] = {"size",   "-log", "0",      "-timeM", "elapsed", "-sec", time.c_str(),
                         "-ratio", "0",    "-allow", "0",      "-solve",  "-quit"};
  CbcMain1(static_cast<int>(std::size(words)), words, search);

  MipSolution found;
  if (search.bestSolution() != nullptr) {
    found.value.assign(search.bestSolution(), search.bestSolution() + search.getNumCols());
    found.objective = search.getObjValue();
  }
  found.bound = search.getBestPossibleObjValue();
  if (search.isProvenOptimal())
    found.status = MipSolution::Status::optimal;
  else if (search.isProvenInfeasible())
    found.status = MipSolution::Status::infeasible;
  else
    found.status = MipSolution::Status::stopped;
  return found;
}

std::optional<Mip::Relaxation> Mip::relax() const {
  OsiClpSolverInterface solver;
  model_->load(solver);
  solver.initialSolve();
  if (!solver.isProvenOptimal()) return std::nullopt;
  const auto columns = static_cast<std::size_t>(solver.getNumCols());
  Relaxation relaxation;
  relaxation.objective = solver.getObjValue();
  relaxation.value.assign(solver.getColSolution(), solver.getColSolution() + columns);
  relaxation.reduced_cost.assign(solver.getReducedCost(), solver.getReducedCost() + columns);
  return relaxation;
}

}  // namespace ohmtrail::plan
