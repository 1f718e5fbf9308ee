#include <cmath>

#include "render/report.hpp"

namespace ohmtrail::render {
namespace {

struct Badness {
  bool outside = false;
  double share = 0;
  friend bool operator<(const Badness& a, const Badness& b) {
    return a.outside != b.outside ? b.outside : a.share < b.share;
  }
};

Badness badness(const netlist::System& system, const std::vector<solve::CaseSolution>& solved,
                const diagnose::SagSplit& split) {
  for (const solve::CaseSolution& one : solved) {
    if (one.network.case_name != split.in_case) continue;
    for (const solve::LoadResult& load : one.loads) {
      const network::Element& e = one.network.elements[static_cast<std::size_t>(load.element)];
      if (e.id != split.load) continue;
      const double nominal = e.nominal.value_or(system.info.nominal).si();
      // A charger below its set point gives all it can; only what is lost beyond it is a sag.
      const bool battery =
          load.supply >= 0 &&
          one.network.elements[static_cast<std::size_t>(load.supply)].role == network::Role::battery;
      return {!load.within, nominal > 0 && battery ? split.sag / nominal : load.drop_fraction};
    }
  }
  return {};
}

}  // namespace

std::optional<std::size_t> worst_split(const netlist::System& system,
                                       const std::vector<solve::CaseSolution>& solved,
                                       const std::vector<diagnose::SagSplit>& splits) {
  std::optional<std::size_t> worst;
  Badness most;
  for (std::size_t k = 0; k < splits.size(); ++k) {
    const Badness here = badness(system, solved, splits[k]);
    if (worst && !(most < here)) continue;
    worst = k;
    most = here;
  }
  return worst;
}

}  // namespace ohmtrail::render
