#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include "ohmtrail/diagnose/bank.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "plan/bank_strings.hpp"
#include "plan/protection_rules.hpp"
#include "units/index.hpp"

/// What belongs together and is unlike: negative and positive cables, batteries side by side and their links.
namespace ohmtrail::plan::protection {
namespace {

using diagnose::Finding;
using diagnose::Severity;
using network::Role;

class Neighbours {
 public:
  explicit Neighbours(const network::Network& network) : network_(network), at_(network.points.size()) {
    for (std::size_t e = 0; e < network.elements.size(); ++e) {
      at_[at(network.elements[e].from)].push_back(static_cast<int>(e));
      at_[at(network.elements[e].to)].push_back(static_cast<int>(e));
    }
  }

  /// The first wire in series behind an element's point; −1 where something branches off before it.
  [[nodiscard]] int wire_in_series(int element, int point) const {
    for (int steps = 0; at_[at(point)].size() == 2 && steps < 64; ++steps) {
      const auto& here = at_[at(point)];
      const int next = here[0] == element ? here[1] : here[0];
      const auto& body = network_.elements[at(next)];
      if (body.role == Role::wire) return next;
      if (body.role == Role::load || body.role == Role::battery || body.role == Role::charger) return -1;
      element = next;
      point = body.from == point ? body.to : body.from;
    }
    return -1;
  }

  /// Wires that reach any of these points through anything but wires and bars.
  [[nodiscard]] std::set<int> wires_near(std::vector<int> open) const {
    std::set<int> seen(open.begin(), open.end()), wires;
    while (!open.empty()) {
      const int point = open.back();
      open.pop_back();
      for (const int e : at_[at(point)]) {
        const auto& body = network_.elements[at(e)];
        if (body.role == Role::wire) wires.insert(e);
        if (body.role != Role::termination && body.role != Role::fuse && body.role != Role::switchgear &&
            body.role != Role::shunt && body.role != Role::joint)
          continue;
        const int next = body.from == point ? body.to : body.from;
        if (seen.insert(next).second) open.push_back(next);
      }
    }
    return wires;
  }

