#pragma once
#include <string>
#include <string_view>

namespace ohmtrail::render {

/// Running text as it is set: a unit never parts from its number nor a standard's number from its name
/// ("12 V", "ISO 8820-3"), and "mm2" is "mm²".
[[nodiscard]] std::string typeset(std::string_view text);

}  // namespace ohmtrail::render
