#include "cli/commands/survey.hpp"

#include <algorithm>

#include "ohmtrail/diagnose/doubt.hpp"
#include "ohmtrail/diagnose/rank.hpp"
#include "render/report.hpp"

namespace ohmtrail::cli {
namespace {

std::optional<diagnose::Staircase> staircase_in(const netlist::System& system,
                                                const solve::CaseSolution& found, const std::string& load) {
  const auto element = found.network.element(load);
  if (!element) return std::nullopt;
  const auto rated = solve::solve_case(diagnose::as_rated(system, found.network));
  return diagnose::staircase(found, rated ? &*rated : nullptr, *element);
}

}  // namespace

const solve::CaseSolution& Survey::case_to_show() const {
  const auto found = std::find_if(solved.begin(), solved.end(), [&](const solve::CaseSolution& one) {
    return worst && one.network.case_name == worst->in_case;
  });
  return found == solved.end() ? solved.front() : *found;
}

std::optional<diagnose::Staircase> Survey::staircase(const std::string& load) const {
  if (load.empty()) return worst ? staircase_in(system, case_to_show(), worst->load) : std::nullopt;
  if (worst && worst->load == load) return staircase_in(system, case_to_show(), load);
  for (const solve::CaseSolution& one : solved)
    if (auto steps = staircase_in(system, one, load)) return steps;
  return std::nullopt;
}

tl::expected<Survey, Exit> make_survey(const Call& call, const Doors& doors) {
  auto job = read_job_as_found(call, doors);
  if (!job) return tl::unexpected(job.error());
  auto solved = solve_cases(*job, call.text(options::in_case), jobs_of(call), doors);
  if (!solved) return tl::unexpected(solved.error());
  Survey survey;
  if (job->inference) {
    survey.inferred = true;
    survey.losses = diagnose::loss_intervals(*job->as_written, *job->inference);
  }
  survey.as_written = job->as_written ? *job->as_written : job->system();
  survey.system = std::move(job->read.system);
  survey.solved = std::move(*solved);
  diagnose::RankOptions options;
  options.jobs = jobs_of(call);
  options.fault_probability = job->fault_probability;
  options.unparted = job->unparted;
  survey.hot_spots = diagnose::worth_telling(diagnose::rank(survey.system, survey.solved, options),
                                             survey.system.info.nominal);
  for (const solve::CaseSolution& one : survey.solved)
    for (diagnose::SagSplit& split : diagnose::split(one)) survey.splits.push_back(std::move(split));
  const auto worst = render::worst_split(survey.system, survey.solved, survey.splits);
  if (worst) survey.worst = survey.splits[*worst];
  return survey;
}

std::optional<diagnose::Staircase> staircase_to(const netlist::System& system, const std::string& in_case,
                                                const std::string& load) {
  for (const netlist::Case& one : system.cases) {
    if (one.name != in_case) continue;
    const auto solved = solve::solve_case(network::build(system, one));
    return solved ? staircase_in(system, *solved, load) : std::nullopt;
  }
  return std::nullopt;
}

}  // namespace ohmtrail::cli
