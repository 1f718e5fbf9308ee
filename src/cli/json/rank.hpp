#pragma once
#include <optional>
#include <string>
#include <vector>

#include "ohmtrail/diagnose/charging.hpp"
#include "ohmtrail/diagnose/hot_spot.hpp"
#include "ohmtrail/diagnose/split.hpp"
#include "ohmtrail/diagnose/swing.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"

namespace ohmtrail::cli {

/// What `rank` has found out.
struct Ranking {
  std::vector<diagnose::HotSpot> hot_spots;
  std::vector<diagnose::SagSplit> split;
  std::vector<diagnose::ChargeSplit> charging;         ///< of the cases in which a charger runs
  std::optional<std::vector<diagnose::Swing>> swings;  ///< with --between only
  std::vector<network::Assumption> assumptions;
};

/// `swings` is there with --between only.
[[nodiscard]] std::string rank_json(const netlist::System& system, const Ranking& ranking);

/// The hot spots; with --between the swings.
[[nodiscard]] std::string rank_csv(const Ranking& ranking);

}  // namespace ohmtrail::cli
