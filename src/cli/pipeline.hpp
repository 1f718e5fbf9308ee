#pragma once
#include <map>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "cli/call.hpp"
#include "cli/doors/doors.hpp"
#include "cli/exit.hpp"
#include "ohmtrail/diagnose/hot_spot.hpp"
#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/netlist/read.hpp"
#include "ohmtrail/solve/case_solution.hpp"

/// The steps that most commands begin with. Each tells what went wrong itself and returns the exit code.
namespace ohmtrail::cli {

/// A file and what it holds.
struct Job {
  std::string path;  ///< as named in the call; "-" is standard input
  netlist::ReadSystem read;
  /// By element and battery id; empty where no readings were used.
  std::map<std::string, double> fault_probability;
  std::map<std::string, diagnose::Unparted> unparted;  ///< the same
  std::string text;                                    ///< the file as it was read
  /// What the readings told and the system as it was written; empty where no readings were used.
  std::optional<diagnose::InferResult> inference;
  std::optional<netlist::System> as_written;
  [[nodiscard]] const netlist::System& system() const { return read.system; }
};

/// Reads and validates; mistakes and warnings go to standard error, one a line.
[[nodiscard]] tl::expected<Job, Exit> read_job(const std::string& path, const Doors& doors);

/// The same with the resistances that the file's readings tell, where it has any and --as-rated does not
/// leave them out.
[[nodiscard]] tl::expected<Job, Exit> read_job_as_found(const Call& call, const Doors& doors);
/// Of a file that is not the call's own.
[[nodiscard]] tl::expected<Job, Exit> read_job_as_found(const std::string& path, const Doors& doors);

using SolvedCases = std::vector<solve::CaseSolution>;

/// How many cases to work on at a time: what --jobs says, else one a processor.
[[nodiscard]] int jobs_of(const Call& call);

/// Builds and solves every case, or the one named `only_case`, `jobs` at a time.
[[nodiscard]] tl::expected<SolvedCases, Exit> solve_cases(const Job& job, const std::string& only_case,
                                                          int jobs, const Doors& doors);

/// True when all the cases have a solution that carries their whole load.
[[nodiscard]] bool all_solved(const SolvedCases& solved);
/// True when every running load is within its limit.
[[nodiscard]] bool all_within(const SolvedCases& solved);

/// no_solution before limit_broken before done; a broken limit counts with --strict only.
[[nodiscard]] Exit exit_of(const Call& call, bool solved, bool within);

/// Writes an output file; complains and returns false when that fails.
[[nodiscard]] bool write_output(const std::string& path, std::string_view bytes, const Doors& doors);

}  // namespace ohmtrail::cli
