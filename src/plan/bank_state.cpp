#include "plan/bank_state.hpp"

#include <algorithm>
#include <limits>

namespace ohmtrail::plan {

namespace {

Interval product(const Interval& a, const Interval& b) {
  Interval found = Interval::none();
  for (const double x : {a.low, a.high})
    for (const double y : {b.low, b.high}) found.include(x * y);
  return found;
}

/// One corner: bit s of `corner` says whether string s has its most ohms.
void add_corner(const std::vector<BankString>& strings, double total, const std::vector<Interval>& own_ohms,
                unsigned corner, BankState& state) {
  const auto ohms = [&](std::size_t s) {
    return strings[s].ohms + ((corner >> s & 1U) != 0 ? own_ohms[s].high : own_ohms[s].low);
  };
  double pushed = -total, siemens = 0;
  for (std::size_t s = 0; s < strings.size(); ++s) {
    pushed += strings[s].emf / ohms(s);
    siemens += 1 / ohms(s);
  }
  const double volts = pushed / siemens;
  state.volts.include(volts);
  for (std::size_t s = 0; s < strings.size(); ++s)
    state.amperes[s].include((strings[s].emf - volts) / ohms(s));
}

/// Posts of every string that may deliver most power.
void find_leader(const std::vector<BankString>& strings, const std::vector<Interval>& own_ohms,
                 BankState& state) {
  std::vector<Interval> posts, power;
  double surely = -std::numeric_limits<double>::infinity();
  for (std::size_t s = 0; s < strings.size(); ++s) {
    posts.push_back({strings[s].emf - strings[s].ohms * state.amperes[s].high,
                     strings[s].emf - strings[s].ohms * state.amperes[s].low});
    power.push_back(product(posts[s], state.amperes[s]));
    surely = std::max(surely, power[s].low);
  }
  state.posts = state.own = Interval::none();
  for (std::size_t s = 0; s < strings.size(); ++s) {
    if (power[s].high < surely) continue;
    const Interval own = product(own_ohms[s], state.amperes[s]);
    for (const double v : {posts[s].low, posts[s].high}) state.posts.include(v);
    for (const double v : {own.low, own.high}) state.own.include(v);
  }
}

BankState only_string(const BankString& string, const Interval& total) {
  const Interval volts{string.emf - string.ohms * total.high, string.emf - string.ohms * total.low};
  return {volts, {total}, volts, {}};
}

}  // namespace

BankState bank_state(const std::vector<BankString>& strings, const Interval& total,
                     const std::vector<Interval>& own_ohms) {
  if (strings.size() == 1) return only_string(strings.front(), total);
  BankState state{Interval::none(), std::vector<Interval>(strings.size(), Interval::none()), {}, {}};
  for (unsigned corner = 0; corner < 1U << strings.size(); ++corner)
    for (const double amperes : {total.low, total.high})
      add_corner(strings, amperes, own_ohms, corner, state);
  find_leader(strings, own_ohms, state);
  return state;
}

}  // namespace ohmtrail::plan
