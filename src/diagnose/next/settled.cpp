#include "diagnose/next/settled.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "ohmtrail/units/print.hpp"

namespace ohmtrail::diagnose::next {
namespace {

constexpr double in_doubt = 0.30;       // a repair less probable than this is not named
constexpr double well_known = 1.3;      // upper over lower bound of a resistance
constexpr std::size_t most_groups = 3;  // told of

std::string joined(const std::vector<std::string>& items) {
  std::string out;
  for (std::size_t k = 0; k < items.size(); ++k) {
    out += (k == 0 ? "" : k + 1 == items.size() ? " and " : ", ") + items[k];
  }
  return out;
}

std::vector<std::string> sure_ones(const NextResult& result) {
  std::vector<std::string> out;
  for (const RepairChance& repair : result.repairs) {
    if (repair.probability >= sure_enough) out.push_back(repair.words);
  }
  return out;
}

// Every part of it that may be the fault has a resistance that the readings know well.
bool is_known_well(const NextResult& result, const RepairChance& repair) {
  bool some = false;
  for (const InferredElement& element : result.inference.elements) {
    if (std::find(repair.ids.begin(), repair.ids.end(), element.id) == repair.ids.end()) continue;
    if (element.fault_probability < in_doubt) continue;
    if (!(element.high < well_known * element.low)) return false;
    some = true;
  }
  return some;
}

std::string doubts(const NextResult& result) {
  std::string out;
  for (const RepairChance& repair : result.repairs) {
    if (repair.probability >= sure_enough || repair.probability <= in_doubt) continue;
    const std::string percent = units::print_number(100 * repair.probability, {.significant = 2}) + " %";
    out += " Still in doubt: " + repair.words + " (" + percent + "); ";
    out += is_known_well(result, repair)
               ? "its resistance is known, but a sound one may just have as much; look at it."
               : "no reading within reach would settle it at these loads.";
  }
  return out;
}

// The parts of what is faulty that were only read as a whole.
std::string unparted(const NextResult& result) {
  std::string out;
  std::size_t told = 0;
  for (const UnresolvedGroup& group : result.inference.unresolved) {
    if (group.fault_probability <= in_doubt || told == most_groups) continue;
    ++told;
    std::vector<std::string> names;
    for (const std::string& id : group.ids) names.push_back(fmt::format("\"{}\"", id));
    out += fmt::format(" Which of {} it is cannot be told: they were only read as a whole", joined(names));
    if (!group.separate_at.empty()) {
      const auto& [red, black] = group.separate_at.front();
      out += fmt::format("; a reading from \"{}\" to \"{}\" would part them", red, black);
    }
    out += '.';
  }
  return out;
}

}  // namespace

std::string settled_in_words(const NextResult& result, double best_bits) {
  const std::vector<std::string> sure = sure_ones(result);
  return "No further reading is worth taking: the best one left would tell " +
         units::print_number(best_bits, {.significant = 1}) + " bits. Certain: " + joined(sure) + "." +
         doubts(result) + unparted(result);
}

}  // namespace ohmtrail::diagnose::next
