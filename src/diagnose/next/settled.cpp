#include "diagnose/next/settled.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "ohmtrail/netlist/names.hpp"
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

// Those of a group that may be the fault; batteries are told of on their own.
std::vector<std::string> may_be_it(const NextResult& result, const UnresolvedGroup& group) {
  constexpr double worth_a_word = 0.05;
  std::vector<std::string> out;
  for (const std::string& id : group.ids) {
    const auto is_it = [&](const auto& one) { return one.id == id; };
    const auto& elements = result.inference.elements;
    const auto& batteries = result.inference.batteries;
    const auto known = std::find_if(elements.begin(), elements.end(), is_it);
    const bool unlikely = known != elements.end() && known->fault_probability < worth_a_word;
    if (unlikely || std::any_of(batteries.begin(), batteries.end(), is_it)) continue;
    out.push_back(id);
  }
  return out;
}

// The first reading that ends inside one of these, `M@from` of `M/from`.
const std::pair<std::string, std::string>* reading_inside(const UnresolvedGroup& group,
                                                          const std::vector<std::string>& ids) {
  const auto inside = [&](const std::string& point) {
    const std::string owner(netlist::split_point_name(point).owner);
    return owner != point && std::any_of(ids.begin(), ids.end(), [&](const std::string& id) {
             return netlist::split_element_name(id).owner == owner;
           });
  };
  const auto found =
      std::find_if(group.separate_at.begin(), group.separate_at.end(),
                   [&](const auto& points) { return inside(points.first) || inside(points.second); });
  return found == group.separate_at.end() ? nullptr : &*found;
}

// The parts of what is faulty that were only read as a whole.
std::string unparted(const NextResult& result) {
  std::string out;
  std::size_t told = 0;
  for (const UnresolvedGroup& group : result.inference.unresolved) {
    if (group.fault_probability <= in_doubt || told == most_groups) continue;
    const std::vector<std::string> ids = may_be_it(result, group);
    if (ids.size() < 2) continue;
    ++told;
    std::vector<std::string> names;
    for (const std::string& id : ids) names.push_back(fmt::format("\"{}\"", id));
    out += fmt::format(" Which of {} it is cannot be told: they were only read as a whole", joined(names));
    if (const auto* points = reading_inside(group, ids))
      out += fmt::format("; a reading from \"{}\" to \"{}\" would part them", points->first, points->second);
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
