#include "diagnose/next/tell.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "ohmtrail/diagnose/point_in_words.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::diagnose::next {
namespace {

constexpr double worth_naming = 0.01;
constexpr std::size_t most_names = 3;

std::string value_in_words(const NextOption& option, double value, int digits) {
  const units::Format format{.significant = digits};
  return option.in.empty() ? units::print(units::Voltage{value}, format)
                           : units::print(units::Current{value}, format);
}

// As many digits as tell the two values apart; a hand meter shows no more than five.
int digits_that_part(const NextOption& option) {
  constexpr int usual = 3, most = 5;
  int digits = usual;
  while (digits < most && value_in_words(option, option.expect_sound, digits) ==
                              value_in_words(option, option.expect_faulty, digits))
    ++digits;
  return digits;
}

/// The states on one side of the reading: their weight, and that of those that hold each repair.
struct Side {
  double weight = 0;
  std::map<std::string, double> with;

  void add(const State& state, double more) {
    weight += more;
    for (const std::string& repair : state.repairs) with[repair] += more;
  }
  /// Probability of a repair, should the reading come out on this side.
  [[nodiscard]] double chance(const std::string& repair) const {
    const auto found = with.find(repair);
    return found == with.end() ? 0 : found->second / weight;
  }
};

struct Sides {
  Side bad, good;
};

Sides sides_of(const Outlook& outlook, const CaseView& view, const std::vector<Forecast>& forecasts,
               const NextOption& option) {
  const bool bad_is_more = option.expect_faulty > option.expect_sound;
  Sides out;
  for (std::size_t k = 0; k < forecasts.size(); ++k) {
    const bool bad = bad_is_more == (forecasts[k].mean > option.expect_faulty);
    (bad ? out.bad : out.good).add(outlook.states[view.states[k]], forecasts[k].weight);
  }
  return out;
}

// Those that this side speaks for: whose odds are at least twice those on the other. First those of which it
// says most.
std::vector<std::string> names(const Side& here, const Side& there,
                               const std::vector<RepairChance>& repairs) {
  std::vector<std::pair<double, std::string>> found;
  for (const RepairChance& repair : repairs) {
    const double mine = here.chance(repair.id), other = there.chance(repair.id);
    if (mine - other > worth_naming && mine * (1 - other) >= 2 * other * (1 - mine))
      found.emplace_back(mine - other, repair.id);
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first; });
  std::vector<std::string> out;
  for (auto& [more, id] : found) out.push_back(std::move(id));
  return out;
}

std::string listed(const std::vector<std::string>& ids, const std::vector<RepairChance>& repairs) {
  std::string out;
  for (std::size_t k = 0; k < std::min(ids.size(), most_names); ++k) {
    const auto found =
        std::find_if(repairs.begin(), repairs.end(), [&](const auto& r) { return r.id == ids[k]; });
    out += (k == 0 ? "" : ", ") + (found == repairs.end() ? ids[k] : found->words);
  }
  if (ids.size() > most_names) out += " or " + std::to_string(ids.size() - most_names) + " more";
  return out;
}

std::string reason(const NextOption& option, const std::vector<RepairChance>& repairs) {
  if (option.purpose == Purpose::opening) {
    return option.in.empty() ? "Every later reading is held against this voltage."
                             : "Every drop is held against this current.";
  }
  const bool more = option.expect_faulty > option.expect_sound;
  const int digits = digits_that_part(option);
  const std::string limit =
      value_in_words(option, option.expect_faulty, digits) + (more ? " or more" : " or less");
  std::string out =
      "A sound system shows about " + value_in_words(option, option.expect_sound, digits) + ". ";
  if (option.purpose == Purpose::confirm) return out + "At " + limit + " the fault is confirmed.";
  if (!option.bad.empty()) out += "At " + limit + ": " + listed(option.bad, repairs) + ".";
  if (!option.good.empty())
    out += (option.bad.empty()
                ? "Nearer to that than to " + value_in_words(option, option.expect_faulty, digits) + ": "
                : std::string(" Otherwise: ")) +
           listed(option.good, repairs) + ".";
  return out;
}

void name_places(const Outlook& outlook, const CaseView& view, const Candidate& candidate,
                 NextOption& option) {
  ReadingPlace place = place_of(outlook, view, candidate);
  option.in_case = std::move(place.in_case);
  option.in = std::move(place.in);
  option.red = std::move(place.red);
  option.black = std::move(place.black);
  option.where = candidate.clamp ? clamp_in_words(outlook.system, option.in, option.expect_sound)
                                 : "red on " + point_in_words(outlook.system, option.red) + ", black on " +
                                       point_in_words(outlook.system, option.black);
}

}  // namespace

NextOption tell(const Outlook& outlook, const std::vector<CaseView>& views, const Candidate& candidate,
                Purpose purpose, const std::vector<RepairChance>& repairs) {
  const CaseView& view = views[candidate.view];
  const std::vector<Forecast> forecasts = forecast(outlook, views, candidate);
  NextOption out;
  out.purpose = purpose;
  out.gain_bits = candidate.bits;
  out.score = candidate.score;
  out.leads = candidate.leads;
  out.tools = candidate.tools;
  out.switching = candidate.switching;
  const auto row = [](std::size_t k) { return static_cast<Eigen::Index>(k); };
  out.expect_sound = candidate.clamp ? view.sound[row(view.points.size() + candidate.branch)]
                                     : view.sound[row(candidate.red)] - view.sound[row(candidate.black)];
  out.expect_faulty = parting(forecasts);
  name_places(outlook, view, candidate, out);
  const Sides sides = sides_of(outlook, view, forecasts, out);
  out.bad = names(sides.bad, sides.good, repairs);
  out.good = names(sides.good, sides.bad, repairs);
  out.why = reason(out, repairs);
  return out;
}

}  // namespace ohmtrail::diagnose::next
