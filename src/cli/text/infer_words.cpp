#include "cli/text/infer_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "cli/text/words.hpp"
#include "ohmtrail/diagnose/doubt.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {

std::string print_ohms(double si) {
  return units::print(units::Resistance{si});
}

std::string print_volts(double si) {
  return units::print(units::Voltage{si});
}

std::string percent_sure(double probability) {
  if (probability > diagnose::nearly_sure) return "over 99 %";
  if (probability < diagnose::hardly) return "under 1 %";
  return fmt::format("{:.0f} %", probability * 100);
}

std::string where_is(const netlist::System& system, const network::Network& network, const std::string& id) {
  const auto index = network.element(id);
  return index ? where_in_words(system, network, network.elements[static_cast<std::size_t>(*index)]) : id;
}

std::string where_are(const netlist::System& system, const network::Network& network,
                      const diagnose::InferResult& result, const std::vector<std::string>& ids) {
  std::vector<std::string> names;
  std::set<std::string> told;
  const auto among = [&](const std::string& id) { return std::count(ids.begin(), ids.end(), id) > 0; };
  for (const std::string& id : ids) {
    if (told.contains(id)) continue;
    const auto whole = std::find_if(result.conductors.begin(), result.conductors.end(), [&](const auto& one) {
      return std::count(one.parts.begin(), one.parts.end(), id) > 0 &&
             std::all_of(one.parts.begin(), one.parts.end(), among);
    });
    if (whole != result.conductors.end()) told.insert(whole->parts.begin(), whole->parts.end());
    names.push_back(whole == result.conductors.end() ? where_is(system, network, id)
                                                     : diagnose::conductor_in_words(whole->id));
  }
  return listed(names);
}

std::string listed(const std::vector<std::string>& ids) {
  return fmt::format("{}", fmt::join(ids, ", "));
}

}  // namespace ohmtrail::cli
