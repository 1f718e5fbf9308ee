#pragma once
#include <fmt/format.h>

#include <string>
#include <string_view>
#include <vector>

#include "ohmtrail/diagnose/cause.hpp"
#include "ohmtrail/diagnose/finding.hpp"
#include "ohmtrail/netlist/system.hpp"

/// Sentences from the table of words, filled in.
namespace ohmtrail::render {

template <class... Args>
[[nodiscard]] std::string filled(std::string_view pattern, const Args&... args) {
  return fmt::format(fmt::runtime(pattern), args...);
}

/// With a capital at its beginning, where that is a plain letter.
[[nodiscard]] std::string sentence(std::string words);

[[nodiscard]] std::string_view what_it_is(diagnose::Cause cause);
[[nodiscard]] std::string_view rank_in_words(diagnose::Severity severity);

/// A point and where it is: "A2 + (port locker)".
[[nodiscard]] std::string point_in_words(const netlist::System& system, const std::string& point);

/// What feeds a load.
enum class Source { battery, charger, converter };

/// Of the battery, charger or converter's output with this id.
[[nodiscard]] Source source_of(const netlist::System& system, const std::string& element_id);
struct SourceWords {
  std::string_view word;  ///< "battery"
  std::string_view in;    ///< of its volts: "in the battery", "that the charger is set to"
  std::string_view part;  ///< of what it loses itself
};
[[nodiscard]] const SourceWords& words_of(Source source);
/// Its name: a converter's output goes by the converter's.
[[nodiscard]] std::string source_in_words(const netlist::System& system, const std::string& element_id);

/// `text` with the ends of conductors, as "bus feed@to", told in words.
[[nodiscard]] std::string ends_in_words(const netlist::System& system, std::string_view text);

/// Where an element is, for someone who stands before it: "cable bank plus, its end at A2 + (port locker)".
[[nodiscard]] std::string where(const netlist::System& system, const std::string& element_id);

/// The first `most` of several such, and how many more there are: "fuse A; joint B and 3 more".
[[nodiscard]] std::string listed(const netlist::System& system, const std::vector<std::string>& element_ids,
                                 std::size_t most);

/// `where` without the places of its points where they would not fit into `width`, cut where it must be.
[[nodiscard]] std::string where_fitting(const netlist::System& system, const std::string& element_id,
                                        double size, double width);

/// A run's conductor as a whole, by its id `RUN` or `RUN/return`: "cable M with its ends".
[[nodiscard]] std::string where_conductor(const std::string& conductor_id);

}  // namespace ohmtrail::render
