#pragma once
#include <chrono>
#include <cmath>
#include <string>

#include "ohmtrail/diagnose/next.hpp"
#include "support/simulated_survey.hpp"

/// The search for one planted fault, played with the readings that `next_reading` asks for.
namespace ohmtrail::test {

struct Played {
  std::string planted, named;  ///< repairs
  diagnose::Verdict verdict = diagnose::Verdict::go_on;
  bool right = false;
  double probability = 0;  ///< said of the repair named
  int elements = 0;        ///< passive ones in the path of current
  int readings = 0;        ///< beyond the first three
  int until_sure = 0;      ///< of those, up to the first moment at which one repair has 95 %
  double slowest = 0;      ///< s, one answer
};

/// The repair that an element belongs to, stated again here on purpose.
inline std::string repair_owner(const std::string& element) {
  return element.substr(0, element.find('/'));
}

inline int passive_elements(const netlist::System& system) {
  int count = 0;
  for (const auto& e : network::build(system, system.cases[1]).elements) {
    using network::Role;
    count += e.role == Role::wire || e.role == Role::termination || e.role == Role::joint ||
                     e.role == Role::switchgear || e.role == Role::fuse
                 ? 1
                 : 0;
  }
  return count;
}

inline netlist::Reading take(Simulation& simulation, const diagnose::NextOption& option) {
  const bool loaded = option.in_case == "under load";
  return option.in.empty() ? simulation.take_volts(option.red, option.black, loaded)
                           : simulation.take_amps(option.in, loaded);
}

inline Played play(std::uint64_t seed, const LayoutOptions& layout, int most_readings = 20) {
  SurveyOptions options;
  options.layout = layout;
  options.readings = Readings::loads_only;
  Simulation simulation(seed, options);
  SimulatedSurvey survey = simulation.run();
  netlist::System& system = survey.system;
  system.readings.clear();
  Played out;
  out.planted = repair_owner(survey.truth.planted.front());
  out.elements = passive_elements(system);
  bool sure = false;
  for (int k = 0; k < most_readings; ++k) {
    const auto start = std::chrono::steady_clock::now();
    const auto next = diagnose::next_reading(system);
    out.slowest = std::max(out.slowest,
                           std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
    if (!next) break;
    out.verdict = next->verdict;
    out.named = next->repairs.front().id;
    out.probability = next->repairs.front().probability;
    out.readings = std::max(0, k - 3);
    if (!sure && out.probability >= diagnose::sure_enough) {
      sure = true;
      out.until_sure = out.readings;
    }
    if (next->verdict != diagnose::Verdict::go_on || next->options.empty()) break;
    system.readings.push_back(take(simulation, next->options.front()));
  }
  if (!sure) out.until_sure = out.readings;
  out.right = out.named == out.planted;
  return out;
}

}  // namespace ohmtrail::test
