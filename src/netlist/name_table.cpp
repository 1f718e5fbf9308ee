#include "ohmtrail/netlist/name_table.hpp"

#include <bit>
#include <cstring>
#include <functional>
#include <utility>

namespace ohmtrail::netlist {

namespace {

constexpr std::size_t word = sizeof(std::uint64_t);

template <class Word>
Word load(const char* from) {
  Word value = 0;
  std::memcpy(&value, from, sizeof value);
  return value;
}

/// All of a name of less than eight bytes; differs among names of one length. Loads may overlap: a copy of so
/// many bytes as there are would be a call, and reading 10³ elements took a sixth longer with it.
std::uint64_t few_bytes(std::string_view name) {
  using Half = std::uint32_t;
  if (name.size() >= sizeof(Half)) {
    const auto last = load<Half>(name.data() + name.size() - sizeof(Half));
    return load<Half>(name.data()) | std::uint64_t{last} << 32U;
  }
  if (name.empty()) return 0;
  const auto byte = [&](std::size_t k) { return std::uint64_t{static_cast<unsigned char>(name[k])}; };
  return byte(0) | byte(name.size() / 2) << 8U | byte(name.size() - 1) << 16U;
}

}  // namespace

NameTable::NameTable(std::size_t expected) : slots_(std::bit_ceil(2 * expected + 2)) {
  names_.reserve(expected);
  ends_.reserve(expected);
}

NameTable::Ends NameTable::ends_of(std::string_view name) {
  if (name.size() < word) return {few_bytes(name), 0};
  return {load<std::uint64_t>(name.data()), load<std::uint64_t>(name.data() + name.size() - word)};
}

/// Multiplied by odd numbers and folded, as Knuth's multiplicative hashing does (The Art of Computer
/// Programming 3, 6.4).
std::uint32_t NameTable::hash_of(std::string_view name, const Ends& ends) {
  std::uint64_t mixed = ends.first * 0x9E3779B97F4A7C15U + std::rotl(ends.last * 0xC2B2AE3D27D4EB4FU, 29);
  if (name.size() > 2 * word) mixed += std::hash<std::string_view>{}(name);
  mixed = (mixed ^ (mixed >> 32U)) * 0x9E3779B97F4A7C15U;
  return static_cast<std::uint32_t>((mixed ^ name.size()) >> 24U);
}

bool NameTable::same(std::size_t number, std::string_view name, const Ends& ends) const {
  if (ends_[number] != ends || names_[number].size() != name.size()) return false;
  return name.size() <= 2 * word || names_[number] == name;
}

std::size_t NameTable::slot_of(std::string_view name, const Ends& ends, std::uint32_t hash) const {
  const std::size_t mask = slots_.size() - 1;
  for (std::size_t at = hash & mask;; at = (at + 1) & mask) {
    const Slot& slot = slots_[at];
    if (slot.number == empty || (slot.hash == hash && same(slot.number, name, ends))) return at;
  }
}

std::size_t NameTable::add(std::string_view name) {
  if (2 * (names_.size() + 1) > slots_.size()) grow();
  const Ends ends = ends_of(name);
  const std::uint32_t hash = hash_of(name, ends);
  Slot& slot = slots_[slot_of(name, ends, hash)];
  if (slot.number != empty) return slot.number;
  slot = {hash, static_cast<std::uint32_t>(names_.size())};
  names_.push_back(name);
  ends_.push_back(ends);
  return slot.number;
}

void NameTable::expect(std::string_view name) const {
  __builtin_prefetch(&slots_[hash_of(name, ends_of(name)) & (slots_.size() - 1)]);
}

std::optional<std::size_t> NameTable::find(std::string_view name) const {
  const Ends ends = ends_of(name);
  const Slot& slot = slots_[slot_of(name, ends, hash_of(name, ends))];
  if (slot.number == empty) return std::nullopt;
  return slot.number;
}

void NameTable::grow() {
  const std::vector<Slot> old = std::exchange(slots_, std::vector<Slot>(2 * slots_.size()));
  const std::size_t mask = slots_.size() - 1;
  for (const Slot& slot : old) {
    if (slot.number == empty) continue;
    std::size_t at = slot.hash & mask;
    while (slots_[at].number != empty) at = (at + 1) & mask;
    slots_[at] = slot;
  }
}

}  // namespace ohmtrail::netlist
