#include "ohmtrail/diagnose/next.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "diagnose/next/opening.hpp"
#include "diagnose/next/places.hpp"
#include "diagnose/next/reach.hpp"
#include "diagnose/next/repairs.hpp"
#include "diagnose/next/tell.hpp"
#include "diagnose/next/verdict.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::diagnose {
namespace next {
namespace {

constexpr std::size_t most_cases = 6;

class Search {
 public:
  Search(const netlist::System& system, InferResult inference, const NextOptions& options)
      : system_(system), posterior_(*inference.posterior), options_(options) {
    out_.inference = std::move(inference);
  }

  NextResult run() {
    out_.repairs = repair_chances(system_, posterior_);
    out_.nothing_faulty = chance_of_nothing(posterior_);
    outlook_ = make_outlook(system_, posterior_, options_);
    view_cases();
    if (!views_.empty()) offer();
    judge(weighed_, out_);
    if (out_.verdict == Verdict::go_on) say_how_coarse();
    return std::move(out_);
  }

 private:
  // The case that is switched on now, then the others in file order.
  std::vector<std::size_t> cases() {
    std::vector<std::size_t> out;
    std::string now = options_.present;
    if (now.empty() && !system_.readings.empty()) now = system_.readings.back().in_case;
    for (std::size_t k = 0; k < outlook_.survey.networks.size(); ++k) {
      const bool present = outlook_.survey.networks[k].case_name == now;
      if (present) present_ = static_cast<int>(k);
      out.insert(present ? out.begin() : out.end(), k);
    }
    if (out.size() > most_cases) {
      out.resize(most_cases);
      out_.coarse = true;
    }
    return out;
  }

  void view_cases() {
    inference::Forward forward(outlook_.survey.model);
    for (const std::size_t k : cases()) {
      const network::Network& network = outlook_.survey.networks[k];
      if (!can_be_fed(forward, k)) continue;
      const Places places =
          places_to_touch(system_, posterior_, network, forward.solution(k), options_.most_points);
      out_.coarse = out_.coarse || places.coarse;
      places_weighed_ = std::max(places_weighed_, places.points.size());
      places_within_reach_ = std::max(places_within_reach_, places.within_reach);
      if (places.points.empty()) continue;
      if (auto view = view_case(outlook_, forward, k, places.points, places.branches)) {
        views_.push_back(std::move(*view));
      }
    }
    if (present_ < 0 && !views_.empty())
      present_ = static_cast<int>(views_[heaviest(outlook_, views_)].in_case);
  }

  // Where nothing could feed a case's loads at their ratings they are taken smaller, until something can.
  bool can_be_fed(inference::Forward& forward, std::size_t k) {
    constexpr int most_cuts = 24;
    const auto fed = [&](const Eigen::VectorXd& x) {
      return forward.solved_case(k, inference::values_at(outlook_.survey.model, x)) != nullptr;
    };
    for (int cut = 0; cut < most_cuts; ++cut) {
      if (fed(outlook_.sound) && fed(outlook_.states.front().x)) return true;
      lower_loads(outlook_, static_cast<int>(k));
      lowered_.insert(outlook_.survey.networks[k].case_name);
    }
    return false;
  }

  // That of the case that is on. Where some case has had its opening and nobody says what is on, another
  // case's would only delay: its readings are weighed like all others.
  std::vector<Candidate> opening_of_what_is_on() {
    if (!options_.present.empty() || present_ < 0)
      return missing_opening(system_, outlook_, views_, options_.present);
    const auto missing = [&](std::size_t k) {
      return missing_opening(system_, outlook_, views_, outlook_.survey.networks[k].case_name);
    };
    for (const CaseView& view : views_)
      if (missing(view.in_case).empty()) return {};
    return missing(static_cast<std::size_t>(present_));
  }

  void offer() {
    std::vector<Candidate> opening = opening_of_what_is_on();
    std::erase_if(opening,
                  [&](const Candidate& one) { return was_passed_over(outlook_, views_[one.view], one); });
    for (Candidate& one : opening) one.bits = information(forecast(outlook_, views_, one), 7);
    // Once something is sure, later readings no longer hang on the opening: it must be worth taking itself.
    if (!out_.repairs.empty() && out_.repairs.front().probability >= sure_enough)
      std::erase_if(opening, [](const Candidate& one) { return one.bits < worth_taking; });
    weighed_.opening_done = opening.empty();
    for (Candidate& one : opening) {
      one.score = one.bits;
      one.switching = static_cast<int>(views_[one.view].in_case) != present_;
      add(one, Purpose::opening);
    }
    const std::vector<Candidate> weighed = weigh(outlook_, views_, present_);
    weighed_.best_bits = weighed.empty() ? 0 : weighed.front().bits;
    if (weighed_.opening_done) offer_confirmation();
    for (const Candidate& one : weighed) {
      if (out_.options.size() >= options_.most) break;
      if (!is_offered(one, &Search::tells_the_same)) add(one, Purpose::separate);
    }
  }

