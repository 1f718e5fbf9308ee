#include "ohmtrail/plan/size.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "plan/assess.hpp"
#include "plan/search.hpp"
#include "plan/size_result.hpp"

namespace ohmtrail::plan {

namespace {

std::optional<std::string> unknown_run(const netlist::System& system, const std::vector<std::string>& only) {
  for (const auto& id : only) {
    const bool known =
        std::any_of(system.runs.begin(), system.runs.end(), [&](const auto& run) { return run.id == id; });
    if (!known) return "there is no run named \"" + id + "\"";
  }
  return std::nullopt;
}

Design thickest(const DesignSpace& space) {
  Design design;
  for (const RunSpace& run : space.runs) design.push_back(static_cast<int>(run.candidates.size()) - 1);
  return design;
}

std::vector<Guards> guards_of(const DesignSpace& space) {
  std::vector<Guards> guards;
  for (const CaseSpace& in_case : space.cases) guards.push_back(find_guards(space.system, in_case.network));
  return guards;
}

/// Every case as radial, or none.
std::optional<std::vector<RadialCase>> all_radial(const DesignSpace& space,
                                                  const std::vector<Guards>& guards) {
  std::vector<RadialCase> cases;
  for (std::size_t c = 0; c < space.cases.size(); ++c) {
    auto radial = radial_case(space, space.cases[c], guards[c]);
    if (!radial) return std::nullopt;
    cases.push_back(std::move(*radial));
  }
  return cases;
}

/// Where only some runs may change: drop limits that are broken with the thickest cable in scope, and hardly
/// less than as the file has it. A twentieth of the limit tells a load that the runs in scope feed from one
/// that they do not.
std::vector<OutOfReach> out_of_reach(const DesignSpace& space, const std::vector<Guards>& guards,
                                     const Assessment& widest) {
  std::vector<OutOfReach> found;
  const Assessment before = assess(space, guards, space.system);
  if (before.failure) return found;
  for (const Broken& broken : widest.broken) {
    if (broken.what != Broken::What::drop) continue;
    for (const auto& load : before.cases[broken.in_case].loads)
      if (load.element == broken.element && load.drop - broken.value < 0.05 * broken.limit)
        found.push_back({broken.in_case, broken.element});
  }
  return found;
}

using Clock = std::chrono::steady_clock;

struct Searched {
  Found found;
  std::string method;
};

Searched search(const DesignSpace& space, const std::vector<Guards>& guards, const Assessment& widest,
                const SizeOptions& options, Clock::time_point deadline) {
  const auto judge_design = [&](const Design& design) {
    return assess(space, guards, rewired(space, design));
  };
  const auto tell = [&](Progress progress) {
    progress.priced = space.priced;
    if (options.progress) options.progress(progress);
  };
  const Judge judge{judge_design, tell, deadline};
  if (const auto cases = all_radial(space, guards))
    return {search_tree(space, *cases, judge),
            "branch and bound, each box of designs bounded by dynamic programming at the least currents that "
            "any of them lets flow, nonlinear solve as judge"};
  return {search_general(space, guards, widest.cases, judge),
          "integer master that holds the currents of every case as a relaxed flow model, nonlinear solve as "
          "judge"};
}

/// When the search has to end, so that what follows it ends in time: a solve for each run, for why it has its
/// gauge, and a few more. `one`: how long a solve of all cases took.
Clock::time_point deadline_of(Clock::time_point start, double limit, std::size_t runs, Clock::duration one) {
  const auto seconds = [](double s) {
    return std::chrono::duration_cast<Clock::duration>(std::chrono::duration<double>(s));
  };
  const auto report = one * static_cast<Clock::rep>(runs + 4);
  return start + std::max(seconds(limit) - report, seconds(0.2 * limit));
}

}  // namespace

tl::expected<SizeResult, std::string> size(const netlist::System& system, const SizeOptions& options) {
  if (auto unknown = unknown_run(system, options.only)) return tl::unexpected(*unknown);
  const auto start = Clock::now();

  // With the thickest cable everywhere the devices carry about what they will: the ratings from which a
  // design departs only where it must.
  DesignSpace space = design_space(system, options.only);
  auto guards = guards_of(space);
  const auto before_solve = Clock::now();
  Assessment widest = assess(space, guards, rewired(space, thickest(space)));
  const auto deadline =
      deadline_of(start, options.time_limit_in_seconds, space.runs.size(), Clock::now() - before_solve);
  if (widest.failure) return tl::unexpected(*widest.failure);
  netlist::System rated = system;
  rated.fuses = widest.system.fuses;
  rated.switches = widest.system.switches;
  const auto beyond = options.only.empty() ? std::vector<OutOfReach>{} : out_of_reach(space, guards, widest);
  space = design_space(rated, options.only);
  guards = guards_of(space);

  Searched searched = search(space, guards, widest, options, deadline);
  // Only what is proved to be out of reach is left out: a thinner cable elsewhere may keep what the thickest
  // breaks.
  if (!searched.found.design && searched.found.proved && !beyond.empty()) {
    leave_out(space, beyond);
    searched = search(space, guards, widest, options, deadline);
  }
  return size_result(system, space, guards, widest, searched.found, searched.method);
}

}  // namespace ohmtrail::plan
