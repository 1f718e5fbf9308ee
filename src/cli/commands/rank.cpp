#include "ohmtrail/diagnose/rank.hpp"

#include <algorithm>

#include "cli/commands/commands.hpp"
#include "cli/json/common.hpp"
#include "cli/json/rank.hpp"
#include "cli/pipeline.hpp"
#include "cli/text/rank.hpp"

namespace ohmtrail::cli {
namespace {

constexpr Option by{.name = "--by",
                    .value = "volts|heat|temperature",
                    .sentence = "what makes one worse than another (default: volts that come back)"};
constexpr Option top{.name = "--top",
                     .value = "N",
                     .sentence = "the N worst only (default: all; as text the 10 worst that count)",
                     .number = true,
                     .whole = true,
                     .lowest = 1,
                     .highest = 1e9};
constexpr Option between{.name = "--between",
                         .value = "A B",
                         .sentence = "what moves each load's voltage from case A to case B",
                         .values = 2,
                         .excludes = "--case"};

diagnose::RankOptions rank_options(const Call& call) {
  diagnose::RankOptions options;
  const std::string word = call.text(by, "volts");
  if (word == "heat") options.by = diagnose::RankBy::heat;
  if (word == "temperature") options.by = diagnose::RankBy::temperature;
  if (const auto number = call.number(top)) options.top = static_cast<std::size_t>(*number);
  return options;
}

/// The case asked for, both cases of --between, or all of them.
tl::expected<SolvedCases, Exit> cases_asked_for(const Job& job, const Call& call, const Doors& doors) {
  if (!call.has(between)) return solve_cases(job, call.text(options::in_case), jobs_of(call), doors);
  SolvedCases both;
  for (const std::string& name : call.texts(between)) {
    auto one = solve_cases(job, name, jobs_of(call), doors);
    if (!one) return one;
    both.push_back(std::move(one->front()));
  }
  return both;
}

Ranking make_ranking(const Job& job, const SolvedCases& solved, const Call& call) {
  Ranking ranking;
  diagnose::RankOptions options = rank_options(call);
  options.jobs = jobs_of(call);
  options.fault_probability = job.fault_probability;
  options.unparted = job.unparted;
  ranking.hot_spots = diagnose::rank(job.system(), solved, options);
  for (const solve::CaseSolution& one : solved) {
    for (diagnose::SagSplit& split : diagnose::split(one)) ranking.split.push_back(std::move(split));
    for (auto& split : diagnose::charging(job.system(), one)) ranking.charging.push_back(std::move(split));
  }
  if (call.has(between)) ranking.swings = diagnose::swing(job.system(), solved.front(), solved.back());
  ranking.assumptions = assumptions_of(solved);
  return ranking;
}

bool steady(const Ranking& ranking) {
  return !ranking.swings || std::all_of(ranking.swings->begin(), ranking.swings->end(),
                                        [](const diagnose::Swing& swing) { return swing.within; });
}

bool charged(const Ranking& ranking) {
  return std::all_of(ranking.charging.begin(), ranking.charging.end(),
                     [](const diagnose::ChargeSplit& split) { return split.within; });
}

Exit run(const Call& call, const Doors& doors) {
  const auto job = read_job_as_found(call, doors);
  if (!job) return job.error();
  const auto solved = cases_asked_for(*job, call, doors);
  if (!solved) return solved.error();
  const Ranking ranking = make_ranking(*job, *solved, call);

  Sheet sheet(doors.terminal.colour());
  if (call.has(options::json))
    doors.terminal.out(rank_json(job->system(), ranking));
  else if (call.has(options::csv))
    doors.terminal.out(rank_csv(ranking));
  else if (ranking.swings)
    show_swings(sheet, job->system(), *ranking.swings);
  else
    show_ranking(sheet, job->system(), *solved, ranking, call.has(top));
  doors.terminal.out(sheet.text());
  return exit_of(call, all_solved(*solved), all_within(*solved) && steady(ranking) && charged(ranking));
}

}  // namespace

const Command commands::rank{
    .name = "rank",
    .summary = "hot spots, worst first",
    .description =
        "Finds what wastes volts and heat, names the likely cause and the fix, and tells how many volts "
        "come back when that one thing is made good; with a charger running also what is lost between it and "
        "the battery. --between tells why the lights pulse when the "
        "fridge starts.",
    .options = {options::file, options::in_case, by, top, between, options::as_rated, options::strict,
                options::jobs, options::json, options::csv},
    .examples = {"ohmtrail rank boat.json", "ohmtrail rank boat.json --by heat --top 5"},
    .run = run};

}  // namespace ohmtrail::cli
