#include <algorithm>
#include <limits>

#include "plan/flow_case.hpp"
#include "plan/rated_device.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// One term a column: the library refuses doubles.
std::vector<Term> merged(std::vector<Term> terms) {
  std::stable_sort(terms.begin(), terms.end(),
                   [](const Term& a, const Term& b) { return a.column < b.column; });
  std::vector<Term> found;
  for (const Term& term : terms) {
    if (!found.empty() && found.back().column == term.column)
      found.back().factor += term.factor;
    else
      found.push_back(term);
  }
  std::erase_if(found, [](const Term& term) { return term.factor == 0; });
  return found;
}

/// The voltage of a load less that of a supply's posts.
std::vector<Term> below_supply(const FlowCase& flow, const network::Element& load, std::size_t supply) {
  auto row = flow.across(load.from, load.to);
  for (const int s : flow.probe.supplies[supply].elements) {
    const auto& source = flow.network().elements[at(s)];
    const auto terms = flow.across(source.from, source.to, -1);
    row.insert(row.end(), terms.begin(), terms.end());
  }
  return merged(std::move(row));
}

/// Supplies of the island that feeds a load.
std::vector<std::size_t> supplies_of(const FlowCase& flow, int first_element) {
  const auto& all = flow.probe.supplies;
  const auto own = std::find_if(all.begin(), all.end(),
                                [&](const auto& one) { return one.elements.front() == first_element; });
  std::vector<std::size_t> found;
  for (std::size_t k = 0; own != all.end() && k < all.size(); ++k)
    if (all[k].island == own->island) found.push_back(k);
  return found;
}

/// Which of several supplies a load's drop is counted from: the one that delivers most power.
class Leaders {
 public:
  explicit Leaders(FlowCase& flow) : flow_(flow), columns_(flow.probe.supplies.size(), -1) {}

  /// V(load) ≥ V(leader) − limit.
  void add_limit(const network::Element& load, double limit, const std::vector<std::size_t>& supplies) {
    if (supplies.size() == 1) {
      flow_.mip.add_row(below_supply(flow_, load, supplies.front()), -limit, kInfinity);
      return;
    }
    std::vector<Term> one_of;
    for (const std::size_t supply : supplies) {
      const int leads = column(supply, supplies);
      one_of.push_back({leads, 1});
      // Where another leads, this one's posts are higher by no more than their ranges differ.
      double far = 0;
      for (const std::size_t other : supplies)
        if (other != supply)
          far = std::max(far, flow_.ranges.terminal[supply].high - flow_.ranges.terminal[other].low);
      auto row = below_supply(flow_, load, supply);
      row.push_back({leads, -far});
      flow_.mip.add_row(row, -limit - far, kInfinity);
    }
    if (!one_of.empty()) flow_.mip.add_row(one_of, 1, 1);
  }

 private:
  /// The binary that says that a supply leads: its current is positive, and at the highest voltage it can
  /// have it delivers at least what each other does at the lowest.
  int column(std::size_t supply, const std::vector<std::size_t>& supplies) {
    if (columns_[supply] >= 0) return columns_[supply];
    const int leads = columns_[supply] = flow_.mip.add_binary(0);
    const double most = flow_.ranges.most_amperes, high = flow_.ranges.terminal[supply].high;
    const int own = flow_.amperes[at(flow_.probe.supplies[supply].elements.front())];
    flow_.mip.add_row({{own, 1}, {leads, -most}}, -most, kInfinity);
    for (const std::size_t other : supplies) {
      const int theirs = flow_.amperes[at(flow_.probe.supplies[other].elements.front())];
      if (other == supply || theirs < 0) continue;
      const double far = 2 * high * most;
      flow_.mip.add_row({{own, high}, {theirs, -flow_.ranges.terminal[other].low}, {leads, -far}}, -far,
                        kInfinity);
    }
    return leads;
  }

  FlowCase& flow_;
  std::vector<int> columns_;  ///< per supply; −1: not needed yet
};

/// 1.25 |i| ≤ the largest rating that may stand over the candidate taken.
void add_device(FlowCase& flow, int amperes, std::size_t run, const std::vector<double>& ladder) {
  for (const double sign : {1.0, -1.0}) {
    std::vector<Term> row{{amperes, sign}};
    for (std::size_t c = 0; c < flow.taken[run].size(); ++c) {
      const double allowed = flow.space.runs[run].candidates[c].fuse_limit * (1 + 1e-9);
      const auto above = std::upper_bound(ladder.begin(), ladder.end(), allowed);
      const double most = above == ladder.begin() ? 0 : *std::prev(above) / 1.25;
      row.push_back({flow.taken[run][c], -most});
    }
    flow.mip.add_row(row, -kInfinity, 0);
  }
}

}  // namespace

void add_limit_rows(FlowCase& flow) {
  Leaders leaders(flow);
  for (const solve::LoadResult& result : flow.probe.loads) {
    const auto& load = flow.network().elements[at(result.element)];
    if (!load.active || !load.drop_limit || !load.nominal || result.supply < 0) continue;
    leaders.add_limit(load, flow.share * load.drop_limit->of_one() * load.nominal->si(),
                      supplies_of(flow, result.supply));
  }
}

void add_device_rows(FlowCase& flow) {
  for (const Device& device : devices_of(flow.space, flow.network(), flow.guards)) {
    const int amperes = flow.amperes[at(device.element)];
    for (const int run : device.runs)
      if (amperes >= 0) add_device(flow, amperes, at(run), device.ladder);
  }
}

}  // namespace ohmtrail::plan
