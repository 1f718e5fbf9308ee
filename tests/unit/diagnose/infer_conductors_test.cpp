// A cable and its lugs taken together: what is known of it where none of its parts is known.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/diagnose/infer_apply.hpp"
#include "support/simulated_survey.hpp"
#include "unit/diagnose/feed_rig.hpp"

namespace ohmtrail::diagnose {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// "feed" loses 500 mV at 100 A from stud to stud: 5 mΩ.
InferResult inferred(const std::string& more_readings = "") {
  return infer(test::feed_survey(test::read_between("b+", "l+", 0.5) + more_readings)).value();
}

const InferredConductor& conductor(const InferResult& result, const std::string& id) {
  return *std::find_if(result.conductors.begin(), result.conductors.end(),
                       [&](const InferredConductor& one) { return one.id == id; });
}

double chance(const InferResult& result, const std::string& id) {
  return fault_probabilities(result).at(id);
}

TEST(InferConductors, AreEveryConductorOfEveryRunInFileOrder) {
  const InferResult result = inferred();
  ASSERT_EQ(result.conductors.size(), 2u);
  EXPECT_EQ(result.conductors[0].id, "feed");
  EXPECT_THAT(result.conductors[0].parts, ElementsAre("feed/from", "feed/wire", "feed/to"));
  EXPECT_EQ(result.conductors[1].id, "back");
}

TEST(InferConductors, KnowTheSumWhereNoPartIsKnown) {
  const InferResult result = inferred();
  const InferredConductor& feed = conductor(result, "feed");
  EXPECT_NEAR(feed.resistance, 5e-3, 0.15e-3);
  EXPECT_LT(feed.low, 5e-3);
  EXPECT_GT(feed.high, 5e-3);
  EXPECT_LT(feed.high / feed.low, 1.1);
  EXPECT_TRUE(feed.informed);
  const auto wide = std::find_if(result.elements.begin(), result.elements.end(),
                                 [](const InferredElement& e) { return e.id == "feed/from"; });
  EXPECT_GT(wide->high / wide->low, 10);
}

TEST(InferConductors, TheirSoundValueIsThatOfTheirParts) {
  const InferResult result = inferred();
  double sum = 0;
  for (const InferredElement& e : result.elements)
    if (e.id.starts_with("feed/")) sum += e.sound_resistance;
  EXPECT_NEAR(conductor(result, "feed").sound_resistance, sum, 1e-9 * sum);
}

TEST(InferConductors, AreSurelyFaultyWhereEachLugIsWithHalfTheChance) {
  const InferResult result = inferred();
  EXPECT_GT(conductor(result, "feed").fault_probability, 0.95);
  EXPECT_LT(conductor(result, "back").fault_probability, 0.2);
  EXPECT_NEAR(chance(result, "feed/from"), chance(result, "feed/to"), 0.02);
  EXPECT_LT(chance(result, "feed/from"), 0.6);
}

TEST(InferConductors, AreNeverLikelierThanAllTheirPartsNorLessThanOne) {
  test::SurveyOptions options;
  options.layout.elements = 30;
  options.readings = test::Readings::every_third_point;
  for (const std::uint64_t seed : {61u, 62u, 63u, 64u}) {
    const auto result = infer(test::simulate(seed, options).system);
    ASSERT_TRUE(result);
    const auto by_id = fault_probabilities(*result);
    for (const InferredConductor& one : result->conductors) {
      double most = 0, sum = 0;
      for (const std::string& id : one.parts) {
        most = std::max(most, by_id.at(id));
        sum += by_id.at(id);
      }
      EXPECT_GE(one.fault_probability, most - 1e-3) << one.id;
      EXPECT_LE(one.fault_probability, sum + 1e-3) << one.id;
    }
  }
}

TEST(Unparted, HoldsTheLugsThatTheReadingsDoNotTellApart) {
  const auto shared = unparted(inferred());
  EXPECT_EQ(shared.at("feed/from").conductor, "feed");
  EXPECT_EQ(shared.at("feed/to").conductor, "feed");
  EXPECT_GT(shared.at("feed/to").probability, 0.95);
  for (const auto& [id, one] : shared) EXPECT_EQ(one.conductor, "feed") << id;
}

TEST(Unparted, IsEmptyOnceAReadingAcrossOneLugTells) {
  const InferResult result = inferred(test::read_between("b+", "feed@from", 0.402));
  EXPECT_GT(chance(result, "feed/from"), 0.95);
  EXPECT_THAT(unparted(result), IsEmpty());
}

TEST(Conductors, AreNamedForPeople) {
  EXPECT_EQ(conductor_in_words("feed"), "the cable \"feed\" with its lugs");
  EXPECT_EQ(conductor_in_words("feed/return"), "the return cable of \"feed\" with its lugs");
}

}  // namespace
}  // namespace ohmtrail::diagnose
