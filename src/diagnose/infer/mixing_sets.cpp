#include "diagnose/infer/mixing_sets.hpp"

#include <algorithm>

namespace ohmtrail::diagnose::inference {

void add_fault_shares(const SetSplit& split, double any, std::vector<double>& fault) {
  for (std::size_t k = 1; k < split.states.size(); ++k) {
    const double share = any * split.share(k);
    for (const int p : split.states[k].faulty) {
      fault[static_cast<std::size_t>(p)] += share;
    }
  }
}

std::vector<std::pair<Hypothesis, double>> divided(const ParallelSets& sets, const Splits& splits,
                                                   const Hypothesis& key, double share, double least) {
  Hypothesis own{{}, key.wrong};
  for (const int p : key.faulty) {
    if (sets.set_of(p) < 0) {
      own.faulty.push_back(p);
    }
  }
  std::vector<std::pair<Hypothesis, double>> out{{own, share}};
  for (const int set : sets.touched(key)) {
    const SetSplit& split = *splits.at(set);
    std::vector<std::pair<Hypothesis, double>> finer;
    for (const auto& [hypothesis, whole] : out) {
      for (std::size_t k = 1; k < split.states.size(); ++k) {
        const double part = whole * split.share(k);
        if (part < least) {
          continue;
        }
        finer.emplace_back(hypothesis, part);
        std::vector<int>& faulty = finer.back().first.faulty;
        faulty.insert(faulty.end(), split.states[k].faulty.begin(), split.states[k].faulty.end());
        std::sort(faulty.begin(), faulty.end());
      }
    }
    out = std::move(finer);
  }
  std::stable_sort(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.second > b.second; });
  return out;
}

}  // namespace ohmtrail::diagnose::inference
