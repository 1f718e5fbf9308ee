#pragma once
#include <string>

#include "ohmtrail/diagnose/compare.hpp"
#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"

namespace ohmtrail::cli {

[[nodiscard]] std::string infer_json(const netlist::System& system, const diagnose::InferResult& result,
                                     const network::Network& network);
/// The elements.
[[nodiscard]] std::string infer_csv(const diagnose::InferResult& result, const network::Network& network);

[[nodiscard]] std::string compare_json(const netlist::System& system, const diagnose::Comparison& comparison,
                                       const network::Network& network);
[[nodiscard]] std::string compare_csv(const diagnose::Comparison& comparison);

/// "swapped-probes", "wrong-unit", "load-off", "wrong-case"; empty for none.
[[nodiscard]] std::string slip_word(diagnose::Slip slip);

}  // namespace ohmtrail::cli
