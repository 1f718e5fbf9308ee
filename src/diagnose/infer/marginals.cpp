#include "diagnose/infer/marginals.hpp"

#include <algorithm>
#include <utility>

namespace ohmtrail::diagnose::inference {
namespace {

constexpr double worth_a_part = 1e-4;
constexpr std::size_t most_parts = 10;

class Marginals {
 public:
  Marginals(const Model& model, const Weighing& weighing, const std::vector<double>& fault)
      : model_(model), weighing_(weighing), fault_(fault), out_(model.parameters.size()) {}

  std::vector<Mixture> run(std::vector<MixingSource> sources) {
    for (MixingSource& source : sources) {
      drop_light(source);
      if (source.share > 0) {
        add_parts(source);
      }
    }
    for (std::size_t p = 0; p < out_.size(); ++p) {
      Mixture& mixture = out_[p];
      if (mixture.empty()) {
        add_prior(static_cast<int>(p), mixture);
      }
      mixture.condense(most_parts);
    }
    return std::move(out_);
  }

 private:
  static void drop_light(MixingSource& source) {
    std::erase_if(source.reached, [](const auto& entry) { return entry.second <= worth_a_part; });
    source.share = 0;
    for (const auto& [hypothesis, share] : source.reached) {
      source.share += share;
    }
  }

  void add_prior(int p, Mixture& mixture) {
    const Parameter& unknown = model_.parameters[static_cast<std::size_t>(p)];
    const double fault = fault_[static_cast<std::size_t>(p)];
    mixture.add(1 - fault, unknown.sound.mean, unknown.sound.sd * unknown.sound.sd);
    if (unknown.fault) {
      mixture.add(fault, unknown.fault->prior.mean, unknown.fault->prior.sd * unknown.fault->prior.sd);
    }
  }

  // Every informed unknown: those with a fault by their exact one-dimensional density, the others by the
  // Gaussian at the optimum.
  void add_parts(const MixingSource& source) {
    std::vector<char> done(model_.parameters.size(), 0);
    for (const auto& [set, split] : source.splits) {
      const std::vector<int>& members = weighing_.sets->sets[static_cast<std::size_t>(set)].member;
      const double any = source.touching(*weighing_.sets, set);
      for (std::size_t k = 0; k < split->states.size(); ++k) {
        const double share = k == 0 ? source.share - any : any * split->share(k);
        if (share > worth_a_part) {
          add_views(members, weighing_.splits->views(set, *split, k), share);
        }
      }
      for (const int p : members) {
        done[static_cast<std::size_t>(p)] = 1;
      }
    }
    for (const Move& move : *source.moves) {
      if (!source.is_error(move) && done[static_cast<std::size_t>(source.subject(move))] == 0) {
        add_parts_of_members(source, move);
        add_part_of_bystander(source, move);
        done[static_cast<std::size_t>(source.subject(move))] = 1;
      }
    }
    if (source.own) {
      add_gaussian_parts(*source.frame, source.share, done);
    }
  }

  void add_views(const std::vector<int>& members, const std::vector<MemberView>& views, double share) {
    for (std::size_t j = 0; j < members.size(); ++j) {
      out_[static_cast<std::size_t>(members[j])].add(share, views[j].mean_x, views[j].variance_x);
    }
  }

  // Moves were taken at the source: the one that led to a hypothesis is seen from its other side.
  void add_parts_of_members(const MixingSource& source, const Move& move) {
    const int p = source.subject(move);
    const bool core = weighing_.around.core.is_faulty(p), before = source.at->is_faulty(p);
    for (const auto& [hypothesis, share] : source.reached) {
      const bool faulty = hypothesis->is_faulty(p);
      if (core || faulty) {
        const Tilted& here = before != faulty ? move.changed : move.present;
        out_[static_cast<std::size_t>(p)].add(share, here.mean_x, here.variance_x);
      }
    }
  }

  void add_part_of_bystander(const MixingSource& source, const Move& move) {
    Mixture& mixture = out_[static_cast<std::size_t>(source.subject(move))];
    const double share = source.bystander_share(weighing_.around.core, move);
    mixture.add(share * (1 - chance_of(move)), move.present.mean_x, move.present.variance_x);
    mixture.add(share * chance_of(move), move.changed.mean_x, move.changed.variance_x);
  }

  void add_gaussian_parts(const Optimum& frame, double share, const std::vector<char>& done) {
    const Eigen::Index m = frame.residual.size();
    for (std::size_t k = 0; k < frame.columns.size(); ++k) {
      const int p = frame.columns[k];
      if (done[static_cast<std::size_t>(p)] == 0) {
        const Normal& prior = prior_of(model_, frame.hypothesis, p);
        const Eigen::Index row = m + static_cast<Eigen::Index>(k);
        const double variance = std::max(0.0, 1 - frame.fit.basis.row(row).squaredNorm());
        out_[static_cast<std::size_t>(p)].add(share, frame.x[p], variance * prior.sd * prior.sd);
      }
    }
  }

  const Model& model_;
  const Weighing& weighing_;
  const std::vector<double>& fault_;
  std::vector<Mixture> out_;
};

}  // namespace

std::vector<Mixture> marginals(const Model& model, const Weighing& weighing,
                               std::vector<MixingSource> sources, const std::vector<double>& fault) {
  return Marginals(model, weighing, fault).run(std::move(sources));
}

}  // namespace ohmtrail::diagnose::inference
