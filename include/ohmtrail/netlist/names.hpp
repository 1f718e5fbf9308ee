#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ohmtrail/netlist/name_table.hpp"
#include "ohmtrail/netlist/section.hpp"
#include "ohmtrail/netlist/system.hpp"

/// Names that a system's elements and points have, given and derived: `M/wire`, `M@from`, `C/in`.
namespace ohmtrail::netlist {

/// A derived name in two: `M/return-wire` is owner `M`, part `return-wire`. A plain name has no part.
struct SplitName {
  std::string_view owner, part;
};
[[nodiscard]] SplitName split_element_name(std::string_view name);  ///< at its last `/`
[[nodiscard]] SplitName split_point_name(std::string_view name);    ///< at its last `@`

/// Where an element stands in its system.
struct ElementPlace {
  Section section;
  std::size_t index;
};

/// Every name of one system, to be asked by name. The system must outlive it.
class Names {
 public:
  explicit Names(const System& system);

  /// The entry that an id was given to; derived names are looked up by their owner.
  [[nodiscard]] std::optional<ElementPlace> element(std::string_view id) const;
  /// Whether results would list such an element, or a run of that id exists. Crimp halves only where an end
  /// is opened.
  [[nodiscard]] bool has_element(std::string_view name) const;
  /// Whether a probe could be put there. `…-metal` points always exist: naming one opens that end.
  [[nodiscard]] bool has_point(std::string_view name) const;

  /// How many terminals stand at a given point; 0 for one that no element names.
  [[nodiscard]] std::size_t terminals_at(std::string_view point) const;

  [[nodiscard]] const std::vector<std::string_view>& element_ids() const {
    return ids_.names();
  }  ///< file order
  [[nodiscard]] const std::vector<std::string_view>& point_names() const {
    return points_.names();
  }  ///< as first named
  /// Per point, in the order of `point_names`.
  [[nodiscard]] const std::vector<std::uint32_t>& terminal_counts() const { return terminals_; }

  /// What is wrong with any of the names, to be looked for one by one only then.
  struct Flaws {
    bool unnamed_element = false, unnamed_point = false;
    bool same_id = false;     ///< two elements have it
    bool same_point = false;  ///< at both ends of one element
  };
  [[nodiscard]] const Flaws& flaws() const { return flaws_; }

 private:
  template <class Item>
  void add_elements(Section section, const std::vector<Item>& items);
  template <class Item>
  void expect(const Item& item) const;
  void add_pair(std::string_view first, std::string_view second);
  /// Its number; none where it is empty.
  std::optional<std::size_t> add_point(std::string_view name);
  [[nodiscard]] const Run* run(std::string_view id) const;

  const System* system_;
  NameTable ids_, points_;
  std::vector<ElementPlace> places_;      ///< per id
  std::vector<std::uint32_t> terminals_;  ///< per point
  Flaws flaws_;
};

/// The end that a derived point's name belongs to (`M@from-metal`, `M@return-to`); null where there is none.
[[nodiscard]] RunEnd* end_at(System& system, const Names& names, std::string_view point);

}  // namespace ohmtrail::netlist
