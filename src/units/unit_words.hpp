#pragma once
#include <optional>
#include <span>
#include <string_view>

#include "ohmtrail/units/parse.hpp"

namespace ohmtrail::units {

/// One spelling of a unit: value in SI = (number + offset) · factor.
struct UnitWord {
  std::string_view word;
  double factor;
  double offset = 0;
};

/// A kind of quantity with the words it takes; the first is its SI unit (or °C, %).
struct KindWords {
  Kind kind;
  std::string_view name;    ///< plural: "volts"
  std::string_view listed;  ///< the words told to people
  std::span<const UnitWord> words;
};

[[nodiscard]] const KindWords& words_of(Kind kind);
[[nodiscard]] std::span<const KindWords> all_kind_words();
[[nodiscard]] const UnitWord* find_word(const KindWords& words, std::string_view word);

}  // namespace ohmtrail::units
