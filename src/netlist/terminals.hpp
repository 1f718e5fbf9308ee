#pragma once
#include <array>
#include <string>
#include <string_view>

#include "ohmtrail/netlist/names.hpp"
#include "ohmtrail/netlist/system.hpp"

/// The points that each kind of element names, with the key of each.
namespace ohmtrail::netlist {

/// Two terminals that one element joins. `inside` is the key of the object that holds them, empty for the
/// element's own.
struct TerminalPair {
  std::string_view first_key, second_key;
  const std::string* first = nullptr;
  const std::string* second = nullptr;
  std::string_view inside = {};
};

/// One pair, or two.
class TerminalPairs {
 public:
  TerminalPairs(TerminalPair one) : pairs_{one, {}}, count_(1) {}
  TerminalPairs(TerminalPair one, TerminalPair two) : pairs_{one, two}, count_(2) {}
  [[nodiscard]] const TerminalPair* begin() const { return pairs_.data(); }
  [[nodiscard]] const TerminalPair* end() const { return pairs_.data() + count_; }

 private:
  std::array<TerminalPair, 2> pairs_;
  std::size_t count_;
};

template <class T>
concept HasPosts = requires(const T& item) {
  item.plus;
  item.minus;
};
template <class T>
concept HasEnds = requires(const T& item) {
  item.from;
  item.to;
};

template <HasPosts T>
TerminalPairs terminals(const T& item) {
  return {{"plus", "minus", &item.plus, &item.minus}};
}

template <HasEnds T>
TerminalPairs terminals(const T& item) {
  return {{"from", "to", &item.from, &item.to}};
}

inline TerminalPairs terminals(const Run& run) {
  const TerminalPair out{"from", "to", &run.from, &run.to};
  const auto& back = run.return_conductor;
  return back ? TerminalPairs(out, {"from", "to", &back->from, &back->to, "return"}) : TerminalPairs(out);
}

inline TerminalPairs terminals(const Converter& converter) {
  return {{"plus_in", "minus_in", &converter.plus_in, &converter.minus_in},
          {"plus_out", "minus_out", &converter.plus_out, &converter.minus_out}};
}

/// Calls `visit(section, list)` for every section of elements, in the order of the format.
template <class SystemType, class Visit>
void for_each_section(SystemType& system, Visit visit) {
  visit(Section::batteries, system.batteries);
  visit(Section::chargers, system.chargers);
  visit(Section::runs, system.runs);
  visit(Section::joints, system.joints);
  visit(Section::switches, system.switches);
  visit(Section::fuses, system.fuses);
  visit(Section::shunts, system.shunts);
  visit(Section::isolators, system.isolators);
  visit(Section::loads, system.loads);
  visit(Section::converters, system.converters);
}

}  // namespace ohmtrail::netlist
