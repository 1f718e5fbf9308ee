#include "ohmtrail/trade/protection.hpp"

#include <algorithm>

#include "ohmtrail/trade/fuse_ladder.hpp"
#include "trade/tables/fuses.hpp"

namespace ohmtrail::trade {
namespace {

using units::Current;
using units::Length;
using units::Voltage;

constexpr double inch = 0.0254;

}  // namespace

Rule<Current> largest_fuse(Current ampacity, Voltage nominal) {
  const Current cap = 1.5 * ampacity;
  if (nominal < Voltage{50}) return {cap, "33 CFR 183.455(c)(1): 150 % of the conductor's allowable current"};
  const auto next = rating_at_least(all_fuse_ratings(), ampacity);
  const Current limit = next && *next <= cap ? *next : ampacity;
  return {
      limit,
      "33 CFR 183.455(c)(2): 100 % of the conductor's allowable current or the next standard rating up to "
      "150 %"};
}

const FuseDistances& fuse_distances() {
  static const FuseDistances rules{
      {Length{7 * inch},
       "33 CFR 183.455(b)(1): 7 in, only if a place at the source is physically impractical"},
      {Length{40 * inch},
       "33 CFR 183.455(b)(2): 40 in, if 7 in is impractical and the conductor is sheathed all the way"},
      {Length{72 * inch}, "33 CFR 183.460(a): 72 in from the battery; the engine cranking feed is exempt"},
      {Length{0.2}, "from memory: ISO 10133:2000 8.1: 200 mm from the source, more when sheathed"},
      {Length{18 * inch}, "NEC 552.10(E)(4): 18 in, park trailers"}};
  return rules;
}

std::optional<Rule<Current>> vehicle_fuse_limit(const Gauge& gauge) {
  if (gauge.system != GaugeSystem::awg) return std::nullopt;
  const auto row = std::find_if(tables::vehicle_rows.begin(), tables::vehicle_rows.end(),
                                [&](const auto& r) { return r.awg == gauge.number; });
  if (row == tables::vehicle_rows.end()) return std::nullopt;
  return Rule<Current>{Current{row->amps}, std::string(tables::vehicle_source)};
}

Interrupting interrupting_capacity(Voltage nominal, Current cold_cranking) {
  const bool high = nominal >= Voltage{32};
  const auto row =
      std::find_if(tables::interrupt_rows.begin(), tables::interrupt_rows.end(), [&](const auto& r) {
        return r.at_32_volts == high && (r.cold_cranking_to == 0 || cold_cranking.si() <= r.cold_cranking_to);
      });
  return {Current{row->main}, Current{row->branch}, std::string(row->source)};
}

}  // namespace ohmtrail::trade
