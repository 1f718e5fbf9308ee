#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "cli/json/row.hpp"

namespace ohmtrail::cli {

/// Rows as comma-separated values (RFC 4180, lines ended by CR LF) with the columns `names`: a row in a row
/// is flattened to `outer_inner`, null is an empty cell. No text starts a formula when a spreadsheet opens
/// it: one that begins with = + - @, a tab or a line end gets a ' in front, unless it is a number.
[[nodiscard]] std::string csv(const std::vector<Row>& rows, const std::vector<std::string>& names);

}  // namespace ohmtrail::cli
