#include "ohmtrail/diagnose/next.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "diagnose/next/information.hpp"
#include "ohmtrail/netlist/read.hpp"
#include "support/seeded_random.hpp"

namespace ohmtrail::diagnose {
namespace {

using next::Forecast;

// Sixteen like joints in a row between battery and load: p0 … p16 (invented).
std::string chain(const std::string& readings, const std::string& points = "") {
  std::string joints;
  for (int k = 0; k < 16; ++k) {
    const std::string from = k == 0 ? "+" : "p" + std::to_string(k);
    joints += std::string(k == 0 ? "" : ",") + R"({"id":"j)" + std::to_string(k) + R"(","from":")" + from +
              R"(","to":"p)" + std::to_string(k + 1) + R"(","kind":"stud","sound":"0.2 mohm"})";
  }
  return R"({"ohmtrail":1,"system":{"name":"chain","nominal":12},
    "batteries":[{"id":"B","plus":"+","minus":"-","nominal":12,"emf":12.7,"resistance":"4 mohm"}],
    "joints":[)" +
         joints + R"(],"loads":[{"id":"L","plus":"p16","minus":"-","takes":"100 A"}],
    "cases":[{"name":"on","on":["L"]},{"name":"off"}],
    "meters":[{"id":"m","volts":{"percent":0.1,"counts":1,"digits_to":0.0001},"amps":{"percent":1,"counts":1,"digits_to":0.1}}],
    "points":{)" +
         points + R"(},"readings":[)" + readings + "]}";
}

netlist::System system_of(const std::string& text) {
  auto read = netlist::read(text);
  EXPECT_TRUE(read) << (read ? "" : netlist::format(read.error().front(), "chain"));
  return read->system;
}

std::string volts(double value, const std::string& red, const std::string& black) {
  return R"({"case":"on","meter":"m","volts":)" + std::to_string(value) + R"(,"red":")" + red +
         R"(","black":")" + black + R"("})";
}

const std::string clamp = R"({"case":"on","meter":"m","amps":100,"in":"j0"},)";

// 0.32 V of sound drop and 0.4 V more, somewhere.
std::string opening() {
  return clamp + volts(12.3, "+", "-") + ',' + volts(11.58, "p16", "-");
}

int place(const std::string& point) {
  return point == "+" ? 0 : point == "-" ? 16 : std::stoi(point.substr(1));
}

TEST(Next, AsksFirstForWhatMakesEveryLaterReadingUseful) {
  const auto result = next_reading(system_of(
      R"({"ohmtrail":1,"system":{"name":"s","nominal":12},
      "batteries":[{"id":"B","plus":"+","minus":"-","nominal":12}],
      "runs":[{"id":"R","from":"+","to":"L+","gauge":"2 AWG","length":2,"return":{"from":"L-","to":"-"}}],
      "loads":[{"id":"L","plus":"L+","minus":"L-","takes":"80 A"}],
      "cases":[{"name":"off"},{"name":"on","on":["L"]}]})"));
  ASSERT_TRUE(result);
  ASSERT_GE(result->options.size(), 3U);
  EXPECT_EQ(result->options[0].in, "R");
  EXPECT_EQ(result->options[1].red, "+");
  EXPECT_EQ(result->options[1].black, "-");
  EXPECT_EQ(result->options[2].red, "L+");
  EXPECT_EQ(result->options[2].black, "L-");
  for (int k = 0; k < 3; ++k) {
    EXPECT_EQ(result->options[static_cast<std::size_t>(k)].purpose, Purpose::opening);
    EXPECT_EQ(result->options[static_cast<std::size_t>(k)].in_case, "on");
  }
  EXPECT_EQ(result->verdict, Verdict::go_on);
}

TEST(Next, HalvesAPlainChain) {
  const auto result = next_reading(system_of(chain(opening())));
  ASSERT_TRUE(result);
  const NextOption& first = result->options.front();
  EXPECT_EQ(first.in_case, "on");
  ASSERT_TRUE(first.in.empty());
  const int span = std::abs(place(first.red) - place(first.black));
  EXPECT_TRUE(span == 8) << first.red << " to " << first.black;
  EXPECT_NEAR(first.gain_bits, 1.0, 0.1);
  EXPECT_NEAR(static_cast<double>(first.bad.size()), 8, 1);
  EXPECT_NEAR(static_cast<double>(first.good.size()), 8, 1);
}

