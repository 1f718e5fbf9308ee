#include "netlist/word_hint.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace ohmtrail::netlist {
namespace {

/// What people say, squeezed, and the format's word for it.
constexpr std::array synonyms = {
    std::pair{"lithium", "lfp"},
    std::pair{"lifepo4", "lfp"},
    std::pair{"lithiumironphosphate", "lfp"},
    std::pair{"leadacid", "flooded"},
    std::pair{"wet", "flooded"},
    std::pair{"wetcell", "flooded"},
    std::pair{"copper", "bare-copper"},
    std::pair{"tinned", "tinned-copper"},
    std::pair{"boat", "vessel"},
    std::pair{"yacht", "vessel"},
    std::pair{"car", "vehicle"},
    std::pair{"van", "vehicle"},
    std::pair{"bus", "vehicle"},
    std::pair{"camper", "vehicle"},
    std::pair{"motorhome", "vehicle"},
    std::pair{"golfcart", "cart"},
    std::pair{"frame", "chassis"},
    std::pair{"body", "chassis"},
    std::pair{"earth", "chassis"},
    std::pair{"ground", "chassis"},
    std::pair{"connector", "plug"},
    std::pair{"clamp", "post-clamp"},
    std::pair{"butt", "splice"},
    std::pair{"relay", "contactor"},
    std::pair{"solenoid", "contactor"},
    std::pair{"isolator", "battery-switch"},
    std::pair{"circuitbreaker", "breaker"},
    std::pair{"rocker", "toggle"},
    std::pair{"corroded", "green-corrosion"},
    std::pair{"loose", "loose-nut"},
    std::pair{"hot", "warm"},
    std::pair{"ok", "looks-sound"},
    std::pair{"good", "looks-sound"},
};

std::string squeezed(std::string_view text) {
  std::string out;
  for (const char c : text)
    if (c != ' ' && c != '-' && c != '_') out += static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
  return out;
}

}  // namespace

std::string word_meant(std::string_view text, const std::vector<std::string_view>& known) {
  const std::string said = squeezed(text);
  for (const auto& [synonym, word] : synonyms)
    if (said == synonym && std::find(known.begin(), known.end(), word) != known.end()) return word;
  return "";
}

}  // namespace ohmtrail::netlist
