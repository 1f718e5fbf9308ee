#include "ohmtrail/trade/gauge.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <stdexcept>

namespace ohmtrail::trade {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;

TEST(Gauge, reads_back_what_it_prints) {
  for (const auto system : {GaugeSystem::awg, GaugeSystem::sae, GaugeSystem::metric})
    for (const Gauge& gauge : known_gauges(system)) {
      const auto read = parse_gauge(print(gauge));
      ASSERT_TRUE(read) << print(gauge) << ": " << read.error();
      EXPECT_EQ(*read, gauge) << print(gauge);
    }
}

TEST(Gauge, takes_the_spellings_of_the_trade) {
  const struct {
    const char* text;
    Gauge gauge;
  } spellings[] = {{"2/0 AWG", awg(-1)},    {"2/0", awg(-1)},         {"00", awg(-1)},
                   {"2/0awg", awg(-1)},     {"0000", awg(-3)},        {"4/0", awg(-3)},
                   {"1/0", awg(0)},         {"0 AWG", awg(0)},        {"2", awg(2)},
                   {"2 AWG", awg(2)},       {"2 ga", awg(2)},         {"2 gauge", awg(2)},
                   {"2 SAE", sae(2)},       {"2/0 SAE", sae(-1)},     {"2 sae", sae(2)},
                   {"22 AWG", awg(22)},     {"35 mm2", metric(35)},   {"35mm2", metric(35)},
                   {"35 mm²", metric(35)},  {"2.5 mm2", metric(2.5)}, {"0.5 MM2", metric(0.5)},
                   {"35 sq mm", metric(35)}};
  for (const auto& s : spellings) {
    const auto read = parse_gauge(s.text);
    ASSERT_TRUE(read) << s.text << ": " << read.error();
    EXPECT_EQ(*read, s.gauge) << s.text;
  }
}

TEST(Gauge, prints_as_written_in_files) {
  EXPECT_EQ(print(awg(-1)), "2/0 AWG");
  EXPECT_EQ(print(awg(0)), "1/0 AWG");
  EXPECT_EQ(print(awg(14)), "14 AWG");
  EXPECT_EQ(print(sae(2)), "2 SAE");
  EXPECT_EQ(print(metric(35)), "35 mm2");
  EXPECT_EQ(print(metric(0.75)), "0.75 mm2");
}

TEST(Gauge, unknown_sizes_name_the_nearest) {
  const struct {
    const char *text, *nearest;
  } unknown[] = {{"5/0 AWG", "4/0 AWG"}, {"24 AWG", "22 AWG"}, {"3 SAE", "4 SAE"},    {"36 mm2", "35 mm2"},
                 {"2.6 mm2", "2.5 mm2"}, {"0 mm2", "0.5 mm2"}, {"-3 mm2", "0.5 mm2"}, {"500 mm2", "300 mm2"},
                 {"2.5 AWG", "AWG"},     {"3.5/0", "AWG"}};
  for (const auto& u : unknown) {
    const auto read = parse_gauge(u.text);
    ASSERT_FALSE(read) << u.text;
    EXPECT_THAT(read.error(),
                AllOf(HasSubstr(u.text), HasSubstr("nearest"), HasSubstr(u.nearest), HasSubstr("expected")));
  }
}

TEST(Gauge, nonsense_is_told_what_a_size_looks_like) {
  for (const char* text :
       {"", "thick", "AWG", "mm2", "2//0", "/0", "35 cm", "2/0 AWG AWG", "nan AWG", "inf mm2", "1e999"}) {
    const auto read = parse_gauge(text);
    ASSERT_FALSE(read) << text;
    EXPECT_THAT(read.error(), HasSubstr("expected")) << text;
  }
}

TEST(Gauge, lists_run_from_thin_to_thick) {
  EXPECT_EQ(known_gauges(GaugeSystem::awg).size(), 26u);
  EXPECT_EQ(known_gauges(GaugeSystem::sae).size(), 16u);
  EXPECT_EQ(known_gauges(GaugeSystem::metric).size(), 19u);
  for (const auto system : {GaugeSystem::awg, GaugeSystem::sae, GaugeSystem::metric}) {
    const auto& all = known_gauges(system);
    for (std::size_t i = 1; i < all.size(); ++i) EXPECT_LT(all[i - 1].area, all[i].area);
  }
}

TEST(Gauge, asking_for_an_untabulated_one_is_a_bug) {
  EXPECT_THROW((void)awg(40), std::invalid_argument);
  EXPECT_THROW((void)sae(3), std::invalid_argument);
  EXPECT_THROW((void)metric(36), std::invalid_argument);
}

TEST(CircularMils, go_both_ways) {
  EXPECT_NEAR(circular_mils(area_from_circular_mils(62450)), 62450, 1e-8);
  EXPECT_NEAR(area_from_circular_mils(1e6).si() * 1e6, 506.7075, 1e-4);  // 1000 kcmil is 506.7 mm²
}

}  // namespace
}  // namespace ohmtrail::trade
