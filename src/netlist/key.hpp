#pragma once
#include <functional>
#include <nlohmann/json.hpp>
#include <optional>
#include <span>
#include <string_view>
#include <type_traits>

#include "netlist/problems.hpp"
#include "netlist/tree.hpp"
#include "ohmtrail/netlist/rare.hpp"

/// One table a section: each key with how it is read, written and described. Reader, writer, schema and the
/// list of known keys all come from it.
///
/// A *codec* is a stateless type for one kind of value:
///     using Type = …;
///     static bool read(Reader&, Value, Type&);   false after telling a mistake; the target is then untouched
///     static Json write(const Type&);
///     static Json schema();                      JSON Schema 2020-12
namespace ohmtrail::netlist {

using Json = nlohmann::ordered_json;

/// What every reading function is handed.
struct Reader {
  const Tree& tree;
  Problems& problems;
};

enum class Need { required, optional };

/// One key of a section whose values are kept in an `Owner`.
template <class Owner>
struct Key {
  std::string_view name;
  Need need;
  std::string_view sentence;
  bool (*read)(Reader&, Value, Owner&);
  void (*write)(Json& object, std::string_view name, const Owner&);
  Json (*schema)();
};

/// The keys of the section kept in an `Owner`. A key `note` is taken everywhere and stands in no table.
template <class Owner>
[[nodiscard]] std::span<const Key<Owner>> keys();

/// What a section checks by itself once its keys are read; it runs also where some keys were
/// wrong and so are at their defaults; specialise where there is something to check.
template <class Owner>
struct Check {
  static void run(Reader&, Value, Owner&) {}
};

namespace detail {

template <class T>
struct Held {
  using Type = T;
  static constexpr bool optional = false;
};
template <class T>
struct Held<std::optional<T>> {
  using Type = T;
  static constexpr bool optional = true;
};
template <class T>
struct Held<Rare<T>> : Held<std::optional<T>> {};

template <class Owner, auto Access, class Codec>
bool read_into(Reader& reader, Value value, Owner& owner) {
  auto& target = std::invoke(Access, owner);
  if constexpr (Held<std::remove_cvref_t<decltype(target)>>::optional) {
    typename Codec::Type read{};
    if (!Codec::read(reader, value, read)) return false;
    target = std::move(read);
    return true;
  } else {
    return Codec::read(reader, value, target);
  }
}

// Values at their default are left out, so that what is written is what a person would write.
template <class Owner, auto Access, class Codec, Need need>
void write_from(Json& object, std::string_view name, const Owner& owner) {
  const auto& source = std::invoke(Access, owner);
  if constexpr (Held<std::remove_cvref_t<decltype(source)>>::optional) {
    if (source) object[std::string(name)] = Codec::write(*source);
  } else {
    static const Owner untouched{};
    if (need == Need::required || !(source == std::invoke(Access, untouched))) {
      object[std::string(name)] = Codec::write(source);
    }
  }
}

}  // namespace detail

/// `Access` is a pointer to member or a function from the owner to the place where the value is kept.
template <class Owner, auto Access, class Codec, Need need>
[[nodiscard]] constexpr Key<Owner> key(std::string_view name, std::string_view sentence) {
  return {name,
          need,
          sentence,
          &detail::read_into<Owner, Access, Codec>,
          &detail::write_from<Owner, Access, Codec, need>,
          &Codec::schema};
}

template <class Owner, auto Access, class Codec>
[[nodiscard]] constexpr Key<Owner> required(std::string_view name, std::string_view sentence) {
  return key<Owner, Access, Codec, Need::required>(name, sentence);
}

template <class Owner, auto Access, class Codec>
[[nodiscard]] constexpr Key<Owner> optional(std::string_view name, std::string_view sentence) {
  return key<Owner, Access, Codec, Need::optional>(name, sentence);
}

}  // namespace ohmtrail::netlist