 private:
  const network::Network& network_;
  std::vector<std::vector<int>> at_;
};

const netlist::Run& run_of(const Context& context, int wire) {
  return context.system.runs[context.network.elements[at(wire)].origin.index];
}

/// A, over all cases.
double most_amperes(const Context& context, int wire) {
  double most = 0;
  for (const auto& solved : context.solved)
    most = std::max(most, std::abs(solved.solution.current[at(wire)]));
  return most;
}

/// Of equals the one that carries most.
int thickest(const Context& context, const std::set<int>& wires) {
  const auto less = [&](int a, int b) {
    return std::pair(run_of(context, a).gauge.area, most_amperes(context, a)) <
           std::pair(run_of(context, b).gauge.area, most_amperes(context, b));
  };
  const auto best = std::max_element(wires.begin(), wires.end(), less);
  return best == wires.end() ? -1 : *best;
}

/// As the cases have it. Where a body returns the current, or several batteries stand apart, no cable does.
bool carry_the_same(const Context& context, int plus, int minus) {
  constexpr double alike = 0.8;
  const double a = most_amperes(context, plus), b = most_amperes(context, minus);
  return std::min(a, b) >= alike * std::max(a, b);
}

/// Nearly the same area is the same size: 35 mm² and 2 AWG are.
bool thinner(const netlist::Run& a, const netlist::Run& b) {
  return a.gauge.area * 1.1 < b.gauge.area;
}

void compare(const Context& context, int plus, int minus, const std::string& at_what, Findings& findings) {
  if (plus < 0 || minus < 0 || !carry_the_same(context, plus, minus)) return;
  const auto& positive = run_of(context, plus);
  const auto& negative = run_of(context, minus);
  const bool negative_thinner = thinner(negative, positive);
  if (&positive == &negative || (!negative_thinner && !thinner(positive, negative))) return;
  Finding finding;
  finding.rule = "unlike-gauge";
  finding.source = negative_thinner
                       ? "NEC 552.10(C)(4): the negative is not less than the other lead; common practice"
                       : "common practice";
  finding.severity = negative_thinner ? Severity::soon : Severity::improvement;
  finding.subject = negative_thinner ? negative.id : positive.id;
  finding.text = fmt::format(
      "at {} the negative \"{}\" is {}, the positive \"{}\" {}; both carry the same current", at_what,
      negative.id, trade::print(negative.gauge), positive.id, trade::print(positive.gauge));
  finding.remedy =
      negative_thinner
          ? "Fit a negative as thick as the positive: the fuse protects the positive's size. Disconnect "
            "the battery first."
          : "Look whether the positive was meant to be as thick; its fuse must suit the thinner one.";
  findings.push_back(std::move(finding));
}

/// The ends of the bank: posts at which no other battery of a string stands, plus and minus.
void bank_posts(const Context& context, std::vector<int>& plus, std::vector<int>& minus) {
  for (const auto& element : context.network.elements) {
    if (element.role != Role::battery) continue;
    const auto linked = [&](int point) {
      for (std::size_t e = 0; e < context.network.elements.size(); ++e)
        if (context.guards.string_link[e] &&
            (context.network.elements[e].from == point || context.network.elements[e].to == point))
          return true;
      return false;
    };
    if (!linked(element.from)) plus.push_back(element.from);
    if (!linked(element.to)) minus.push_back(element.to);
  }
}

/// The strings of a bank side by side with the wires that carry one string's current alone; nothing where the
/// wiring has rings.
std::vector<std::set<int>> links_of_strings(const network::Network& network) {
  const WiringForest forest(network);
  if (forest.has_ring()) return {};
  std::vector<int> loads;
  for (std::size_t e = 0; e < network.elements.size(); ++e)
    if (network.elements[e].role == Role::load && network.elements[e].active)
      loads.push_back(static_cast<int>(e));
  const auto bank = bank_wiring(network, forest, loads);
  if (!bank || bank->strings.size() < 2) return {};
  std::vector<std::set<int>> links(bank->strings.size());
  for (std::size_t e = 0; e < network.elements.size(); ++e)
    if (network.elements[e].role == Role::wire && bank->string_of[e] >= 0)
      links[at(bank->string_of[e])].insert(static_cast<int>(e));
  return links;
}

Finding unlike_link(const netlist::Run& thin, const netlist::Run& other) {
  Finding finding;
  finding.rule = "unlike-links";
  finding.source = "common practice: strings side by side get links of one size";
  finding.severity = Severity::soon;
  finding.subject = thin.id;
  finding.text = fmt::format(
      "{} in one string of the bank, {} (\"{}\") in the string beside it; the strings share the load "
      "unevenly, and a "
      "battery that fails draws the other string's current through the thin one",
      trade::print(thin.gauge), trade::print(other.gauge), other.id);
  finding.remedy = "Give all strings links of one size, the thicker. Disconnect the battery first.";
  return finding;
}

}  // namespace

void unlike_links(const Context& context, Findings& findings) {
  const auto links = links_of_strings(context.network);
  for (std::size_t one = 0; one < links.size(); ++one) {
    std::set<int> beside;
    for (std::size_t other = 0; other < links.size(); ++other)
      if (other != one) beside.insert(links[other].begin(), links[other].end());
    const int thick = thickest(context, beside);
    for (const int wire : links[one])
      if (thick >= 0 && thinner(run_of(context, wire), run_of(context, thick)))
        findings.push_back(unlike_link(run_of(context, wire), run_of(context, thick)));
  }
}

void unlike_gauges(const Context& context, Findings& findings) {
  const Neighbours neighbours(context.network);
  std::vector<int> plus, minus;
  bank_posts(context, plus, minus);
  if (!plus.empty() && !minus.empty())
    compare(context, thickest(context, neighbours.wires_near(plus)),
            thickest(context, neighbours.wires_near(minus)), "the battery", findings);
  for (std::size_t e = 0; e < context.network.elements.size(); ++e) {
    const auto& load = context.network.elements[e];
    if (load.role != Role::load) continue;
    compare(context, neighbours.wire_in_series(static_cast<int>(e), load.from),
            neighbours.wire_in_series(static_cast<int>(e), load.to), "\"" + load.id + "\"", findings);
  }
}

void unlike_batteries(const Context& context, Findings& findings) {
  if (context.system.batteries.size() < 2) return;
  for (const auto& group : diagnose::judge_bank(context.system).groups) {
    if (group.kind != diagnose::BatteryGroup::Kind::parallel) continue;
    for (const auto& bad : group.findings) {
      if (bad.name.rfind("unlike-", 0) != 0 || !bad.severity) continue;
      Finding finding;
      finding.rule = bad.name;
      finding.source = bad.source;
      finding.severity = *bad.severity;
      finding.subject = group.members.front().front();
      std::vector<std::string> strings;
      for (const auto& string : group.members) strings.push_back(fmt::format("{}", fmt::join(string, "+")));
      finding.text = fmt::format("side by side with {}: {}",
                                 fmt::join(strings.begin() + 1, strings.end(), ", "), bad.text);
      finding.remedy = bad.remedy;
      findings.push_back(std::move(finding));
    }
  }
}

}  // namespace ohmtrail::plan::protection
