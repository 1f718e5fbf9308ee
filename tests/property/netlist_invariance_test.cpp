// A system is the same system whatever order its file lists it in and whatever its points are called; and at
// every temperature that its user may write down, every case is certified or refused.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <random>
#include <set>

#include "ohmtrail/netlist/read.hpp"
#include "ohmtrail/solve/case_solution.hpp"
#include "support/random_cases.hpp"

namespace ohmtrail::test {
namespace {

using nlohmann::ordered_json;

std::vector<std::string> shipped() {
  std::vector<std::string> files;
  for (const auto& entry : std::filesystem::directory_iterator(OHMTRAIL_SOURCE_DIR "/netlists")) {
    if (entry.path().extension() == ".json") files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  EXPECT_GE(files.size(), 4U) << "the folder has moved";
  return files;
}

ordered_json load(const std::string& path) {
  return ordered_json::parse(std::ifstream(path));
}

struct Flow {
  double current, drop;
};
using CaseFlows = std::map<std::string, Flow>;  // by element

/// Every case of a file, solved, by name; what could not be solved is missing.
std::map<std::string, CaseFlows> solve_all(const ordered_json& file) {
  std::map<std::string, CaseFlows> found;
  const auto read = netlist::read(file.dump());
  if (!read) {
    ADD_FAILURE() << netlist::format(read.error().front(), "shuffled");
    return found;
  }
  for (const auto& each : read->system.cases) {
    const auto solved = solve::solve_case(network::build(read->system, each));
    if (!solved || solved->solution.collapse) continue;
    CaseFlows& flows = found[each.name];
    for (std::size_t k = 0; k < solved->network.elements.size(); ++k) {
      flows[solved->network.elements[k].id] = {solved->solution.current[k], solved->solution.drop[k]};
    }
  }
  return found;
}

void expect_same(const std::map<std::string, CaseFlows>& before,
                 const std::map<std::string, CaseFlows>& after) {
  ASSERT_EQ(before.size(), after.size());
  for (const auto& [name, flows] : before) {
    SCOPED_TRACE(name);
    const auto other = after.find(name);
    ASSERT_NE(other, after.end());
    ASSERT_EQ(flows.size(), other->second.size());
    double most_amperes = 0;
    double most_volts = 0;
    for (const auto& [id, flow] : flows) {
      most_amperes = std::max(most_amperes, std::abs(flow.current));
      most_volts = std::max(most_volts, std::abs(flow.drop));
    }
    for (const auto& [id, flow] : flows) {
      ASSERT_TRUE(other->second.contains(id)) << id;
      EXPECT_NEAR(other->second.at(id).current, flow.current, 1e-9 * most_amperes) << id;
      EXPECT_NEAR(other->second.at(id).drop, flow.drop, 1e-9 * most_volts) << id;
    }
  }
}

/// Sections, the entries in each and the keys of each entry, in another order.
ordered_json shuffled(const ordered_json& value, std::mt19937_64& random) {
  if (value.is_array()) {
    // A battery's cells are numbered from one post to the other; the rest are sets.
    std::vector<ordered_json> items;
    for (const auto& each : value) items.push_back(shuffled(each, random));
    std::shuffle(items.begin(), items.end(), random);
    return items;
  }
  if (!value.is_object()) return value;
  std::vector<std::string> keys;
  for (const auto& [key, ignored] : value.items()) keys.push_back(key);
  std::shuffle(keys.begin(), keys.end(), random);
  ordered_json made = ordered_json::object();
  for (const auto& key : keys) made[key] = key == "cells" ? value[key] : shuffled(value[key], random);
  return made;
}

const std::set<std::string>& keys_of_points() {
  static const std::set<std::string> keys = {"from",     "to",        "plus", "minus", "plus_in",  "minus_in",
                                             "plus_out", "minus_out", "red",  "black", "reference"};
  return keys;
}

/// Every point's name is a word, so a run's ends ("crimped" under "from") must be told from it by where they
/// stand.
class Renaming {
 public:
  explicit Renaming(std::mt19937_64& random) : random_(random) {}

  ordered_json apply(const ordered_json& value, const std::string& below = {}) {
    if (value.is_array()) {
      ordered_json made = ordered_json::array();
      for (const auto& each : value)
        made.push_back(below == "stubs" ? ordered_json(of(each)) : apply(each, below));
      return made;
    }
    if (!value.is_object()) return value;
    ordered_json made = ordered_json::object();
    for (const auto& [key, held] : value.items()) {
      const bool names_point = below != "ends" && keys_of_points().contains(key) && held.is_string();
      made[below == "points" ? of(key) : key] = names_point ? ordered_json(of(held)) : apply(held, key);
    }
    return made;
  }

 private:
  std::string of(const std::string& point) {
    if (point.find('@') != std::string::npos) return point;  // derived from a run's name
    const auto known = names_.find(point);
    if (known != names_.end()) return known->second;
    std::string name;
    do name = "point " + std::to_string(random_() % 1'000'000);
    while (!taken_.insert(name).second);
    return names_[point] = name;
  }

  std::mt19937_64& random_;
  std::map<std::string, std::string> names_;
  std::set<std::string> taken_;
};

/// Without a reference the first battery listed would give 0 V, and the first of several loops its direction.
TEST(NetlistInvariance, TheOrderOfTheFileChangesNothing) {
  for (const auto& path : shipped()) {
    SCOPED_TRACE(path);
    const ordered_json file = load(path);
    const auto before = solve_all(file);
    EXPECT_FALSE(before.empty());
    for (int seed = 0; seed < random_cases(20); ++seed) {
      std::mt19937_64 random(static_cast<unsigned>(seed));
      expect_same(before, solve_all(shuffled(file, random)));
    }
  }
}

TEST(NetlistInvariance, TheNamesOfPointsChangeNothing) {
  for (const auto& path : shipped()) {
    SCOPED_TRACE(path);
    const ordered_json file = load(path);
    const auto before = solve_all(file);
    for (int seed = 0; seed < random_cases(20); ++seed) {
      std::mt19937_64 random(static_cast<unsigned>(seed));
      expect_same(before, solve_all(Renaming(random).apply(file)));
    }
  }
}

TEST(NetlistInvariance, FromFortyBelowToEightyFiveIsCertifiedOrRefused) {
  for (const auto& path : shipped()) {
    SCOPED_TRACE(path);
    ordered_json file = load(path);
    int certified = 0, refused = 0;
    for (int celsius = -40; celsius <= 85; celsius += 5) {
      SCOPED_TRACE(celsius);
      for (auto& each : file["cases"]) each["ambient"] = celsius;
      const auto read = netlist::read(file.dump());
      ASSERT_TRUE(read);
      for (const auto& each : read->system.cases) {
        const auto solved = solve::solve_case(network::build(read->system, each));
        ++(solved ? certified : refused);
        if (!solved) continue;
        EXPECT_LE(solved->solution.current_residual, 1e-9) << each.name;
        EXPECT_LE(solved->solution.power_residual, 1e-9) << each.name;
      }
    }
    EXPECT_GT(certified, 9 * refused) << "refusing all would be no answer";
  }
}

/// A cold wire resists less: R(T) = R20 (1 + α20 (T − 20 °C)), IEC 60228 annex B for copper.
TEST(NetlistInvariance, AColdSystemDropsLessInItsWires) {
  const auto wire_ohms = [](int celsius) {
    ordered_json file = load(OHMTRAIL_SOURCE_DIR "/netlists/camper-12v.json");
    for (auto& each : file["cases"]) each["ambient"] = celsius;
    const auto read = netlist::read(file.dump());
    const auto network = network::build(read->system, read->system.cases.front());
    const auto solved = solve::solve_case(network);
    const auto wire = solved->network.element("lights/wire");
    return solved->solution.resistance[static_cast<std::size_t>(*wire)];
  };
  double before = 0;
  for (int celsius = -40; celsius <= 85; celsius += 25) {
    EXPECT_GT(wire_ohms(celsius), before) << celsius;
    before = wire_ohms(celsius);
  }
}

TEST(NetlistInvariance, EveryLoadOffIsStillASystem) {
  for (const auto& path : shipped()) {
    SCOPED_TRACE(path);
    ordered_json file = load(path);
    file["cases"] = ordered_json::array({{{"name", "all off"}}});
    file.erase("readings");
    const auto flows = solve_all(file);
    ASSERT_TRUE(flows.contains("all off"));
    for (const auto& load : file["loads"]) {
      EXPECT_EQ(flows.at("all off").at(load["id"].get<std::string>()).current, 0);
    }
  }
}

}  // namespace
}  // namespace ohmtrail::test
