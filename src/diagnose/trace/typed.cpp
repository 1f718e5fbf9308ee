#include "diagnose/trace/typed.hpp"

#include <algorithm>

#include "netlist/words.hpp"

namespace ohmtrail::diagnose {
namespace {

constexpr std::string_view blanks = " \t\r\n";

std::string known_words() {
  std::string out;
  for (const auto& [word, meaning] : netlist::words<trade::Observation>()) {
    out += (out.empty() ? "" : ", ") + std::string(word);
  }
  return out;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

std::string help_in_words() {
  return "Type the reading (0.142, 142 mV, 142m), or: skip, back, why, seen green-corrosion, done.";
}

tl::expected<netlist::Seen, std::string> observations(std::string_view words) {
  constexpr std::string_view between = " \t,";
  netlist::Seen out;
  while (true) {
    const std::size_t begin = words.find_first_not_of(between);
    if (begin == std::string_view::npos) break;
    words.remove_prefix(begin);
    const std::string_view word = words.substr(0, words.find_first_of(between));
    words.remove_prefix(word.size());
    const auto known = netlist::words<trade::Observation>();
    const auto found =
        std::find_if(known.begin(), known.end(), [&](const auto& one) { return one.first == word; });
    if (found == known.end()) {
      return tl::unexpected("\"" + std::string(word) + "\" is not one of: " + known_words() + ".");
    }
    out.push_back(found->second);
  }
  if (out.empty()) return tl::unexpected("Seen what? One of: " + known_words() + ".");
  return out;
}

std::string likeliest(const InferResult& inference, const std::vector<std::string>& ids) {
  for (const std::string& suspect : inference.suspects) {
    if (std::find(ids.begin(), ids.end(), suspect) != ids.end()) return suspect;
  }
  return ids.empty() ? "" : ids.front();
}

}  // namespace ohmtrail::diagnose
