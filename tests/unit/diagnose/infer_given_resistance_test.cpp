// Resistances that the file gives outright count as readings, each once.
#include <gtest/gtest.h>

#include "diagnose/infer/build.hpp"
#include "diagnose/infer/forward.hpp"
#include "diagnose/infer/optimum.hpp"
#include "ohmtrail/netlist/read.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

Survey survey_of(const std::string& ends, const std::string& system_keys = "") {
  const auto read =
      netlist::read(R"({"ohmtrail":1,"system":{"name":"s","nominal":12)" + system_keys + R"(},
      "batteries":[{"id":"B","plus":"+","minus":"-","nominal":12}],
      "runs":[{"id":"R","from":"+","to":"L+","gauge":"2 AWG","length":2,"ends":)" +
                    ends + R"(}],"loads":[{"id":"L","plus":"L+","minus":"-","takes":"60 A"}]})");
  EXPECT_TRUE(read) << (read ? "" : netlist::format(read.error().front(), "s"));
  return build_survey(read->system);
}

const std::string opened = R"(,"terminations":"contact-and-crimp")";

TEST(GivenResistance, OfAWholeEndIsOneReading) {
  const Survey survey = survey_of(R"({"from":{"kind":"crimped","resistance":"0.8 mohm"},"to":"crimped"})");
  ASSERT_EQ(survey.model.observations.size(), 1U);
  const Observation& one = survey.model.observations.front();
  EXPECT_EQ(one.also, -1);
  EXPECT_NEAR(one.measured, 0.8e-3, 1e-15);
}

TEST(GivenResistance, OfAnOpenedEndIsOneReadingOfBothItsHalves) {
  const Survey survey =
      survey_of(R"({"from":{"kind":"crimped","resistance":"0.8 mohm"},"to":"crimped"})", opened);
  ASSERT_EQ(survey.model.observations.size(), 1U);
  const Observation& one = survey.model.observations.front();
  EXPECT_NEAR(one.measured, 0.8e-3, 1e-15);
  EXPECT_EQ(one.parameter, survey.element_parameter.at("R/from"));
  EXPECT_EQ(one.also, survey.element_parameter.at("R/from-crimp"));
  Forward forward(survey.model);
  Eigen::VectorXd value = values_at(survey.model, prior_means(survey.model, {}));
  value[one.parameter] = 0.5e-3;
  value[one.also] = 0.2e-3;
  const auto linear = forward.linearise(value);
  ASSERT_TRUE(linear);
  EXPECT_NEAR(linear->predicted[0], 0.7e-3, 1e-15);
  EXPECT_EQ(linear->by_value(0, one.parameter), 1);
  EXPECT_EQ(linear->by_value(0, one.also), 1);
  EXPECT_NEAR((*forward.predict(value))[0], 0.7e-3, 1e-15);
}

TEST(GivenResistance, OfContactAndCrimpEachTheirOwnAreTwoReadings) {
  const Survey survey = survey_of(
      R"({"from":{"kind":"crimped","resistance":"0.5 mohm","crimp":{"resistance":"0.1 mohm"}},"to":"crimped"})");
  ASSERT_EQ(survey.model.observations.size(), 2U);
  for (const Observation& one : survey.model.observations) EXPECT_EQ(one.also, -1);
  EXPECT_NEAR(survey.model.observations[0].measured + survey.model.observations[1].measured, 0.6e-3, 1e-15);
}

TEST(GivenResistance, SoundValuesAreNoReadings) {
  EXPECT_TRUE(survey_of(R"({"from":{"kind":"crimped","sound":"0.05 mohm"},"to":"crimped"})", opened)
                  .model.observations.empty());
}

}  // namespace
}  // namespace ohmtrail::diagnose::inference
