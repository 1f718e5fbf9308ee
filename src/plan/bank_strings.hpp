#pragma once
#include <optional>
#include <vector>

#include "plan/wiring_forest.hpp"

/// The batteries of a case as strings in parallel, and what each wire of the system carries of them.
namespace ohmtrail::plan {

struct BankWiring {
  struct String {
    std::vector<int> batteries;  ///< from its top to its bottom
    int top = -1, bottom = -1;   ///< points: the posts at its ends
  };
  std::vector<String> strings;
  std::vector<std::vector<int>> fed;  ///< per element: the loads whose whole current it carries, rising
  std::vector<int> string_of;         ///< per element: the string whose whole current it carries; −1: none
};

/// `loads`: elements that are on. Empty where a wire carries some loads less what a string gives them:
/// strings that are joined elsewhere than at one point each side, loads across part of a string.
[[nodiscard]] std::optional<BankWiring> bank_wiring(const network::Network& network,
                                                    const WiringForest& forest,
                                                    const std::vector<int>& loads);

}  // namespace ohmtrail::plan