TEST(Next, HalvesWhatIsLeft) {
  const auto result = next_reading(system_of(chain(opening() + ',' + volts(0.56, "+", "p8"))));
  ASSERT_TRUE(result);
  const NextOption& first = result->options.front();
  const int from = std::min(place(first.red), place(first.black));
  const int to = std::max(place(first.red), place(first.black));
  const int inside = std::max(0, std::min(to, 8) - from);
  EXPECT_EQ(inside, 4) << first.red << " to " << first.black;
  EXPECT_NEAR(first.gain_bits, 1.0, 0.1);
}

TEST(Next, ConfirmsTheLastSuspectByAReadingAcrossIt) {
  const std::string three = opening() + ',' + volts(0.42, "p4", "p5");
  const auto sure = next_reading(system_of(chain(three)));
  ASSERT_TRUE(sure);
  EXPECT_EQ(sure->verdict, Verdict::found);
  EXPECT_EQ(sure->repairs.front().id, "j4");
  EXPECT_TRUE(sure->repairs.front().read_across);

  const auto unread =
      next_reading(system_of(chain(opening() + ',' + volts(0.08, "+", "p4") + ',' + volts(0.5, "+", "p5"))));
  ASSERT_TRUE(unread);
  EXPECT_EQ(unread->verdict, Verdict::go_on);
  EXPECT_EQ(unread->options.front().purpose, Purpose::confirm);
  EXPECT_EQ(unread->options.front().red, "p4");
  EXPECT_EQ(unread->options.front().black, "p5");
  EXPECT_NEAR(unread->options.front().expect_sound, 0.02, 0.01);
  EXPECT_GT(unread->options.front().expect_faulty, 0.03);
  EXPECT_LT(unread->options.front().expect_faulty, 0.42);
}

TEST(Next, NeverOffersAPointOutOfReach) {
  const auto result = next_reading(
      system_of(chain(opening(), R"("p8":{"reach":"no"},"p7":{"reach":"no"},"p9":{"reach":"tools"})")));
  ASSERT_TRUE(result);
  for (const NextOption& option : result->options) {
    for (const std::string& point : {option.red, option.black}) {
      EXPECT_TRUE(point != "p8" && point != "p7") << point;
    }
    EXPECT_EQ(option.tools, option.red == "p9" || option.black == "p9");
  }
}

TEST(Next, SaysThatNothingIsFaulty) {
  const auto result = next_reading(system_of(
      chain(clamp + volts(12.3, "+", "-") + ',' + volts(11.98, "p16", "-") + ',' + volts(0.16, "+", "p8"))));
  ASSERT_TRUE(result);
  EXPECT_GT(result->nothing_faulty, 0.8);
  EXPECT_NE(result->verdict, Verdict::found);
}

// Only the ends of the chain can be touched: after the opening nothing is left to read.
TEST(Next, SaysWhenTheMeterCannotTellTheRestApart) {
  std::string hidden;
  for (int k = 1; k < 16; ++k)
    hidden += (k == 1 ? "" : ",") + ("\"p" + std::to_string(k) + R"(":{"reach":"no"})");
  const auto result = next_reading(system_of(chain(opening() + ',' + volts(0.72, "+", "p16"), hidden)));
  ASSERT_TRUE(result);
  EXPECT_EQ(result->verdict, Verdict::cannot_separate)
      << result->options.front().where << ' ' << result->options.front().gain_bits;
  EXPECT_NE(result->verdict_text.find("Load it harder"), std::string::npos);
}

TEST(Next, StaysWithWhatIsSwitchedOn) {
  const auto result = next_reading(system_of(chain(opening())));
  ASSERT_TRUE(result);
  EXPECT_FALSE(result->options.front().switching);
}

TEST(Next, SameInputSameAnswer) {
  const auto a = next_reading(system_of(chain(opening()))), b = next_reading(system_of(chain(opening())));
  ASSERT_TRUE(a && b);
  ASSERT_EQ(a->options.size(), b->options.size());
  for (std::size_t k = 0; k < a->options.size(); ++k) {
    EXPECT_EQ(a->options[k].where, b->options[k].where);
    EXPECT_EQ(a->options[k].gain_bits, b->options[k].gain_bits);
  }
}

