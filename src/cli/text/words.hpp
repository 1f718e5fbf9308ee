#pragma once
#include <string>

#include "ohmtrail/diagnose/cause.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"

/// The words for people: no jargon, one place for all texts.
namespace ohmtrail::cli {

/// "bad lug", "corroded cable" …
[[nodiscard]] std::string cause_in_words(diagnose::Cause cause);

/// With a capital where a small ASCII letter begins it.
[[nodiscard]] std::string capitalised(std::string text);

/// "cable", "lug", "joint" …
[[nodiscard]] std::string role_in_words(network::Role role);

/// Where an element is: `the lug of "M" at "P"`, `the switch "S"`, with the place that the file tells of its
/// points.
[[nodiscard]] std::string where_in_words(const netlist::System& system, const network::Network& network,
                                         const network::Element& element);

}  // namespace ohmtrail::cli
