#include "netlist/nearest.hpp"
#include "netlist/sections.hpp"

#include <fmt/format.h>

namespace ohmtrail::netlist {

namespace {

using KindCodec = Word<trade::TerminationKind>;

bool is_plain(const RunEnd& end) {
  return end.resistances == Resistances{} && !end.crimp && end.note.empty();
}

}  // namespace

Halves halves(const RunEnd& end) {
  Halves result{end.resistances, end.crimp.value_or(Resistances{})};
  const auto share = [](std::optional<Resistance>& contact, std::optional<Resistance>& crimp) {
    if (crimp || !contact) return;
    contact = *contact / 2;
    crimp = contact;
  };
  share(result.contact.sound, result.crimp.sound);
  share(result.contact.as_found, result.crimp.as_found);
  if (!end.crimp || end.crimp->seen.empty()) result.crimp.seen = end.resistances.seen;
  return result;
}

bool EndCodec::read(Reader& reader, Value value, RunEnd& end) {
  if (value.is(Kind::string)) return KindCodec::read(reader, value, end.kind);
  if (value.is(Kind::object)) return Object<RunEnd>::read(reader, value, end);
  return wrong_kind(reader, value,
                    one_of(KindCodec::known()) + ", or an object {kind, sound, resistance, seen}");
}

Json EndCodec::write(const RunEnd& end) {
  return is_plain(end) ? KindCodec::write(end.kind) : Object<RunEnd>::write(end);
}

Json EndCodec::schema() {
  return {{"anyOf", Json::array({KindCodec::schema(), Object<RunEnd>::schema()})}};
}

bool read_ends(Reader& reader, Value value, Ends ends) {
  if (value.is(Kind::string)) {
    const bool good = KindCodec::read(reader, value, ends.from.kind);
    ends.to.kind = ends.from.kind;
    return good;
  }
  if (!value.is(Kind::object)) {
    return wrong_kind(reader, value, one_of(KindCodec::known()) + ", or {\"from\": …, \"to\": …}");
  }
  tell_duplicate_keys(reader, value);
  bool good = true;
  for (const Value member : value.children()) {
    const std::string_view key = member.key();
    if (key == "from" || key == "to") {
      good = EndCodec::read(reader, member, key == "from" ? ends.from : ends.to) && good;
    } else if (key == "note") {
      good = read_note(reader, member, nullptr) && good;
    } else {
      tell_unknown_key(reader, member, {"from", "to", "note"});
      good = false;
    }
  }
  return good;
}

Json write_ends(const RunEnd& from, const RunEnd& to) {
  if (from == to && is_plain(from)) return KindCodec::write(from.kind);
  return {{"from", EndCodec::write(from)}, {"to", EndCodec::write(to)}};
}

Json ends_schema() {
  const Json both = {{"type", "object"},
                     {"properties",
                      {{"from", {{"$ref", "#/$defs/end"}}},
                       {"to", {{"$ref", "#/$defs/end"}}},
                       {"note", {{"type", "string"}}}}},
                     {"additionalProperties", false}};
  return {{"anyOf", Json::array({KindCodec::schema(), both})}};
}

}  // namespace ohmtrail::netlist
