#pragma once
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace ohmtrail::netlist {

/// Numbers names in the order in which they are first added. The characters must outlive it. An open hash
/// table that keeps the ends of every name beside it: in a large file the names lie far apart, and going to
/// them was half of the time that reading took.
class NameTable {
 public:
  explicit NameTable(std::size_t expected);

  /// The number of a name, new or not; it is new where it is what `size()` was before.
  std::size_t add(std::string_view name);
  [[nodiscard]] std::optional<std::size_t> find(std::string_view name) const;
  /// Has the place of a name fetched from memory that is soon to be added: in a table larger than the caches
  /// the wait for it is most of the cost.
  void expect(std::string_view name) const;

  [[nodiscard]] std::size_t size() const { return names_.size(); }
  [[nodiscard]] const std::vector<std::string_view>& names() const { return names_; }  ///< by number

 private:
  /// First and last eight bytes; of a name of less than eight all of it, and 0.
  struct Ends {
    std::uint64_t first = 0, last = 0;
    friend bool operator==(const Ends&, const Ends&) = default;
  };
  struct Slot {
    std::uint32_t hash = 0;
    std::uint32_t number = empty;
  };
  static constexpr std::uint32_t empty = UINT32_MAX;

  static Ends ends_of(std::string_view name);
  static std::uint32_t hash_of(std::string_view name, const Ends& ends);
  [[nodiscard]] bool same(std::size_t number, std::string_view name, const Ends& ends) const;
  /// Where a name is, or an empty slot where it would be.
  [[nodiscard]] std::size_t slot_of(std::string_view name, const Ends& ends, std::uint32_t hash) const;
  void grow();

  std::vector<Slot> slots_;  ///< a power of two, at most half of them taken
  std::vector<std::string_view> names_;
  std::vector<Ends> ends_;
};

}  // namespace ohmtrail::netlist
