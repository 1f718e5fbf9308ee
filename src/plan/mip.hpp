#pragma once
#include <memory>
#include <optional>
#include <vector>

/// A mixed-integer program in the words of this layer; the kept library behind it is named in mip.cpp alone.
namespace ohmtrail::plan {

struct Term {
  int column;
  double factor;
};

struct MipSolution {
  enum class Status { optimal, stopped, infeasible } status = Status::infeasible;
  std::vector<double> value;  ///< per column; empty where no solution was found
  double objective = 0;
  double bound = 0;  ///< no solution is below
};

class Mip {
 public:
  Mip();
  ~Mip();
  Mip(Mip&&) noexcept;
  Mip& operator=(Mip&&) noexcept;

  /// Both return the column's index.
  int add_binary(double cost);
  int add_continuous(double lowest, double highest, double cost = 0);
  void fix(int column, double value);

  /// lowest ≤ Σ factor · column ≤ highest; use ±infinity for a missing side.
  void add_row(const std::vector<Term>& terms, double lowest, double highest);

  /// Minimises. `cutoff`: solutions of at least this cost are not wanted.
  [[nodiscard]] MipSolution solve(double seconds, std::optional<double> cutoff = {}) const;

  /// The linear relaxation: value and reduced cost per column; empty where it is infeasible.
  struct Relaxation {
    double objective = 0;
    std::vector<double> value, reduced_cost;
  };
  [[nodiscard]] std::optional<Relaxation> relax() const;

 private:
  struct Model;
  std::unique_ptr<Model> model_;
};

}  // namespace ohmtrail::plan
