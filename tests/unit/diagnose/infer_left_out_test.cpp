#include <fmt/core.h>
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <string>

#include "diagnose/infer/build.hpp"
#include "diagnose/infer/posterior.hpp"
#include "diagnose/infer/weighing.hpp"
#include "ohmtrail/netlist/read.hpp"
#include "support/random_cases.hpp"
#include "support/seeded_random.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

std::string volts(double value, const char* red, const char* black) {
  return fmt::format(R"({{"case":"on","volts":{:.4f},"red":"{}","black":"{}"}})", value, red, black);
}

// Battery, run, switch, joint and load in one loop (invented): seven things that can be faulty, four
// readings that can be wrong. Some of the loop is faulty, by chance, and a reading now and then is a blunder.
netlist::System small_system(std::uint64_t seed) {
  test::SeededRandom random(seed);
  const auto drawn = [&](double sound, double sd, double worse) {
    return sound * std::exp(sd * random.normal()) *
           (random.chance(0.25) ? worse * random.uniform(0.5, 3) : 1);
  };
  const double amperes = 80, emf = 12.7;
  const double battery = drawn(4e-3, 0.2, 2.5), run = drawn(2e-3, 0.1, 2.5);
  const double contact = drawn(2e-4, 0.35, 8), joint = drawn(3e-4, 0.35, 12);
  const auto noise = [&] { return 1e-4 * random.normal() + (random.chance(0.1) ? 0.02 : 0); };
  const bool as_a_whole = random.chance(0.5);
  const double posts = emf - amperes * battery;
  std::string readings = volts(posts + noise(), "+", "-");
  readings += "," + volts(amperes * run + noise(), "+", "a");
  readings += "," + (as_a_whole ? volts(amperes * (contact + joint) + noise(), "a", "c")
                                : volts(amperes * contact + noise(), "a", "b"));
  readings += "," + volts(posts - amperes * (run + contact + joint) + noise(), "c", "-");
  const auto read = netlist::read(R"({"ohmtrail":1,"system":{"name":"small","nominal":12},
    "batteries":[{"id":"B","plus":"+","minus":"-","nominal":12,"emf":12.7,"resistance":"4 mohm"}],
    "runs":[{"id":"M","from":"+","to":"a","gauge":"35 mm2","length":"2 m","sound":"1.9 mohm",
             "ends":{"from":{"kind":"crimped","sound":"0.05 mohm"},"to":{"kind":"crimped","sound":"0.05 mohm"}}}],
    "switches":[{"id":"S","from":"a","to":"b","kind":"battery-switch","sound":"0.2 mohm"}],
    "joints":[{"id":"J","from":"b","to":"c","kind":"stud","sound":"0.3 mohm"}],
    "loads":[{"id":"L","plus":"c","minus":"-","takes":"80 A"}],
    "cases":[{"name":"on","on":["L"]}],"readings":[)" +
                                  readings + "]}");
  EXPECT_TRUE(read) << (read ? "" : netlist::format(read.error().front(), "small"));
  return read->system;
}

// Every hypothesis there is, each at its own optimum of the linearised network.
class Enumeration {
 public:
  Enumeration(const Model& model, const Weighing& weighing) : model_(model), weighing_(weighing) {
    for (std::size_t p = 0; p < model.parameters.size(); ++p)
      if (model.parameters[p].fault) faults_.push_back(static_cast<int>(p));
    const std::size_t things = faults_.size() + model.observations.size();
    for (std::size_t bits = 0; bits < (std::size_t{1} << things); ++bits) {
      const Hypothesis hypothesis = at(bits);
      shares_.emplace_back(hypothesis, relative_evidence(linear(hypothesis)));
      all_ += shares_.back().second;
    }
    for (auto& [hypothesis, share] : shares_) {
      share /= all_;
    }
  }

  // The share of all evidence in hypotheses whose core part was not weighed.
  double missing() const {
    double out = 0;
    for (const auto& [hypothesis, share] : shares_) {
      out += weighed(hypothesis) ? 0 : share;
    }
    return out;
  }

