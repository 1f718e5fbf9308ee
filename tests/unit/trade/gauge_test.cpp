#include "ohmtrail/trade/gauge.hpp"

#include <gtest/gtest.h>

namespace ohmtrail::trade {
namespace {

TEST(Gauge, reads_back_what_it_prints) {
  for (const auto system : {GaugeSystem::awg, GaugeSystem::sae, GaugeSystem::metric})
    for (const Gauge& gauge : known_gauges(system)) {
      const auto read = parse_gauge(print(gauge));
      ASSERT_TRUE(read) << print(gauge) << ": " << read.error();
      EXPECT_EQ(*read, gauge) << print(gauge);
    }
}

}  // namespace
}  // namespace ohmtrail::trade
