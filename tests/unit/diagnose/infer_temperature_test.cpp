// What a thermometer tells of wires and of connections.
#include <gtest/gtest.h>

#include <cmath>

#include "diagnose/infer/build.hpp"
#include "diagnose/infer/forward.hpp"
#include "diagnose/infer/optimum.hpp"
#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/diagnose/infer_apply.hpp"
#include "ohmtrail/diagnose/joint_temperature.hpp"
#include "ohmtrail/netlist/read.hpp"

namespace ohmtrail::diagnose {
namespace {

/// Two cables that meet on a stud, and a load of 60 A (invented).
std::string boat(const std::string& readings, const std::string& joint_keys = "",
                 const std::string& load = "60 A") {
  return R"({"ohmtrail":1,"system":{"name":"invented","nominal":12,"ambient":"25 C"},
    "batteries":[{"id":"B","plus":"+","minus":"-","nominal":12,"emf":12.7,"resistance":"4 mohm"}],
    "runs":[{"id":"feed","from":"+","to":"stud in","gauge":"6 AWG","length":2},
            {"id":"tail","from":"stud out","to":"L+","gauge":"6 AWG","length":2}],
    "joints":[{"id":"stud","from":"stud in","to":"stud out","kind":"stud","sound":"0.1 mohm")" +
         joint_keys + R"(}],
    "loads":[{"id":"L","plus":"L+","minus":"-","takes":")" +
         load + R"("}],"cases":[{"name":"on","on":["L"]}],"readings":[)" + readings + "]}";
}

netlist::System system_of(const std::string& text) {
  const auto read = netlist::read(text);
  EXPECT_TRUE(read) << (read ? "" : netlist::format(read.error().front(), "boat"));
  return read->system;
}

std::string temperature(const std::string& at, double celsius) {
  return R"({"case":"on","temperature":)" + std::to_string(celsius) + R"(,"at":")" + at + R"("})";
}
const std::string clamp = R"({"case":"on","amps":60,"in":"feed"})";

double fault_of(const InferResult& result, const std::string& id) {
  return fault_probabilities(result).at(id);
}

TEST(InferTemperature, OfAJointIsWhatTheRankingWouldSay) {
  const netlist::System system = system_of(boat(temperature("stud", 60), R"(,"resistance":"2 mohm")"));
  const inference::Survey survey = inference::build_survey(system);
  inference::Forward forward(survey.model);
  Eigen::VectorXd value = inference::values_at(survey.model, inference::prior_means(survey.model, {}));
  value[survey.element_parameter.at("stud")] = 2e-3;
  const auto predicted = forward.predict(value);
  ASSERT_TRUE(predicted);
  const auto solved = solve::solve_case(network::build(system, system.cases.front()));
  ASSERT_TRUE(solved);
  const auto ranked = joint_temperature(system, *solved, *solved->network.element("stud"));
  ASSERT_TRUE(ranked);
  EXPECT_NEAR((*predicted)[0] + 25, ranked->celsius, 2.6) << "the ranking rounds to 5 K";
  EXPECT_GT((*predicted)[0], 10);
}

TEST(InferTemperature, DerivativesEqualCentralDifferences) {
  const netlist::System system = system_of(
      boat(temperature("stud", 60) + ',' + temperature("feed/to", 50) + ',' + temperature("feed", 40), "",
           "700 W"));
  const inference::Survey survey = inference::build_survey(system);
  ASSERT_EQ(survey.model.observations.size(), 3U);
  inference::Forward forward(survey.model);
  Eigen::VectorXd value = inference::values_at(survey.model, inference::prior_means(survey.model, {}));
  value[survey.element_parameter.at("stud")] = 1.5e-3;
  for (Eigen::Index p = 0; p < value.size(); ++p) value[p] += value[p] == 0 ? 1e-3 : 0;
  const auto here = forward.linearise(value);
  ASSERT_TRUE(here);
  for (Eigen::Index p = 0; p < value.size(); ++p) {
    Eigen::VectorXd up = value, down = value;
    const double step = 1e-4 * value[p];
    up[p] += step;
    down[p] -= step;
    const Eigen::VectorXd difference = (*forward.predict(up) - *forward.predict(down)) / (2 * step);
    for (Eigen::Index i = 0; i < difference.size(); ++i)
      EXPECT_NEAR(here->by_value(i, p), difference[i],
                  1e-4 * std::max(1.0, here->by_value.row(i).cwiseAbs().maxCoeff()))
          << survey.model.parameters[static_cast<std::size_t>(p)].id << " reading " << i;
  }
}

TEST(InferTemperature, AHotJointIsASuspectAndACoolOneIsNot) {
  const auto hot = infer(system_of(boat(clamp + ',' + temperature("stud", 130))));
  const auto cool = infer(system_of(boat(clamp + ',' + temperature("stud", 42))));
  const auto unread = infer(system_of(boat(clamp)));
  ASSERT_TRUE(hot && cool && unread);
  EXPECT_GT(fault_of(*hot, "stud"), 0.3);
  EXPECT_GT(fault_of(*hot, "stud"), 5 * fault_of(*unread, "stud"));
  EXPECT_LT(fault_of(*cool, "stud"), fault_of(*unread, "stud"));
  EXPECT_GT(fault_of(*hot, "stud"), fault_of(*hot, "feed/wire"));
  for (const InferredReading& reading : hot->readings) EXPECT_FALSE(std::isnan(reading.predicted));
}

TEST(InferTemperature, AWarmWireTellsOfItsCurrent) {
  const auto warm = infer(system_of(boat(temperature("feed", 45))));
  const auto cold = infer(system_of(boat(temperature("feed", 25))));
  ASSERT_TRUE(warm && cold);
  EXPECT_GT(warm->loads.front().share, cold->loads.front().share);
}

// Of the load nothing can be told by a thermometer: the reading is left out, and that is said.
TEST(InferTemperature, WhereNoCableLeadsAwayItIsLeftOutAndSaid) {
  const netlist::System system = system_of(
      R"({"ohmtrail":1,"system":{"name":"s","nominal":12},
      "batteries":[{"id":"B","plus":"+","minus":"-","nominal":12}],
      "joints":[{"id":"strap","from":"+","to":"L+","kind":"post-clamp"}],
      "loads":[{"id":"L","plus":"L+","minus":"-","takes":"60 A"}],
      "cases":[{"name":"on","on":["L"]}],"readings":[)" +
      temperature("strap", 70) + "]}");
  const auto result = infer(system);
  ASSERT_TRUE(result);
  EXPECT_TRUE(std::isnan(result->readings.front().predicted));
  bool said = false;
  for (const network::Assumption& one : result->assumptions)
    said = said || one.text.find("reading 1 was left out") != std::string::npos;
  EXPECT_TRUE(said);
}

// The wire is warm, so that an ohm of its unknown counts for more than one of a lug: they are in series all
// the same, and their sum is told.
TEST(InferTemperature, AWarmRunReadAsAWholeHasASum) {
  const auto result =
      infer(system_of(boat(clamp + R"(,{"case":"on","volts":0.36,"red":"+","black":"stud in"})")));
  ASSERT_TRUE(result);
  bool found = false;
  for (const UnresolvedGroup& group : result->unresolved) {
    if (group.ids.front() != "feed/from") continue;
    found = true;
    EXPECT_NEAR(group.sum, 6e-3, 0.2e-3);
    EXPECT_LT(group.low, group.sum);
    EXPECT_GT(group.high, group.sum);
  }
  EXPECT_TRUE(found);
}

}  // namespace
}  // namespace ohmtrail::diagnose
