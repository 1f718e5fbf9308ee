#include <fmt/core.h>

#include "diagnose/bank_evidence.hpp"
#include "ohmtrail/trade/battery_limits.hpp"

namespace ohmtrail::diagnose::bank {
namespace {

void advise_load_test(Evidence& evidence) {
  const auto load = trade::proper_load(evidence.facts);
  if (!load) return;
  const auto least = trade::load_test_minimum(evidence.facts.nominal, evidence.temperature);
  evidence.findings.push_back(
      {"next-load-test", std::nullopt, "it has not been tested under load",
       "US Army TM 5-4210-230-14&P-1, battery Table 5",
       fmt::format("Draw {:.0f} A ({}) for 15 s at the posts and read the volts at the end: a good one keeps "
                   "{:.2f} V at {:.0f} °C.",
                   load->amps.si(), load->from, least.si(), evidence.temperature.celsius())});
}

}  // namespace

void advise_next_test(Evidence& evidence) {
  const auto& signs = evidence.signs;
  const bool unsafe = signs.do_not_test || signs.plates_exposed || signs.plates_dry;
  if (unsafe || evidence.lithium() || signs.tested_under_load() || signs.dead_cell) return;
  if (!signs.charge_known)
    evidence.findings.push_back(
        {"next-rest", std::nullopt, "its charge is not known", common_practice,
         fmt::format("Loads and chargers off for {:.0f} h, then read the volts at the posts to a hundredth.",
                     trade::rest_needed(evidence.facts.chemistry).si() / 3600)});
  else if (!signs.low_charge && !evidence.facts.load_test)
    advise_load_test(evidence);
}

}  // namespace ohmtrail::diagnose::bank