  // A place is offered once: a load may hang on the battery's own posts.
  void add(const Candidate& one, Purpose purpose) {
    if (is_offered(one, &Search::is_same_place)) return;
    chosen_.push_back(one);
    out_.options.push_back(tell(outlook_, views_, one, purpose, out_.repairs));
  }

  bool is_offered(const Candidate& one,
                  bool (Search::*alike)(const Candidate&, const Candidate&) const) const {
    return std::any_of(chosen_.begin(), chosen_.end(),
                       [&](const Candidate& other) { return (this->*alike)(one, other); });
  }

  // Whatever is switched on.
  bool is_same_place(const Candidate& one, const Candidate& other) const {
    ReadingPlace a = place_of(outlook_, views_[one.view], one);
    a.in_case = outlook_.survey.networks[views_[other.view].in_case].case_name;
    return a == place_of(outlook_, views_[other.view], other);
  }

  bool tells_the_same(const Candidate& one, const Candidate& other) const {
    if (one.clamp != other.clamp || one.view != other.view) return false;
    const auto a = forecast(outlook_, views_, one), b = forecast(outlook_, views_, other);
    for (std::size_t k = 0; k < a.size(); ++k) {
      const double apart = std::abs((a[k].mean - a[0].mean) - (b[k].mean - b[0].mean));
      if (apart > 0.5 * std::max(a[k].sd, b[k].sd)) return false;
    }
    return true;
  }

  // Across the one repair that is sure but was never read across.
  void offer_confirmation() {
    if (out_.repairs.empty()) return;
    const RepairChance& lead = out_.repairs.front();
    if (lead.probability < sure_enough || lead.read_across) return;
    const std::size_t v = heaviest(outlook_, views_);
    const CaseView& view = views_[v];
    const network::Network& network = outlook_.survey.networks[view.in_case];
    const auto points = points_of_repairs(network);
    const auto found = points.find(lead.id);
    if (found == points.end()) return;
    std::optional<Candidate> best;
    double most = 0;
    for (std::size_t a = 0; a < view.points.size(); ++a) {
      for (std::size_t b = 0; b < view.points.size(); ++b) {
        const double drop =
            view.mean.front()[static_cast<Eigen::Index>(a)] - view.mean.front()[static_cast<Eigen::Index>(b)];
        const auto has = [&](std::size_t p) {
          const auto& name = network.points[static_cast<std::size_t>(view.points[p])];
          return std::find(found->second.begin(), found->second.end(), name) != found->second.end();
        };
        if (drop > most && has(a) && has(b)) {
          most = drop;
          best = Candidate::volts(v, a, b);
        }
      }
    }
    if (!best || was_passed_over(outlook_, view, *best)) return;
    best->switching = static_cast<int>(view.in_case) != present_;
    best->bits = information(forecast(outlook_, views_, *best), 7);
    best->score = best->bits;
    weighed_.confirming = true;
    add(*best, Purpose::confirm);
  }

  void say_how_coarse() {
    if (out_.coarse) out_.verdict_text = coarse_in_words();
    for (const std::string& one : lowered_) {
      out_.verdict_text += (out_.verdict_text.empty() ? "" : " ") +
                           ("In case \"" + one + "\" the loads are taken ") +
                           "smaller than the file says: at that size nothing could feed them.";
    }
  }

  // How coarse, and what it can cost at most: no reading tells more than is open.
  [[nodiscard]] std::string coarse_in_words() const {
    std::vector<Forecast> open;
    for (const State& state : outlook_.states) open.push_back({0, 1, state.weight, state.label});
    const auto bits = [](double value) { return units::print_number(value, {.significant = 2}); };
    return "A large system: " + std::to_string(places_weighed_) + " of " +
           std::to_string(places_within_reach_) +
           " points were weighed in pairs, closest where suspicion lies. The best reading found tells " +
           bits(weighed_.best_bits) + " of " + bits(entropy(open)) + " bits that are open.";
  }

  const netlist::System& system_;
  const Posterior& posterior_;
  const NextOptions& options_;
  NextResult out_;
  Outlook outlook_;
  std::vector<CaseView> views_;
  std::vector<Candidate> chosen_;
  int present_ = -1;
  Weighed weighed_;
  std::set<std::string> lowered_;  // cases whose loads had to be taken smaller
  std::size_t places_weighed_ = 0, places_within_reach_ = 0;
};

// While little is read, many hypotheses are about as likely as the best.
constexpr int most_optimised = 24;

}  // namespace
}  // namespace next

tl::expected<NextResult, InferFailure> next_reading(const netlist::System& system,
                                                    const NextOptions& options) {
  InferOptions wide;
  wide.optimised = next::most_optimised;
  auto inference = infer(system, wide);
  if (!inference) return tl::unexpected(inference.error());
  return next::Search(system, std::move(*inference), options).run();
}

}  // namespace ohmtrail::diagnose
