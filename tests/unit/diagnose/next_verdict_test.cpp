#include "diagnose/next/verdict.hpp"

#include <gtest/gtest.h>

#include <string>

namespace ohmtrail::diagnose {
namespace {

using next::judge;
using next::Weighed;

RepairChance chance(const std::string& id, double probability, bool read_across = false) {
  return {id, "the joint \"" + id + '"', probability, {id}, read_across};
}

/// Of readings that agree with what is believed.
NextResult with(std::vector<RepairChance> repairs) {
  NextResult out;
  out.repairs = std::move(repairs);
  out.inference.fit.degrees_of_freedom = 3;
  out.inference.fit.p_value = 0.4;
  return out;
}

NextResult judged(NextResult result, const Weighed& weighed) {
  judge(weighed, result);
  return result;
}

TEST(Verdict, WithoutPartsThereIsNothingToFind) {
  const auto result = judged(with({}), {});
  EXPECT_EQ(result.verdict, Verdict::sound);
  EXPECT_EQ(result.verdict_text, "There is nothing in this file that could be faulty.");
}

TEST(Verdict, GoesOnWhileTheBestReadingTellsSomething) {
  const Weighed weighed{true, false, 0.5};
  EXPECT_EQ(judged(with({chance("a", 0.6), chance("b", 0.4)}), weighed).verdict, Verdict::go_on);
}

TEST(Verdict, GoesOnUntilTheOpeningIsTaken) {
  const Weighed weighed{false, false, 0.5};
  EXPECT_EQ(judged(with({chance("a", 0.999)}), weighed).verdict, Verdict::go_on);
}

TEST(Verdict, OneThatIsSureAndExplainsItIsFound) {
  const Weighed weighed{true, false, 0.5};
  const auto read = judged(with({chance("a", 0.999, true), chance("b", 0.2)}), weighed);
  EXPECT_EQ(read.verdict, Verdict::found);
  EXPECT_EQ(read.verdict_text, "It is the joint \"a\": read across it, and it explains the sag.");
  const auto unread = judged(with({chance("a", 0.999)}), weighed);
  EXPECT_EQ(unread.verdict_text, "It is the joint \"a\"; it was not read across to confirm it.");
}

TEST(Verdict, SeveralThatAreSureAreToldTogether) {
  const Weighed weighed{true, false, 0.5};
  const auto each = judged(with({chance("a", 0.999, true), chance("b", 0.99, true)}), weighed);
  EXPECT_EQ(each.verdict_text, "Sure to be faulty: the joint \"a\", the joint \"b\". Each was read across.");
  const auto one = judged(with({chance("a", 0.999, true), chance("b", 0.99)}), weighed);
  EXPECT_EQ(one.verdict_text,
            "Sure to be faulty: the joint \"a\", the joint \"b\"; not each was read across.");
}

TEST(Verdict, IsNotFoundWhileAnotherIsInDoubt) {
  const Weighed weighed{true, false, 0.5};
  EXPECT_EQ(judged(with({chance("a", 0.999, true), chance("b", 0.5)}), weighed).verdict, Verdict::go_on);
}

TEST(Verdict, IsNotFoundWhileTheReadingsDisagreeWithIt) {
  NextResult result = with({chance("a", 0.999, true)});
  result.inference.fit.p_value = 1e-6;
  EXPECT_EQ(judged(result, {true, false, 0.5}).verdict, Verdict::go_on);
}

TEST(Verdict, WaitsForWhatConfirms) {
  EXPECT_EQ(judged(with({chance("a", 0.999)}), {true, true, 0.001}).verdict, Verdict::go_on);
}

TEST(Verdict, NothingFaultyIsToldOnceItIsSure) {
  NextResult result = with({chance("a", 0.01)});
  result.nothing_faulty = 0.99;
  EXPECT_EQ(judged(result, {true, false, 0.5}).verdict, Verdict::sound);
  EXPECT_EQ(judged(result, {false, false, 0.5}).verdict, Verdict::go_on);
}

TEST(Verdict, SuspectsThatNoReadingPartsAreNamed) {
  const auto result =
      judged(with({chance("a", 0.5), chance("b", 0.4), chance("c", 0.02)}), {true, false, 0.001});
  EXPECT_EQ(result.verdict, Verdict::cannot_separate);
  EXPECT_NE(result.verdict_text.find("the joint \"a\", the joint \"b\". Load it harder"), std::string::npos)
      << result.verdict_text;
}

TEST(Verdict, WhereNothingIsWorthTakingNoOptionIsLeft) {
  NextResult result = with({chance("a", 0.999, true), chance("b", 0.5)});
  result.options.resize(2);
  for (NextOption& option : result.options) option.gain_bits = 0.01;
  result = judged(std::move(result), {true, false, 0.01});
  EXPECT_EQ(result.verdict, Verdict::cannot_separate);
  EXPECT_TRUE(result.options.empty());
  EXPECT_NE(result.verdict_text.find("No further reading is worth taking"), std::string::npos);
}

}  // namespace
}  // namespace ohmtrail::diagnose
