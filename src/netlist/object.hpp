#pragma once
#include <algorithm>

#include "netlist/codec.hpp"

/// Codecs for objects and lists, driven by the tables of keys.
namespace ohmtrail::netlist {

/// Tells a key that stands twice in its object; false.
bool tell_duplicate_key(Reader& reader, Value member);
/// The same for all keys of an object that is read by no table.
void tell_duplicate_keys(Reader& reader, Value object);
void tell_unknown_key(Reader& reader, Value member, const std::vector<std::string_view>& known);
void tell_missing_key(Reader& reader, Value object, std::string_view key, std::string_view sentence);
/// Reads `note` into `note`, where the owner keeps one.
bool read_note(Reader& reader, Value value, std::string* note);

template <class Owner>
concept HasNote = requires(Owner owner) {
  { owner.note } -> std::convertible_to<std::string>;
};

template <class Owner>
std::string* note_of(Owner& owner) {
  if constexpr (HasNote<Owner>)
    return &owner.note;
  else
    return nullptr;
}

template <class Owner>
[[nodiscard]] std::vector<std::string_view> known_keys() {
  std::vector<std::string_view> names;
  for (const Key<Owner>& key : keys<Owner>()) names.push_back(key.name);
  names.push_back("note");
  return names;
}

template <class Owner>
struct Object {
  using Type = Owner;

  /// Reads what can be read even if some of it is wrong, so that all mistakes are told at once.
  static bool read(Reader& reader, Value value, Owner& owner) {
    if (!value.is(Kind::object)) return wrong_kind(reader, value, "an object {…}");
    bool good = true;
    Met met;
    for (const Value member : value.children()) good = read_member(reader, member, owner, met) && good;
    good = tell_missing(reader, value, met.bits) && good;
    Check<Owner>::run(reader, value, owner);
    return good;
  }

  static Json write(const Owner& owner) {
    Json object = Json::object();
    for (const Key<Owner>& key : keys<Owner>()) key.write(object, key.name, owner);
    if constexpr (HasNote<Owner>) {
      if (!owner.note.empty()) object["note"] = owner.note;
    }
    return object;
  }

  static Json schema() {
    Json properties = Json::object();
    Json needed = Json::array();
    for (const Key<Owner>& key : keys<Owner>()) {
      properties[std::string(key.name)] = key.schema();
      properties[std::string(key.name)]["description"] = key.sentence;
      if (key.need == Need::required) needed.push_back(key.name);
    }
    properties["note"] = {{"type", "string"}};
    Json schema = {{"type", "object"}, {"properties", properties}, {"additionalProperties", false}};
    if (!needed.empty()) schema["required"] = needed;
    return schema;
  }

 private:
  /// The keys met so far, and where in the table to look for the next: most files keep the table's order.
  struct Met {
    std::uint32_t bits = 0;
    std::size_t next = 0;

    /// False for the second time.
    bool mark(std::size_t key) {
      const std::uint32_t bit = 1U << key;
      const bool fresh = (bits & bit) == 0;
      bits |= bit;
      next = key + 1;
      return fresh;
    }
  };

  static bool read_member(Reader& reader, Value member, Owner& owner, Met& met) {
    const std::span<const Key<Owner>> table = keys<Owner>();
    for (std::size_t tried = 0, k = met.next; tried < table.size(); ++tried, ++k) {
      if (k >= table.size()) k = 0;
      if (!member.key_is(table[k].name)) continue;
      return met.mark(k) ? table[k].read(reader, member, owner) : tell_duplicate_key(reader, member);
    }
    if (member.key_is("note")) {
      if (!met.mark(table.size())) return tell_duplicate_key(reader, member);
      return read_note(reader, member, note_of(owner));
    }
    tell_unknown_key(reader, member, known_keys<Owner>());
    return false;
  }

  static bool tell_missing(Reader& reader, Value object, std::uint32_t met) {
    bool good = true;
    std::uint32_t bit = 1;
    for (const Key<Owner>& key : keys<Owner>()) {
      if (key.need == Need::required && (met & bit) == 0) {
        tell_missing_key(reader, object, key.name, key.sentence);
        good = false;
      }
      bit <<= 1;
    }
    return good;
  }
};

/// A list of one kind. Every item gets its place in the vector, also a wrong one, so that items and values
/// keep step.
template <class Codec>
struct List {
  using Item = typename Codec::Type;
  using Type = std::vector<Item>;

  static bool read(Reader& reader, Value value, Type& list) {
    if (!value.is(Kind::array)) {
      const bool single = value.is(Kind::string) || value.is(Kind::object);
      return wrong_kind(reader, value, "a list […]", single ? "put it in brackets, also a single one" : "");
    }
    bool good = true;
    list.reserve(value.count());
    for (const Value item : value.children()) {
      list.emplace_back();
      good = Codec::read(reader, item, list.back()) && good;
    }
    return good;
  }

  static Json write(const Type& list) {
    Json array = Json::array();
    for (const Item& item : list) array.push_back(Codec::write(item));
    return array;
  }

  static Json schema() { return {{"type", "array"}, {"items", Codec::schema()}}; }
};

/// An object whose keys are names of the user's own.
template <class NameCodec, class Codec>
struct Named {
  using Item = typename Codec::Type;
  using Type = std::map<std::string, Item>;

  static bool read(Reader& reader, Value value, Type& named) {
    if (!value.is(Kind::object)) return wrong_kind(reader, value, "an object {\"NAME\": …}");
    tell_duplicate_keys(reader, value);
    bool good = true;
    for (const Value member : value.children()) {
      Item item{};
      good = Codec::read(reader, member, item) && good;
      named.try_emplace(std::string(member.key()), std::move(item));
    }
    return good;
  }

  static Json write(const Type& named) {
    Json object = Json::object();
    for (const auto& [name, item] : named) object[name] = Codec::write(item);
    return object;
  }

  static Json schema() { return {{"type", "object"}, {"additionalProperties", Codec::schema()}}; }
};

}  // namespace ohmtrail::netlist
