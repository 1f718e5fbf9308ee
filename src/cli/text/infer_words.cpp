#include "cli/text/infer_words.hpp"

#include <fmt/format.h>

#include "cli/text/words.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {

std::string print_ohms(double si) {
  return units::print(units::Resistance{si});
}

std::string print_volts(double si) {
  return units::print(units::Voltage{si});
}

std::string percent_sure(double probability) {
  if (probability > 0.995) return "over 99 %";
  if (probability < 0.01) return "under 1 %";
  return fmt::format("{:.0f} %", probability * 100);
}

std::string where_is(const netlist::System& system, const network::Network& network, const std::string& id) {
  const auto index = network.element(id);
  return index ? where_in_words(system, network, network.elements[static_cast<std::size_t>(*index)]) : id;
}

std::string listed(const std::vector<std::string>& ids) {
  return fmt::format("{}", fmt::join(ids, ", "));
}

}  // namespace ohmtrail::cli
