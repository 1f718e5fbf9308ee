#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "diagnose/bank_alike.hpp"

/// Strings side by side: what flows between them at rest, and how they share a load.
namespace ohmtrail::diagnose::bank {
namespace {

// Common practice: strings side by side should share a load to within a quarter.
constexpr double fair_share = 1.25;
// Less than this between strings, or out of them, is not worth a word.
constexpr double least_amperes = 1;
// Of nominal: 0.05 V for 12 V, what rested batteries of one bank differ by at any time; common practice.
constexpr double readable_gap = 0.004;
// Of nominal: strings so far apart are soon parted; common practice.
constexpr double wide_gap = 0.02;

/// What a string is and what its batteries have inside.
struct StringSource {
  double volts = 0, ohms = 0, nominal = 0;
};

StringSource source_of(const Members& members, const Indices& string) {
  StringSource source;
  for (const auto i : string) {
    source.volts += members.verdicts[i].emf.si();
    source.ohms += members.verdicts[i].resistance.si();
    source.nominal += members.system.batteries[i].nominal.si();
  }
  return source;
}

std::string named(const BatteryGroup& group, std::size_t string) {
  return fmt::format("{}", fmt::join(group.members[string], "+"));
}

bool judge_nominal(BatteryGroup& group, const std::vector<StringSource>& sources) {
  for (std::size_t i = 1; i < sources.size(); ++i) {
    if (std::abs(sources[i].nominal - sources[0].nominal) < 0.1 * sources[0].nominal) continue;
    group.findings.push_back({"unlike-nominal", Severity::before_further_use,
                              fmt::format("{} makes {:.3g} V, {} {:.3g} V, side by side", named(group, 0),
                                          sources[0].nominal, named(group, i), sources[i].nominal),
                              "Kirchhoff's voltage law",
                              "Part them at once: one drives its current through the other."});
    return false;
  }
  return true;
}

/// A per string; of a string with batteries side by side in one step, the mean of all of them.
std::vector<double> per_string(const Currents& currents, const std::vector<Indices>& strings) {
  std::vector<double> amperes;
  for (const auto& string : strings) {
    double sum = 0;
    for (const auto i : string) sum += currents[i];
    amperes.push_back(sum / static_cast<double>(string.size()));
  }
  return amperes;
}

void judge_circulation(BatteryGroup& group, const std::vector<StringSource>& sources,
                       const std::vector<double>& amperes) {
  const auto index = [&](auto place) { return static_cast<std::size_t>(place - amperes.begin()); };
  const auto high = index(std::max_element(amperes.begin(), amperes.end()));
  const auto low = index(std::min_element(amperes.begin(), amperes.end()));
  const double apart = sources[high].volts - sources[low].volts;
  const double taken = -amperes[low];
  if (apart < readable_gap * sources[0].nominal || taken < least_amperes) return;
  group.findings.push_back(
      {"circulating-current", apart > wide_gap * sources[0].nominal ? Severity::soon : Severity::improvement,
       fmt::format(
           "{} stands at {:.2f} V, {} at {:.2f} V: with nothing on {:.3g} A flow into {} at first, and "
           "less and less until they are level",
           named(group, high), sources[high].volts, named(group, low), sources[low].volts, taken,
           named(group, low)),
       "the network solved with nothing on, cables and connections between them included",
       "Charge them apart until they rest alike, then join them."});
}

/// How a load divides, and what that rests on.
struct Division {
  std::vector<double> shares;
  const char* source;
};

Division by_resistance(const std::vector<StringSource>& sources) {
  Division division{{}, "current divides as 1/R, cables left out: no case of the file has a load on them"};
  double conductance = 0;
  for (const auto& source : sources) conductance += 1 / source.ohms;
  for (const auto& source : sources) division.shares.push_back(1 / source.ohms / conductance);
  return division;
}

/// In the case that takes most from them; without such a case by their resistance alone.
Division division_of(const Members& members, const std::vector<Indices>& strings,
                     const std::vector<StringSource>& sources) {
  Division division{{}, "the network solved under its largest load, cables and connections included"};
  double most = least_amperes;
  for (const auto& currents : members.currents.under_load) {
    auto amperes = per_string(currents, strings);
    const double sum = std::accumulate(amperes.begin(), amperes.end(), 0.0);
    if (sum <= most) continue;
    most = sum;
    for (double& one : amperes) one /= sum;
    division.shares = std::move(amperes);
  }
  return division.shares.empty() ? by_resistance(sources) : division;
}

/// Whether the batteries of the lazy string have no more inside than a fair part would allow.
bool cables_are_to_blame(const std::vector<StringSource>& sources, std::size_t lazy) {
  const double fair = 1 / static_cast<double>(sources.size());
  return fair < by_resistance(sources).shares[lazy] * fair_share;
}

void judge_sharing(BatteryGroup& group, const Members& members, const std::vector<Indices>& strings,
                   const std::vector<StringSource>& sources) {
  const auto division = division_of(members, strings, sources);
  const auto least = std::min_element(division.shares.begin(), division.shares.end());
  const auto lazy = static_cast<std::size_t>(least - division.shares.begin());
  const double fair = 1 / static_cast<double>(strings.size());
  if (fair < *least * fair_share) return;
  const bool cables = cables_are_to_blame(sources, lazy);
  if (!cables && group.members[lazy].size() == 1) group.weakest = group.members[lazy].front();
  group.findings.push_back(
      {"unequal-sharing", Severity::improvement,
       fmt::format("of a load {} carries {:.0f} % where {:.0f} % would be its part: the others work harder "
                   "and age sooner",
                   named(group, lazy), 100 * *least, 100 * fair),
       division.source,
       cables
           ? "Inside it is no worse than the others: see to the cables and lugs that join it, and take the "
             "load off at opposite corners of the bank."
           : "See to its resistance, or to unlike batteries side by side."});
}

}  // namespace

void judge_parallel(BatteryGroup& group, const Members& members, const std::vector<Indices>& strings) {
  Indices all;
  std::vector<StringSource> sources;
  for (const auto& string : strings) {
    all.insert(all.end(), string.begin(), string.end());
    sources.push_back(source_of(members, string));
  }
  const bool alike = judge_nominal(group, sources);
  judge_chemistry(group, members, all);
  if (strings.front().size() == 1)
    judge_capacity(group, members, all, Severity::improvement,
                   "They share neither load nor charge evenly: use equal batteries.");
  judge_age(group, members, all);
  if (!alike) return;
  if (members.currents.at_rest) {
    group.at_rest = per_string(*members.currents.at_rest, strings);
    judge_circulation(group, sources, group.at_rest);
  }
  judge_sharing(group, members, strings, sources);
}

}  // namespace ohmtrail::diagnose::bank
