#include "diagnose/infer/mixing_source.hpp"

#include <cmath>
#include <map>

namespace ohmtrail::diagnose::inference {
namespace {

bool holds(const Hypothesis& hypothesis, bool error, int which) {
  return error ? hypothesis.is_wrong(which) : hypothesis.is_faulty(which);
}

MixingSource source_of(const Weighing& weighing, const Hypothesis& key) {
  const bool own = weighing.candidates.contains(key);
  const Frame& frame = weighing.frame_of(key);
  const Hypothesis* at = own ? &frame.optimum.hypothesis : &weighing.source_of(key).belief.hypothesis;
  MixingSource out{at, &frame.optimum, &weighing.moves_of(key), own};
  const Belief belief = own ? frame.screen.root() : weighing.source_of(key).belief;
  for (const int set : weighing.sets->touched(weighing.around.core)) {
    out.splits[set] = &split_at(frame.screen, *weighing.sets, *weighing.splits, belief, set);
  }
  return out;
}

}  // namespace

bool MixingSource::is_error(const Move& move) const {
  return move.coordinate < frame->residual.size();
}

int MixingSource::subject(const Move& move) const {
  const auto m = static_cast<int>(frame->residual.size());
  return is_error(move) ? move.coordinate : frame->columns[static_cast<std::size_t>(move.coordinate - m)];
}

double MixingSource::bystander_share(const Hypothesis& core, const Move& move) const {
  const bool error = is_error(move);
  const int which = subject(move);
  if (holds(core, error, which)) {
    return 0;
  }
  double members = 0;
  for (const auto& [hypothesis, one] : reached) {
    members += holds(*hypothesis, error, which) ? one : 0;
  }
  return share - members;
}

double MixingSource::touching(const ParallelSets& sets, int set) const {
  double out = 0;
  for (const auto& [key, one] : reached) {
    out += sets.faulty_in(set, *key).empty() ? 0 : one;
  }
  return out;
}

double chance_of(const Move& move) {
  return 1 / (1 + std::exp(-move.log_ratio));
}

std::vector<MixingSource> mixing_sources(const Weighing& weighing) {
  std::vector<MixingSource> out;
  std::map<const std::vector<Move>*, std::size_t> place;
  for (const auto& [hypothesis, share] : weighing.shares) {
    const auto [found, fresh] = place.emplace(&weighing.moves_of(*hypothesis), out.size());
    if (fresh) {
      out.push_back(source_of(weighing, *hypothesis));
    }
    out[found->second].reached.emplace_back(hypothesis, share);
    out[found->second].share += share;
  }
  return out;
}

}  // namespace ohmtrail::diagnose::inference
