#include "ohmtrail/trade/ampacity.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <cmath>

#include "ohmtrail/trade/conductor.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "support/property.hpp"

namespace ohmtrail::trade {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using units::Current;
using units::Temperature;
using units::Time;
using units::Voltage;

WirePlace place(const Gauge& gauge, double insulation = 105) {
  WirePlace result;
  result.gauge = gauge;
  result.insulation = Temperature{insulation};
  return result;
}

TEST(Ampacity, grows_with_the_wire) {
  for (const auto system : {GaugeSystem::awg, GaugeSystem::sae, GaugeSystem::metric})
    for (const double rating : {60.0, 75.0, 90.0, 105.0, 125.0, 200.0}) {
      const auto& all = known_gauges(system);
      for (std::size_t i = 1; i < all.size(); ++i)
        EXPECT_GT(ampacity(place(all[i], rating)).amps, ampacity(place(all[i - 1], rating)).amps)
            << print(all[i]) << " at " << rating;
    }
}

TEST(Ampacity, sizes_off_the_table_lie_between_their_neighbours_and_say_so) {
  const Ampacity five = ampacity(place(awg(5)));
  EXPECT_GT(five.amps.si(), 120);  // 6 AWG
  EXPECT_LT(five.amps.si(), 160);  // 4 AWG
  EXPECT_THAT(five.basis, HasSubstr("interpolated by area from 6 AWG and 4 AWG"));
  EXPECT_THAT(ampacity(place(awg(22))).basis, HasSubstr("extrapolated"));
  EXPECT_THAT(ampacity(place(metric(240))).basis, HasSubstr("extrapolated"));
  EXPECT_THAT(ampacity(place(awg(4))).basis, HasSubstr("row 4 AWG"));
}

/// 33 CFR 183.425 Table 5: no odd gauges above 3.
TEST(Ampacity, sizes_of_a_rewire_without_a_list_are_those_of_the_table) {
  const auto& gauges = awg_with_ampacity();
  ASSERT_EQ(gauges.size(), 15u);
  EXPECT_EQ(print(gauges.front()), "18 AWG");
  EXPECT_EQ(print(gauges.back()), "4/0 AWG");
  for (std::size_t k = 1; k < gauges.size(); ++k) EXPECT_GT(gauges[k].area, gauges[k - 1].area);
  for (const Gauge& gauge : gauges) EXPECT_THAT(print(gauge), Not(HasSubstr("5 AWG")));
  for (const Gauge& gauge : gauges) EXPECT_EQ(ampacity(place(gauge)).amps, ampacity(place(gauge)).table);
}

TEST(Ampacity, sae_goes_by_its_area) {
  const Ampacity sae_2 = ampacity(place(sae(2)));
  EXPECT_LT(sae_2.amps.si(), 210);  // 2 AWG
  EXPECT_GT(sae_2.amps.si(), 180);  // 3 AWG
  EXPECT_THAT(sae_2.basis, HasSubstr("33 CFR 183.425"));
}

TEST(Ampacity, insulation_between_columns_takes_the_lower) {
  EXPECT_EQ(ampacity(place(awg(4), 100)).amps.si(), 135);
  EXPECT_EQ(ampacity(place(awg(4), 100)).rise_at_rated.si(), 60);  // what the 90 °C column heats it by
  EXPECT_EQ(ampacity(place(awg(4), 250)).amps.si(), 180);
}

TEST(Ampacity, insulation_below_the_first_column_is_scaled_to_its_rise) {
  const Ampacity low = ampacity(place(awg(4), 45));
  EXPECT_NEAR(low.amps.si(), 105 * std::sqrt(15.0 / 30), 1e-9);
  EXPECT_NEAR(low.rise_at_rated.si(), 15, 1e-12);
  EXPECT_THAT(low.basis, HasSubstr("45 °C insulation"));
}

TEST(Ampacity, engine_space_moves_the_reference_ambient) {
  WirePlace hot = place(awg(-1));
  hot.engine_space = true;
  const Ampacity rating = ampacity(hot);
  EXPECT_NEAR(rating.amps.si(), 330 * 0.85, 1e-9);
  EXPECT_EQ(rating.reference_ambient.celsius(), 50);
  EXPECT_EQ(rating.rise_at_rated.si(), 55);
  EXPECT_EQ(rating.table.si(), 330);
  EXPECT_THAT(rating.basis, HasSubstr("engine space"));
}

TEST(Ampacity, a_wire_at_its_ampacity_and_reference_ambient_is_at_its_rating) {
  for (const double rated : {60.0, 75.0, 80.0, 90.0, 105.0, 125.0, 200.0})
    for (const bool engine_space : {false, true}) {
      WirePlace where = place(awg(2), rated);
      where.engine_space = engine_space;
      const Ampacity rating = ampacity(where);
      EXPECT_NEAR(wire_temperature(rating, rating.reference_ambient, rating.amps).celsius(), rated, 1e-9);
    }
}

// The two ways to look at an engine space agree: the factor lowers the current as the smaller rise would.
TEST(Ampacity, engine_space_factor_agrees_with_the_rise_model) {
  for (const double rated : {60.0, 75.0, 80.0, 90.0, 105.0, 125.0}) {
    const Ampacity cool = ampacity(place(awg(2), rated));
    WirePlace where = place(awg(2), rated);
    where.engine_space = true;
    const double hot = wire_temperature(cool, Temperature{50}, ampacity(where).amps).celsius();
    EXPECT_NEAR(hot, rated, 1.1) << rated;
  }
}

TEST(Ampacity, bundle_is_told_and_its_reach) {
  WirePlace where = place(awg(10));
  where.bundle = 5;
  EXPECT_NEAR(ampacity(where).amps.si(), 36, 1e-9);
  EXPECT_THAT(ampacity(where).basis, HasSubstr("good practice"));
  where.system = Voltage{120};
  EXPECT_THAT(ampacity(where).basis, Not(HasSubstr("good practice")));
  EXPECT_TRUE(ampacity(where).bundling_binds);
}

TEST(Ampacity, aluminium_is_scaled_to_equal_heat) {
  WirePlace where = place(awg(2));
  where.conductor = ConductorKind::aluminium;
  EXPECT_NEAR(ampacity(where).amps.si(), 210 * std::sqrt(0.61), 0.05);
  EXPECT_THAT(ampacity(where).basis, HasSubstr("metal"));
}

TEST(WireTemperature, rises_with_the_square) {
  const Ampacity rating = ampacity(place(awg(-1)));
  EXPECT_NEAR(wire_temperature(rating, Temperature{25}, Current{0}).celsius(), 25, 1e-12);
  EXPECT_NEAR(wire_temperature(rating, Temperature{25}, Current{165}).celsius(), 25 + 75.0 / 4, 1e-9);
  EXPECT_NEAR(wire_temperature(rating, Temperature{25}, Current{-165}).celsius(), 25 + 75.0 / 4, 1e-9);
}

TEST(TimeConstant, is_minutes_for_heavy_cable_and_shorter_for_thin) {
  const auto minutes = [](const Gauge& gauge) {
    return thermal_time_constant(place(gauge), ampacity(place(gauge))).si() / 60;
  };
  EXPECT_GT(minutes(awg(-3)), 8);
  EXPECT_LT(minutes(awg(-3)), 25);
  EXPECT_LT(minutes(awg(14)), 3);
}

// At first nothing is given off: what is lost in the metre of wire, as cold as it is, warms it.
TEST(TimeConstant, begins_with_the_heat_of_the_cold_wire) {
  const WirePlace where = place(awg(-3));
  const Ampacity rating = ampacity(where);
  const double ohms = (wire_resistance_at_20C(where.gauge, units::Length{1}, where.conductor) *
                       resistance_factor(where.conductor, rating.reference_ambient))
                          .si();
  const double kelvin_a_second = 500 * 500 * ohms / wire_heat_capacity(where.gauge, where.conductor).si();
  const double steady = wire_temperature(rating, Temperature{20}, Current{500}).celsius() - 20;
  const double share = duty_share(Time{0.01}, {}, thermal_time_constant(where, rating));
  EXPECT_NEAR(steady * share / 0.01, kelvin_a_second, 1e-4 * kelvin_a_second);
}

// The first minute of a long warming is the heat capacity alone.
TEST(TimeConstant, starts_as_the_heat_capacity_says) {
  const WirePlace where = place(awg(-3));
  const Ampacity rating = ampacity(where);
  const Time constant = thermal_time_constant(where, rating);
  const double steady = wire_temperature(rating, Temperature{20}, Current{500}).celsius() - 20;
  EXPECT_NEAR(steady * duty_share(Time{60}, {}, constant), 7, 2);  // common practice: about 7 K a minute
}

TEST(DutyShare, has_its_limits) {
  const Time constant{600};
  EXPECT_EQ(duty_share(Time{0}, {}, constant), 0);
  EXPECT_NEAR(duty_share(Time{600}, {}, constant), 1 - std::exp(-1.0), 1e-12);
  EXPECT_NEAR(duty_share(Time{1e6}, {}, constant), 1, 1e-12);
  EXPECT_NEAR(duty_share(Time{600}, Time{0}, constant), 1, 1e-12);
  EXPECT_NEAR(duty_share(Time{10}, Time{1e6}, constant), duty_share(Time{10}, {}, constant), 1e-12);
  // Short pulses: the average of the heat.
  EXPECT_NEAR(duty_share(Time{1}, Time{3}, constant), 0.25, 0.002);
  EXPECT_EQ(duty_share(Time{60}, Time{540}, Time{0}), 1);  // no heat is stored
}

TEST(DutyShare, is_less_the_longer_the_rest) {
  const Time on{60}, constant{900};
  double last = 1;
  for (const double rest : {1.0, 60.0, 300.0, 600.0, 6000.0}) {
    EXPECT_LT(duty_share(on, Time{rest}, constant), last) << rest;
    last = duty_share(on, Time{rest}, constant);
  }
  EXPECT_GT(last, duty_share(on, {}, constant));
}

TEST(DutyShare, lies_between_one_pulse_and_steady) {
  test::holds([] {
    const Time on{static_cast<double>(*rc::gen::inRange(1, 100000))};
    const Time rest{static_cast<double>(*rc::gen::inRange(0, 100000))};
    const Time constant{static_cast<double>(*rc::gen::inRange(1, 10000))};
    const double share = duty_share(on, rest, constant);
    RC_ASSERT(share <= 1);
    RC_ASSERT(share >= duty_share(on, {}, constant) - 1e-15);
  });
}

}  // namespace
}  // namespace ohmtrail::trade