  // Chance of a fault by parameter, with the probable ones at their optima of the real network.
  std::vector<double> fault(Forward& forward) const {
    std::vector<double> out(model_.parameters.size(), 0);
    double all = 0;
    for (const auto& [hypothesis, share] : shares_) {
      const double here = share > 1e-3 ? share_through_the_network(forward, hypothesis) : share;
      all += here;
      for (const int p : hypothesis.faulty) {
        out[static_cast<std::size_t>(p)] += here;
      }
    }
    for (double& one : out) {
      one /= all;
    }
    return out;
  }

 private:
  Hypothesis at(std::size_t bits) const {
    Hypothesis out;
    for (std::size_t k = 0; k < faults_.size(); ++k)
      if ((bits >> k & 1) != 0) out.faulty.push_back(faults_[k]);
    for (std::size_t o = 0; o < model_.observations.size(); ++o)
      if ((bits >> (faults_.size() + o) & 1) != 0) out.wrong.push_back(static_cast<int>(o));
    return out;
  }

  Optimum linear(const Hypothesis& hypothesis) const {
    const Optimum& base = weighing_.base->optimum;
    return optimise_linear(model_, base.near, hypothesis, base.x);
  }

  double relative_evidence(const Optimum& optimum) const {
    const double here = std::exp(Screen(model_, optimum).root().log_weight - weighing_.around.top);
    return std::isfinite(here) ? here : 0;
  }

  double share_through_the_network(Forward& forward, const Hypothesis& hypothesis) const {
    const auto real = optimise(forward, linear(hypothesis));
    return real ? relative_evidence(*real) / all_ : 0;
  }

  bool weighed(const Hypothesis& hypothesis) const {
    const Hypothesis& core = weighing_.around.core;
    Hypothesis inside;
    for (const int p : hypothesis.faulty)
      if (core.is_faulty(p)) inside.faulty.push_back(p);
    for (const int o : hypothesis.wrong)
      if (core.is_wrong(o)) inside.wrong.push_back(o);
    return weighing_.around.weighed.contains(weighing_.sets->key(inside));
  }

  const Model& model_;
  const Weighing& weighing_;
  std::vector<int> faults_;
  std::vector<std::pair<Hypothesis, double>> shares_;
  double all_ = 0;
};

// A random system with what the search finds in it; `check` also gets the whole enumeration.
void for_each_system(const std::function<void(int, const netlist::System&, Forward&, const Weighing&,
                                              const Enumeration&)>& check) {
  const int systems = test::random_cases(240);
  for (int k = 0; k < systems; ++k) {
    const netlist::System system = small_system(5000 + static_cast<std::uint64_t>(k));
    const Survey survey = build_survey(system);
    Forward forward(survey.model);
    const auto weighing = weigh_hypotheses(forward, {});
    ASSERT_TRUE(weighing) << k;
    check(k, system, forward, *weighing, Enumeration(survey.model, *weighing));
  }
}

// What the search does not weigh, of all subsets there are: no more than it says.
TEST(LeftOut, IsAtMostWhatIsSaidOfAllSubsets) {
  for_each_system([](int k, const netlist::System&, Forward&, const Weighing& weighing,
                     const Enumeration& all) { EXPECT_LE(all.missing(), weighing.around.left_out) << k; });
}

// The network is not linear in its resistances, so that the probable ones count by their real optimum.
TEST(LeftOut, FaultsAreAsProbableAsOverAllSubsets) {
  for_each_system(
      [](int k, const netlist::System& system, Forward& forward, const Weighing&, const Enumeration& all) {
        const auto posterior = find_posterior(build_survey(system), {});
        ASSERT_TRUE(posterior) << k;
        const std::vector<double> expected = all.fault(forward);
        for (std::size_t p = 0; p < expected.size(); ++p) {
          EXPECT_NEAR(posterior->fault[p], expected[p], 0.03) << "system " << k << ", unknown " << p;
        }
      });
}

}  // namespace
}  // namespace ohmtrail::diagnose::inference
