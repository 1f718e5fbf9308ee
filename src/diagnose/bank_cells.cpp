#include <fmt/core.h>

#include <algorithm>

#include "diagnose/bank_evidence.hpp"
#include "ohmtrail/trade/battery_charge.hpp"
#include "ohmtrail/trade/battery_limits.hpp"

namespace ohmtrail::diagnose::bank {
namespace {

// Common practice: healthy cells read 1.250 to 1.275.
constexpr double good_gravity = 1.250;
constexpr double charged_gravity = 1.200;
// From memory: acid of more than 1.300 was poured in, not made by charging (traction batteries: up to 1.295).
constexpr double strong_acid = 1.300;

void replace_for_cell(Evidence& evidence, std::string text, std::string source) {
  evidence.signs.dead_cell = true;
  evidence.findings.push_back(
      {"weak-cell", Severity::soon, std::move(text), std::move(source),
       "Charge fully and read the cells again; if the low cell stays behind, replace the "
       "battery: one cell cannot be mended."});
}

void judge_spread(Evidence& evidence, const Gravities& gravities) {
  const auto numbers = fmt::format(
      "cell {} reads {:.3f}, the others {:.3f} on average: {:.3f} from highest to lowest at 26.7 °C",
      gravities.lowest_cell, gravities.lowest, gravities.mean_of_others, gravities.spread);
  if (gravities.spread > trade::gravity_spread_bad + 1e-9) {
    replace_for_cell(evidence, numbers + fmt::format(", more than {:.3f}", trade::gravity_spread_bad),
                     "US Army TM 5-3805-281-24-2, hydrometer test");
  } else if (gravities.lowest < trade::gravity_cell_bad && gravities.mean_of_others >= charged_gravity) {
    replace_for_cell(evidence, numbers + fmt::format(", and below {:.3f}", trade::gravity_cell_bad),
                     "US Army TM 5-3740-214-14");
  } else if (gravities.spread > trade::gravity_spread_uneven + 1e-9) {
    evidence.signs.uneven_cells = true;
    evidence.findings.push_back({"uneven-cells", Severity::soon,
                                 numbers + fmt::format(", more than {:.3f}", trade::gravity_spread_uneven),
                                 "US Army TM 9-6140-200-14, para 4-7",
                                 "Charge fully, equalise if the maker allows it, and read the cells again."});
  }
}

void judge_gravities(Evidence& evidence) {
  if (!evidence.gravities) return;
  const auto& gravities = *evidence.gravities;
  evidence.findings.push_back(
      {"gravity", std::nullopt,
       fmt::format("specific gravity {:.3f} on average at 26.7 °C: {:.0f} % charged", gravities.mean,
                   trade::charge_at_gravity(gravities.mean).percent()),
       "US Army TM 5-4210-230-14&P-1, battery Table 2", ""});
  judge_spread(evidence, gravities);
  if (gravities.mean > strong_acid)
    evidence.findings.push_back(
        {"strong-acid", Severity::soon,
         fmt::format("{:.3f} is more than charging makes: acid was added, or the hydrometer is off",
                     gravities.mean),
         "from memory: battery textbooks", "Check the hydrometer in a cell known to be good."});
  evidence.signs.cells_good = static_cast<int>(gravities.of_cells.size()) >= evidence.cells &&
                              gravities.lowest >= good_gravity - 1e-9 && !evidence.signs.uneven_cells &&
                              !evidence.signs.dead_cell;
}

void judge_cell_volts(Evidence& evidence) {
  int lowest = 0, count = 0;
  double least = 0, most = 0;
  for (std::size_t i = 0; i < evidence.facts.cells.size(); ++i) {
    if (!evidence.facts.cells[i].volts) continue;
    const double volts = evidence.facts.cells[i].volts->si();
    if (count == 0 || volts < least) lowest = static_cast<int>(i) + 1;
    least = count == 0 ? volts : std::min(least, volts);
    most = count == 0 ? volts : std::max(most, volts);
    ++count;
  }
  if (count < 2 || evidence.lithium()) return;
  const auto text = fmt::format("cell {} has {:.2f} V, the best {:.2f} V", lowest, least, most);
  if (most - least > trade::cell_volts_spread_bad.si() + 1e-9)
    replace_for_cell(evidence, text, "public photovoltaic battery page: 0.2 V between cells");
  else if (most - least > trade::cell_volts_spread_uneven.si() + 1e-9 && !evidence.signs.uneven_cells) {
    evidence.signs.uneven_cells = true;
    evidence.findings.push_back({"uneven-cells", Severity::soon, text + ", more than 0.05 V apart",
                                 "derived: 0.05 V is 0.050 of gravity",
                                 "Charge fully, equalise, read the cells again."});
  }
}

void judge_count(Evidence& evidence) {
  const auto listed = static_cast<int>(evidence.facts.cells.size());
  if (listed == 0 || listed == evidence.cells) return;
  evidence.findings.push_back({"cell-count", Severity::improvement,
                               fmt::format("{} cells are listed, but {:.3g} V has {}", listed,
                                           evidence.facts.nominal.si(), evidence.cells),
                               "2 V a cell, lead-acid; 3.2 V, lithium iron phosphate",
                               "Check the nominal voltage, or list every cell."});
}

void judge_possible(Evidence& evidence) {
  for (std::size_t i = 0; i < evidence.facts.cells.size(); ++i) {
    const auto& gravity = evidence.facts.cells[i].specific_gravity;
    if (!gravity || (*gravity >= trade::gravity_least_possible && *gravity <= trade::gravity_most_possible))
      continue;
    evidence.findings.push_back(
        {"impossible-gravity", Severity::improvement,
         fmt::format("cell {}: a specific gravity of {:.4g} does not exist in a battery; it is not "
                     "counted",
                     i + 1, *gravity),
         "water 1.000, strongest battery acid 1.400, from memory",
         *gravity > 1000 ? "Write it as 1.250, not 1250." : "Read the cell again."});
  }
}

}  // namespace

void judge_cells(Evidence& evidence) {
  judge_count(evidence);
  judge_possible(evidence);
  if (!evidence.lithium()) judge_gravities(evidence);
  judge_cell_volts(evidence);
}

}  // namespace ohmtrail::diagnose::bank
