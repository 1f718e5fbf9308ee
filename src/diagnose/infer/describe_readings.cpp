#include <cmath>
#include <limits>

#include "diagnose/infer/describe.hpp"
#include "diagnose/infer/reading_error.hpp"
#include "diagnose/infer/screen.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

// Below this share of a blunder shows up in its residual, and no test can find it (common practice in the
// adjustment of surveys, where controlled observations start at a redundancy of 0.1).
constexpr double critical_redundancy = 0.1;
constexpr double not_known = std::numeric_limits<double>::quiet_NaN();

InferredReading unused(const netlist::Reading& reading, std::size_t index) {
  InferredReading row;
  row.index = index;
  row.measured = measured_value(reading);
  row.predicted = row.sigma = row.residual = row.normalised = row.would_be = row.would_be_sigma = not_known;
  row.critical = true;
  return row;
}

double whole_sigma(const netlist::System& system, const netlist::Reading& reading, double independent) {
  const ReadingError error = reading_error(system, reading);
  return std::hypot(std::hypot(independent, error.zero), error.gain * measured_value(reading));
}

void describe(const Screen& screen, const Belief& root, int observation, double sigma, InferredReading& row) {
  const Optimum& best = screen.optimum();
  const double error = best.residual[observation];
  row.residual = error * sigma;
  row.predicted = row.measured - row.residual;
  // What all others say of this reading's error, and how well they know it (in units of its own sigma).
  const Cavity others = screen.cavity(root, observation);
  const double spread = others.precision > 0 ? 1 / others.precision : std::numeric_limits<double>::infinity();
  row.redundancy = 1 / (1 + spread);
  row.normalised = others.at / std::sqrt(1 + spread);
  row.critical = row.redundancy < critical_redundancy;
  row.would_be = row.measured - others.at * sigma;
  row.would_be_sigma = std::sqrt(spread) * sigma;
}

}  // namespace

std::vector<InferredReading> describe_readings(const netlist::System& system, const Posterior& posterior) {
  std::vector<InferredReading> out;
  for (std::size_t k = 0; k < system.readings.size(); ++k) {
    out.push_back(unused(system.readings[k], k));
  }
  const Screen screen(posterior.model(), posterior.components.front().optimum);
  const Belief root = screen.root();
  for (std::size_t i = 0; i < posterior.model().observations.size(); ++i) {
    const Observation& observation = posterior.model().observations[i];
    if (observation.reading < 0) {
      continue;
    }
    const auto index = static_cast<std::size_t>(observation.reading);
    InferredReading& row = out[index];
    describe(screen, root, static_cast<int>(i), observation.sigma, row);
    row.sigma = whole_sigma(system, system.readings[index], observation.sigma);
    row.wrong_probability = posterior.wrong[i];
    row.suspect = row.wrong_probability > 0.5;
  }
  return out;
}

}  // namespace ohmtrail::diagnose::inference
