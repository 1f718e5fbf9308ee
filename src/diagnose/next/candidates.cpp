#include "diagnose/next/candidates.hpp"

#include <algorithm>
#include <cmath>

#include "diagnose/next/reach.hpp"
#include "ohmtrail/netlist/names.hpp"

namespace ohmtrail::diagnose::next {
namespace {

// What a reading is worth beside one that costs nothing (common practice: our own weights).
constexpr double when_switching = 0.8;
constexpr double with_tools = 0.85;
constexpr double behind_a_lug = 0.97;
constexpr double per_metre = 0.02;
constexpr double easy_leads = 1.5;  // m: what the leads of a meter reach

constexpr std::size_t weighed_finely = 60;

double worth(const Candidate& candidate) {
  double out = candidate.bits / (1 + per_metre * std::max(0.0, candidate.leads - easy_leads));
  if (candidate.tools) out *= with_tools;
  out *= std::pow(behind_a_lug, candidate.barrels);
  return candidate.switching ? out * when_switching : out;
}

void add_pairs(const Outlook& outlook, const std::vector<CaseView>& views, std::size_t v, int present,
               std::vector<Candidate>& out) {
  const CaseView& view = views[v];
  const network::Network& network = outlook.survey.networks[view.in_case];
  const auto leads = leads_between(outlook.system, network, view.points);
  std::vector<char> tools, barrels;
  for (const int p : view.points) {
    const std::string& name = network.points[static_cast<std::size_t>(p)];
    tools.push_back(reach_of(outlook.system, name) == netlist::Reach::tools);
    barrels.push_back(netlist::split_point_name(name).part.empty() ? 0 : 1);
  }
  for (std::size_t a = 0; a < view.points.size(); ++a) {
    for (std::size_t b = a + 1; b < view.points.size(); ++b) {
      Candidate one = Candidate::volts(v, a, b);
      const double volts =
          view.mean.front()[static_cast<Eigen::Index>(a)] - view.mean.front()[static_cast<Eigen::Index>(b)];
      if (volts < 0) std::swap(one.red, one.black);  // red where it is higher: the number has no sign
      one.leads = leads[a][static_cast<std::size_t>(view.points[b])];
      one.barrels = barrels[a] + barrels[b];
      one.tools = tools[a] != 0 || tools[b] != 0;
      one.switching = static_cast<int>(view.in_case) != present;
      out.push_back(one);
    }
  }
}

void add_clamps(const std::vector<CaseView>& views, std::size_t v, int present, std::vector<Candidate>& out) {
  for (std::size_t b = 0; b < views[v].branches.size(); ++b) {
    Candidate one = Candidate::amps(v, b);
    one.switching = static_cast<int>(views[v].in_case) != present;
    out.push_back(one);
  }
}

bool better(const Candidate& a, const Candidate& b) {
  return a.score > b.score;
}

}  // namespace

ReadingPlace place_of(const Outlook& outlook, const CaseView& view, const Candidate& candidate) {
  const network::Network& network = outlook.survey.networks[view.in_case];
  ReadingPlace out;
  out.in_case = network.case_name;
  if (candidate.clamp) {
    out.in = network.elements[static_cast<std::size_t>(view.branches[candidate.branch])].id;
    if (out.in.ends_with("/wire")) out.in.resize(out.in.size() - 5);  // a run is named by its id
    return out;
  }
  const auto name = [&](std::size_t place) {
    return network.points[static_cast<std::size_t>(view.points[place])];
  };
  out.red = name(candidate.red);
  out.black = name(candidate.black);
  return out;
}

bool was_passed_over(const Outlook& outlook, const CaseView& view, const Candidate& candidate) {
  if (outlook.passed_over.empty()) return false;
  const ReadingPlace here = place_of(outlook, view, candidate);
  return std::any_of(outlook.passed_over.begin(), outlook.passed_over.end(), [&](const ReadingPlace& one) {
    const ReadingPlace turned{one.in_case, one.in, one.black, one.red};
    return here == one || here == turned;
  });
}

bool was_taken(const Outlook& outlook, const std::vector<CaseView>& views, const Candidate& candidate) {
  const CaseView& view = views[candidate.view];
  if (was_passed_over(outlook, view, candidate)) return true;
  for (const inference::Observation& one : outlook.survey.model.observations) {
    if (one.reading < 0 || one.reading >= outlook.taken || one.in_case != static_cast<int>(view.in_case))
      continue;
    if (candidate.clamp) {
      if (one.sight == inference::Sight::current && one.branch == view.branches[candidate.branch])
        return true;
    } else if (one.sight == inference::Sight::voltage) {
      const int red = view.points[candidate.red], black = view.points[candidate.black];
      if ((one.red == red && one.black == black) || (one.red == black && one.black == red)) return true;
    }
  }
  return false;
}

std::vector<Forecast> forecast(const Outlook& outlook, const std::vector<CaseView>& views,
                               const Candidate& candidate) {
  const CaseView& view = views[candidate.view];
  return candidate.clamp ? forecast_amps(outlook, view, candidate.branch)
                         : forecast_volts(outlook, view, candidate.red, candidate.black);
}

std::vector<Candidate> weigh(const Outlook& outlook, const std::vector<CaseView>& views, int present) {
  std::vector<Candidate> all;
  for (std::size_t v = 0; v < views.size(); ++v) {
    add_pairs(outlook, views, v, present, all);
    add_clamps(views, v, present, all);
  }
  std::erase_if(all, [&](const Candidate& one) { return was_taken(outlook, views, one); });
  for (Candidate& one : all) {
    one.bits = information(condensed(forecast(outlook, views, one)), 2);
    one.score = worth(one);
  }
  std::stable_sort(all.begin(), all.end(), better);
  for (std::size_t k = 0; k < std::min(weighed_finely, all.size()); ++k) {
    all[k].bits = information(forecast(outlook, views, all[k]), 7);
    all[k].score = worth(all[k]);
  }
  if (all.size() > weighed_finely) all.resize(weighed_finely);
  std::stable_sort(all.begin(), all.end(), better);
  return all;
}

}  // namespace ohmtrail::diagnose::next
