#include "diagnose/infer/explore_steps.hpp"

#include <cmath>

namespace ohmtrail::diagnose::inference {
namespace {

int set_of(const Expanded& from, const ParallelSets& sets, int coordinate) {
  const Screen& screen = from.frame->screen;
  return screen.is_error(coordinate) ? -1 : sets.set_of(screen.parameter(coordinate));
}

// One more way into the same set.
void join(Step& step, const Step& other) {
  step.log_weight += std::log1p(std::exp(other.log_weight - step.log_weight));
  if (other.log_single > step.log_single) {
    step.move = other.move;
    step.log_single = other.log_single;
  }
}

}  // namespace

std::vector<Step> steps_from(const Expanded& from, const ParallelSets& sets) {
  std::vector<Step> out;
  std::vector<int> step_of(sets.sets.size(), -1);
  for (std::size_t j = 0; j < from.moves.size(); ++j) {
    const Move& move = from.moves[j];
    const int set = set_of(from, sets, move.coordinate);
    const double single = from.belief.log_base + move.log_ratio;
    const Step step{j, single + from.log_divided, single};
    const std::size_t faulty = set < 0 ? 0 : sets.faulty_in(set, from.belief.hypothesis).size();
    if (set < 0) {
      out.push_back(step);
    } else if (faulty == 1 && move.other_state) {
      out.push_back({j, step.log_weight - from.log_divided_in.at(set), single});
    } else if (int& known = step_of[static_cast<std::size_t>(set)]; faulty == 0 && known < 0) {
      known = static_cast<int>(out.size());
      out.push_back(step);
    } else if (faulty == 0) {
      join(out[static_cast<std::size_t>(known)], step);
    }
  }
  return out;
}

Hypothesis key_after(const Expanded& from, std::size_t move, const ParallelSets& sets) {
  return sets.key(from.frame->screen.hypothesis_after(from.belief.hypothesis, from.moves[move].coordinate));
}

bool in_range(const Exploration& explored, const Limits& limits, double log_weight) {
  return log_weight >= explored.top - out_of_reach &&
         log_weight <= explored.expanded.front().belief.log_weight + limits.surprise;
}

}  // namespace ohmtrail::diagnose::inference
