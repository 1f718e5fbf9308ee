#include "cli/text/failure.hpp"

#include <fmt/format.h>

#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using Kind = solve::Failure::Kind;

std::string listed(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i)
    text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + ("\"" + names[i] + "\"");
  return text;
}

/// Ids of the sources among the branches, and of the others.
std::vector<std::string> ids(const solve::Failure& failure, const network::Network& network, bool sources) {
  std::vector<std::string> names;
  for (const int branch : failure.branches) {
    const network::Element& element = network.elements[static_cast<std::size_t>(branch)];
    const bool source = element.role == network::Role::battery || element.role == network::Role::charger;
    if (source == sources) names.push_back(element.id);
  }
  return names;
}

std::string shorted(const solve::Failure& failure, const network::Network& network) {
  const auto others = ids(failure, network, false);
  std::string text = fmt::format("{} is short-circuited", listed(ids(failure, network, true)));
  text +=
      others.empty() ? ": both its posts are one point" : fmt::format(" through {} (0 Ω)", listed(others));
  if (failure.amperes > 0)
    text += fmt::format("; its own resistance would let {} through",
                        units::print(units::Current{failure.amperes}));
  return text + (others.empty() ? ", expected two different points"
                                : ", expected a load or a resistance on that way");
}

}  // namespace

std::string in_words(const solve::Failure& failure, const network::Network& network) {
  const std::string start = fmt::format("case \"{}\": ", network.case_name);
  switch (failure.kind) {
    case Kind::shorted_source:
      return start + shorted(failure, network);
    case Kind::opposed_sources:
      return start + fmt::format(
                         "{} hold unlike voltages across the same two points with no resistance; give "
                         "them one, or open a switch between them",
                         listed(ids(failure, network, true)));
    case Kind::overloaded:
      return start + fmt::format(
                         "{} at its limit cannot give what the loads of constant current take; switch "
                         "some off, or add a battery",
                         listed(ids(failure, network, true)));
    case Kind::not_certified:
      break;
  }
  return start +
         "the result did not pass its own check of currents and power, so none is shown; look for "
         "resistances that are very large or very small beside the others";
}

}  // namespace ohmtrail::cli
