#include "cli/pipeline.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <thread>

#include "cli/nearest.hpp"
#include "cli/text/failure.hpp"
#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/diagnose/infer_apply.hpp"
#include "ohmtrail/network/network.hpp"
#include "solve/parallel.hpp"

namespace ohmtrail::cli {
namespace {

/// How a file is called in messages.
std::string shown_name(const std::string& path) {
  return path == "-" ? "standard input" : path;
}

/// The cases asked for, or the exit code after telling that there is no such case.
tl::expected<std::vector<const netlist::Case*>, Exit> chosen_cases(const Job& job,
                                                                   const std::string& only_case,
                                                                   const Doors& doors) {
  std::vector<const netlist::Case*> chosen;
  std::vector<std::string> names;
  for (const netlist::Case& one : job.system().cases) {
    names.push_back(one.name);
    if (only_case.empty() || one.name == only_case) chosen.push_back(&one);
  }
  if (!chosen.empty()) return chosen;
  const std::string near = nearest(only_case, names);
  const std::string hint = near.empty() ? fmt::format("the first one is \"{}\"", names.front())
                                        : fmt::format("did you mean \"{}\"?", near);
  doors.complain(fmt::format("{}: no case is named \"{}\"; {}", shown_name(job.path), only_case, hint));
  return tl::unexpected(Exit::mistake);
}

}  // namespace

tl::expected<Job, Exit> read_job(const std::string& path, const Doors& doors) {
  const auto bytes = doors.files.read(path);
  if (!bytes) {
    doors.complain(fmt::format("{}: {}", shown_name(path), bytes.error()));
    return tl::unexpected(Exit::mistake);
  }
  auto read = netlist::read(*bytes);
  const auto& problems = read ? read->warnings : read.error();
  for (const netlist::Problem& problem : problems) doors.complain(netlist::format(problem, shown_name(path)));
  if (!read) return tl::unexpected(Exit::mistake);
  return Job{path, std::move(*read), {}, {}, *bytes, {}, {}};
}

tl::expected<Job, Exit> read_job_as_found(const Call& call, const Doors& doors) {
  const std::string path = call.text(options::file);
  return call.has(options::as_rated) ? read_job(path, doors) : read_job_as_found(path, doors);
}

tl::expected<Job, Exit> read_job_as_found(const std::string& path, const Doors& doors) {
  auto job = read_job(path, doors);
  if (!job || job->system().readings.empty()) return job;
  const auto inferred = diagnose::infer(job->system());
  if (!inferred) {
    doors.complain(
        fmt::format("{}: the readings were left out: {}", shown_name(job->path), inferred.error().text));
    return job;
  }
  job->as_written = job->system();
  job->read.system = diagnose::with_inferred(job->system(), *inferred);
  job->fault_probability = diagnose::fault_probabilities(*inferred);
  job->unparted = diagnose::unparted(*inferred);
  job->inference = *inferred;
  return job;
}

int jobs_of(const Call& call) {
  if (const auto given = call.number(options::jobs)) return static_cast<int>(*given);
  return static_cast<int>(std::max(std::thread::hardware_concurrency(), 1U));
}

tl::expected<SolvedCases, Exit> solve_cases(const Job& job, const std::string& only_case, int jobs,
                                            const Doors& doors) {
  const auto chosen = chosen_cases(job, only_case, doors);
  if (!chosen) return tl::unexpected(chosen.error());
  std::vector<std::optional<tl::expected<solve::CaseSolution, solve::Failure>>> found(chosen->size());
  solve::in_parallel(chosen->size(), jobs, [&](std::size_t k) {
    found[k] = solve::solve_case(network::build(job.system(), *(*chosen)[k]));
  });
  SolvedCases solved;
  Exit exit = Exit::done;
  for (std::size_t k = 0; k < found.size(); ++k) {
    auto& solution = *found[k];
    if (solution) {
      solved.push_back(std::move(*solution));
      continue;
    }
    const network::Network network = network::build(job.system(), *(*chosen)[k]);
    doors.complain(fmt::format("{}: {}", shown_name(job.path), in_words(solution.error(), network)));
    const bool uncertified = solution.error().kind == solve::Failure::Kind::not_certified;
    exit = std::max(exit, uncertified ? Exit::no_solution : Exit::mistake);
  }
  if (exit != Exit::done) return tl::unexpected(exit);
  return solved;
}

bool all_solved(const SolvedCases& solved) {
  return std::none_of(solved.begin(), solved.end(),
                      [](const solve::CaseSolution& one) { return one.solution.collapse.has_value(); });
}

bool all_within(const SolvedCases& solved) {
  for (const solve::CaseSolution& one : solved)
    for (const solve::LoadResult& load : one.loads)
      if (load.running && !load.within) return false;
  return true;
}

Exit exit_of(const Call& call, bool solved, bool within) {
  if (!solved) return Exit::no_solution;
  return call.has(options::strict) && !within ? Exit::limit_broken : Exit::done;
}

bool write_output(const std::string& path, std::string_view bytes, const Doors& doors) {
  const auto written = doors.files.write(path, bytes);
  if (!written) doors.complain(fmt::format("{}: {}", path, written.error()));
  return written.has_value();
}

}  // namespace ohmtrail::cli