// Two hypotheses of equal chance far apart tell all, one bit; on the same spot nothing.
TEST(Information, IsEntropyWhereNothingOverlapsAndNoneWhereAllDoes) {
  const std::vector<Forecast> apart{{0, 1, 0.5, 0}, {100, 1, 0.5, 1}};
  EXPECT_NEAR(next::information(apart, 7), 1, 1e-3);
  EXPECT_NEAR(next::entropy(apart), 1, 1e-6);
  const std::vector<Forecast> same{{0, 1, 0.5, 0}, {0, 1, 0.5, 1}};
  EXPECT_NEAR(next::information(same, 7), 0, 1e-6);
  const std::vector<Forecast> one_label{{0, 1, 0.5, 3}, {100, 1, 0.5, 3}};
  EXPECT_EQ(next::information(one_label, 7), 0);
}

// Binary input, Gaussian noise, ±1 with sd 1: capacity 0.4861 bits, by the trapezoidal rule on ±12 with
// 48 000 steps as an independent integral.
TEST(Information, AgreesWithAFineIntegral) {
  double bits = 0;
  const double step = 24.0 / 48000;
  for (double y = -12; y < 12; y += step) {
    const auto normal = [](double z) {
      return std::exp(-0.5 * z * z) / std::sqrt(2 * 3.14159265358979323846);
    };
    const double a = normal(y - 1), b = normal(y + 1), all = 0.5 * (a + b);
    if (a > 0) bits += 0.5 * a * std::log2(a / all) * step;
    if (b > 0) bits += 0.5 * b * std::log2(b / all) * step;
  }
  EXPECT_NEAR(next::information({{1, 1, 0.5, 0}, {-1, 1, 0.5, 1}}, 7), bits, 2e-3);
}

// What is joined keeps weight, mean and variance; what it tells of the label hardly changes.
TEST(Condensed, TellsNearlyTheSameWithFewerParts) {
  test::SeededRandom random(4);
  for (int k = 0; k < 40; ++k) {
    std::vector<Forecast> all;
    for (int j = 0; j < 48; ++j)
      all.push_back(
          {j / 3 + random.uniform(-0.2, 0.2), random.uniform(0.5, 2), random.uniform(0.1, 1), j / 3});
    const std::vector<Forecast> fewer = next::condensed(all);
    EXPECT_LT(fewer.size(), all.size());
    double weight = 0, mean = 0, weight_now = 0, mean_now = 0;
    for (const Forecast& one : all) weight += one.weight, mean += one.weight * one.mean;
    for (const Forecast& one : fewer) weight_now += one.weight, mean_now += one.weight * one.mean;
    EXPECT_NEAR(weight_now, weight, 1e-9);
    EXPECT_NEAR(mean_now, mean, 1e-9);
    EXPECT_NEAR(next::information(fewer, 7), next::information(all, 7), 0.08);
  }
}

TEST(Condensed, LeavesApartWhatStandsApartOrHasAnotherLabel) {
  EXPECT_EQ(next::condensed({{0, 1, 0.5, 0}, {0, 1, 0.5, 1}}).size(), 2U);
  EXPECT_EQ(next::condensed({{0, 1, 0.5, 0}, {3, 1, 0.5, 0}}).size(), 2U);
  EXPECT_EQ(next::condensed({{0, 1, 0.5, 0}, {0.1, 1, 0.5, 0}}).size(), 1U);
}

TEST(Next, PassesOverWhatCannotBeTaken) {
  NextOptions options;
  const auto first = next_reading(system_of(chain(opening())), options);
  ASSERT_TRUE(first);
  const NextOption& best = first->options.front();
  options.passed_over = {{best.in_case, best.in, best.black, best.red}};
  const auto second = next_reading(system_of(chain(opening())), options);
  ASSERT_TRUE(second);
  for (const NextOption& one : second->options) EXPECT_NE(one.where, best.where);
  EXPECT_GT(second->options.front().gain_bits, 0.8) << "there are others nearly as good";
}

TEST(Parting, StandsBetweenTheTwoHeaps) {
  const double at =
      next::parting({{0, 0.1, 0.25, 0}, {0.2, 0.1, 0.25, 1}, {5, 0.1, 0.25, 2}, {5.1, 0.3, 0.25, 3}});
  EXPECT_GT(at, 0.5);
  EXPECT_LT(at, 4.9);
}

}  // namespace
}  // namespace ohmtrail::diagnose
